// A group's week over all its plans: the days it trains, the hours, and the sums of the loads.
// Pure. Tested by tests/reason/group_week_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "reason/clashes.h"
#include "reason/loads.h"
#include "reason/week.h"

namespace chalkleaf::reason {

/// What a week needs of one plan: all of it, so that the plan itself can go.
struct WeekSession {
  std::vector<SourcePtr> sources;  ///< keeps the words' places alive
  plan::Words title;
  plan::Words group_name;
  std::optional<plan::Group> group;
  WhenOn when;
  Duration length;  ///< its slot in the gym, else its timetable
  LoadSums sum;
  std::vector<Want> wants = {};  ///< of the hall
};
WeekSession week_session(const plan::Session& session, const Timetable& timetable,
                         const LoadSums& sum);

/// One plan of a week, and on how many of its days.
struct WeekEntry {
  WeekSession plan;
  std::vector<Date> days;
};

/// The week of one group, from Monday (ISO 8601).
struct GroupWeek {
  std::string group;
  Date first;
  std::vector<WeekEntry> entries;  ///< by day
  std::vector<Date> gym_days;      ///< in order, each once
  std::vector<Date> days;          ///< with those of home plans that are more than a light practice
  Duration gym_hours;              ///< of slots, or where a plan has none of its timetable
  Duration home_hours;
  LoadSums sum;
};

/// Every week in which a plan with a date falls, group by group. Plans that say no group are
/// nobody's week; one that has only `repeat` is in each week of its group.
std::vector<GroupWeek> group_weeks(const std::vector<WeekSession>& plans);

/// `too-many-hours`, `too-few-rest-days` and, of weeks, `too-much-load`.
void check_week(const GroupWeek& week, Diagnostics& diagnostics);

}  // namespace chalkleaf::reason
