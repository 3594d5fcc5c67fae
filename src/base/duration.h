// How long something lasts, exactly.
//
// A timetable that adds rounded numbers is wrong by the end of the hour, so durations are whole
// milliseconds inside and are rounded only where they are printed. Tested by
// tests/base/duration_test.cpp.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace chalkleaf {

/// A length of time in whole milliseconds. May be negative (a shortage).
class Duration {
 public:
  constexpr Duration() = default;
  static constexpr Duration milliseconds(std::int64_t n) { return Duration(n); }
  static constexpr Duration seconds(std::int64_t n) { return Duration(n * 1000); }
  static constexpr Duration minutes(std::int64_t n) { return Duration(n * 60'000); }

  constexpr std::int64_t in_milliseconds() const { return ms_; }
  /// Whole seconds, halves rounded up.
  std::int64_t rounded_seconds() const;
  /// Whole minutes, halves rounded up.
  std::int64_t rounded_minutes() const;

  constexpr auto operator<=>(const Duration&) const = default;
  constexpr Duration operator+(Duration o) const { return Duration(ms_ + o.ms_); }
  constexpr Duration operator-(Duration o) const { return Duration(ms_ - o.ms_); }
  constexpr Duration operator-() const { return Duration(-ms_); }
  constexpr Duration operator*(std::int64_t n) const { return Duration(ms_ * n); }
  constexpr Duration operator/(std::int64_t n) const { return Duration(ms_ / n); }
  constexpr Duration& operator+=(Duration o) { return *this = *this + o; }

 private:
  explicit constexpr Duration(std::int64_t ms) : ms_(ms) {}
  std::int64_t ms_ = 0;
};

/// The longest time a plan may name; keeps every sum far from overflow. 24 hours.
inline constexpr Duration kLongestDuration = Duration::minutes(24 * 60);

/// "20 s", "1 min 30 s", "2 min", "1 h 5 min", "0.5 s"; exact to the millisecond.
std::string exact_text(Duration duration);
/// As a clock counts: "0:20", "1:30", "12:05", "1:02:05"; rounded to whole seconds.
std::string stopwatch_text(Duration duration);

/// A time of day, to the minute as written, carried exactly. Times past midnight wrap when printed.
struct TimeOfDay {
  Duration since_midnight;
  constexpr auto operator<=>(const TimeOfDay&) const = default;
  TimeOfDay operator+(Duration d) const { return {since_midnight + d}; }
};
/// "17:05", always two digits each; cut to the whole minute, so that nothing is announced too late.
std::string clock_text(TimeOfDay time);

}  // namespace chalkleaf
