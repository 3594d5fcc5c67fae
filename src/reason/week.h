// Which days of a week a session is on. Pure. Tested by tests/reason/week_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/date.h"
#include "plan/model.h"

namespace chalkleaf::reason {

/// The days, in order, that the session is on within the seven that begin with `first`. A plan
/// with a date is on that day, and within seven days of it on those of its `repeat`; a home plan
/// with `repeat` days is done on those alone. Without a date, `repeat` counts in every week.
std::vector<Date> days_in_week(const plan::Session& session, Date first);
/// The same of what counts for it.
struct WhenOn {
  plan::Place place = plan::Place::kGym;
  std::optional<Date> date;
  std::vector<Weekday> repeat;
};
WhenOn when_on(const plan::Session& session);
std::vector<Date> days_in_week(const WhenOn& when, Date first);

/// The Monday of the week to show when none is asked for (weeks as ISO 8601 counts them): of the
/// newest date that a gym plan has, else that any has. None when no plan has one.
std::optional<Date> newest_week(const std::vector<const plan::Session*>& sessions);

}  // namespace chalkleaf::reason
