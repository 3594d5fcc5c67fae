// See the header.
#include "reason/group_week.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"

namespace chalkleaf::reason {
namespace {

// Below this a practice at home is light: a quarter of an hour at effort 4 (common practice, no
// source). Families are told to do such things on any day.
constexpr std::int64_t kLightPractice = Duration::minutes(60).in_milliseconds();
constexpr std::int64_t kDaysOfWeek = 7;

Date monday_of(std::int64_t day) {
  const Date date = date_from_days(day);
  return date_from_days(day - static_cast<std::int64_t>(weekday(date)));
}

// All weeks that a plan with a date touches: its own, and the next when it repeats.
std::set<Date> weeks_of(const std::vector<WeekSession>& plans) {
  std::set<Date> out;
  for (const WeekSession& plan : plans) {
    if (!plan.when.date) continue;
    const std::int64_t day = days_since_epoch(*plan.when.date);
    out.insert(monday_of(day));
    if (!plan.when.repeat.empty()) out.insert(monday_of(day + kDaysOfWeek - 1));
  }
  return out;
}

void add_days(const std::vector<Date>& days, std::vector<Date>& out) {
  out.insert(out.end(), days.begin(), days.end());
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
}

void add_entry(const WeekSession& plan, std::vector<Date> days, GroupWeek& week) {
  const bool gym = plan.when.place == plan::Place::kGym;
  for (std::size_t i = 0; i < days.size(); ++i) {
    week.sum.add(plan.sum);
    (gym ? week.gym_hours : week.home_hours) += plan.length;
  }
  if (gym) add_days(days, week.gym_days);
  if (gym || plan.sum.of(Load::kEffort) > kLightPractice) add_days(days, week.days);
  week.entries.push_back({plan, std::move(days)});
}

}  // namespace

WeekSession week_session(const plan::Session& session, const Timetable& timetable,
                         const LoadSums& sum) {
  const bool by_slot = session.place.value == plan::Place::kGym && session.slot.has_value();
  return {session.sources,
          session.title,
          session.group_name,
          session.group,
          when_on(session),
          by_slot ? session.slot->value : timetable.total,
          sum,
          wants_of(session, timetable)};
}

std::vector<GroupWeek> group_weeks(const std::vector<WeekSession>& plans) {
  std::map<std::string, std::vector<WeekSession>> groups;
  for (const WeekSession& plan : plans) {
    const std::string& name = plan.group_name.text;
    if (!name.empty()) groups[lower_ascii(name)].push_back(plan);
  }
  std::vector<GroupWeek> out;
  for (const auto& [key, group] : groups) {
    for (const Date first : weeks_of(group)) {
      GroupWeek week;
      const WeekSession& one = group.front();
      week.group = one.group ? one.group->name.text : one.group_name.text;
      week.first = first;
      for (const WeekSession& plan : group) {
        std::vector<Date> days = days_in_week(plan.when, first);
        if (!days.empty()) add_entry(plan, std::move(days), week);
      }
      if (week.entries.empty()) continue;
      std::stable_sort(
          week.entries.begin(), week.entries.end(),
          [](const WeekEntry& a, const WeekEntry& b) { return a.days.front() < b.days.front(); });
      out.push_back(std::move(week));
    }
  }
  return out;
}

}  // namespace chalkleaf::reason
