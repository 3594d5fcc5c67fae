#include "base/duration.h"

#include <fmt/format.h>

namespace chalkleaf {
namespace {

constexpr std::int64_t floor_divide(std::int64_t a, std::int64_t b) {
  return a / b - ((a % b != 0 && (a < 0) != (b < 0)) ? 1 : 0);
}

}  // namespace

std::int64_t Duration::rounded_seconds() const { return floor_divide(ms_ + 500, 1000); }
std::int64_t Duration::rounded_minutes() const { return floor_divide(ms_ + 30'000, 60'000); }

std::string exact_text(Duration duration) {
  std::int64_t ms = duration.in_milliseconds();
  if (ms < 0) return "-" + exact_text(-duration);
  const std::int64_t hours = ms / 3'600'000;
  const std::int64_t minutes = ms / 60'000 % 60;
  const std::int64_t rest = ms % 60'000;
  std::string out;
  const auto add = [&](const std::string& part) { out += (out.empty() ? "" : " ") + part; };
  if (hours > 0) add(fmt::format("{} h", hours));
  if (minutes > 0) add(fmt::format("{} min", minutes));
  if (rest > 0 || out.empty()) {
    std::string seconds = std::to_string(rest / 1000);
    if (rest % 1000 != 0) {
      seconds += fmt::format(".{:03}", rest % 1000);
      while (seconds.back() == '0') seconds.pop_back();
    }
    add(seconds + " s");
  }
  return out;
}

std::string stopwatch_text(Duration duration) {
  const std::int64_t total = duration.rounded_seconds();
  if (total < 0) return "-" + stopwatch_text(-duration);
  if (total >= 3600)
    return fmt::format("{}:{:02}:{:02}", total / 3600, total / 60 % 60, total % 60);
  return fmt::format("{}:{:02}", total / 60, total % 60);
}

std::string clock_text(TimeOfDay time) {
  constexpr std::int64_t kDay = 24 * 60;
  const std::int64_t minutes = floor_divide(time.since_midnight.in_milliseconds(), 60'000);
  const std::int64_t wrapped = (minutes % kDay + kDay) % kDay;
  return fmt::format("{:02}:{:02}", wrapped / 60, wrapped % 60);
}

}  // namespace chalkleaf
