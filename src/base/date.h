// Days of the civil calendar (proleptic Gregorian, as ISO 8601 counts them).
// Tested by tests/base/date_test.cpp, against python3's datetime.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf {

/// Monday first, as ISO 8601 numbers the week.
enum class Weekday { kMonday, kTuesday, kWednesday, kThursday, kFriday, kSaturday, kSunday };

/// A day that exists.
struct Date {
  int year = 1970;
  int month = 1;
  int day = 1;
  constexpr auto operator<=>(const Date&) const = default;
};

/// Reads `2026-12-02`; nothing when it is not that form or there is no such day.
std::optional<Date> parse_date(std::string_view text);
/// `2026-12-02`
std::string iso_text(Date date);
Weekday weekday(Date date);
/// Days since 1970-01-01 (negative before), and back.
std::int64_t days_since_epoch(Date date);
Date date_from_days(std::int64_t days);

}  // namespace chalkleaf
