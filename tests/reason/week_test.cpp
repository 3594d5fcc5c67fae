// Days of a week, against calendars: 1 December 2026 is a Tuesday (date: tests/base/date_test.cpp).
#include "reason/week.h"

#include <catch2/catch.hpp>

namespace chalkleaf::reason {
namespace {

constexpr Date kMonday{2026, 11, 30};

plan::Session session(plan::Place place, std::optional<Date> date,
                      const std::vector<Weekday>& repeat = {}) {
  plan::Session out;
  out.place = {place, {}};
  if (date) out.date = plan::Sourced<Date>{*date, {}};
  for (const Weekday day : repeat) out.repeat.push_back({day, {}});
  return out;
}

TEST_CASE("a session with a date is on that day") {
  const auto gym = session(plan::Place::kGym, Date{2026, 12, 3});
  CHECK(days_in_week(gym, kMonday) == std::vector{Date{2026, 12, 3}});
  CHECK(days_in_week(gym, Date{2026, 12, 7}).empty());
  CHECK(days_in_week(gym, Date{2026, 11, 23}).empty());
}

TEST_CASE("a home plan is practised on its days, for a week from its date") {
  const auto home = session(plan::Place::kHome, Date{2026, 12, 2},
                            {Weekday::kMonday, Weekday::kWednesday, Weekday::kFriday});
  CHECK(days_in_week(home, kMonday) == std::vector{Date{2026, 12, 2}, Date{2026, 12, 4}});
  CHECK(days_in_week(home, Date{2026, 12, 7}) == std::vector{Date{2026, 12, 7}});
  CHECK(days_in_week(home, Date{2026, 12, 14}).empty());
}

TEST_CASE("without a date, the days count in every week") {
  const auto gym = session(plan::Place::kGym, std::nullopt, {Weekday::kTuesday});
  CHECK(days_in_week(gym, kMonday) == std::vector{Date{2026, 12, 1}});
  CHECK(days_in_week(gym, Date{2027, 1, 4}) == std::vector{Date{2027, 1, 5}});
  CHECK(days_in_week(session(plan::Place::kGym, std::nullopt), kMonday).empty());
}

TEST_CASE("a week may begin on any day") {
  const auto gym = session(plan::Place::kGym, std::nullopt, {Weekday::kMonday, Weekday::kTuesday});
  CHECK(days_in_week(gym, Date{2026, 12, 1}) == std::vector{Date{2026, 12, 1}, Date{2026, 12, 7}});
}

TEST_CASE("the week shown is that of the newest session in the gym, from its Monday") {
  const auto old = session(plan::Place::kGym, Date{2026, 11, 24});
  const auto recent = session(plan::Place::kGym, Date{2026, 12, 6});
  const auto home = session(plan::Place::kHome, Date{2026, 12, 27});
  const auto undated = session(plan::Place::kGym, std::nullopt);
  CHECK(newest_week({&old, &home, &recent, &undated}) == kMonday);
  CHECK(newest_week({&recent, &old}) == kMonday);
  CHECK(newest_week({&home}) == Date{2026, 12, 21});
  CHECK(newest_week({&undated}) == std::nullopt);
}

}  // namespace
}  // namespace chalkleaf::reason
