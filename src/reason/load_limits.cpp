// See the header.
#include "reason/load_limits.h"

#include <fmt/format.h>

#include <algorithm>

namespace chalkleaf::reason {
namespace {

constexpr std::int64_t sec(std::int64_t n) { return n * 1000; }

}  // namespace

// No published number of landings, handstands or bends divides harm from none, so these are common
// practice, no source: far above what an ordinary session of that age asks for, so that they speak
// of what a coach did not mean. What is not here has none: effort × minutes differs from child to
// child (Foster 1998, Med Sci Sports Exerc 30(7):1164-1168, gives no cut-off that fits all).
const std::vector<LoadLimit>& load_limits() {
  // load, from age, from level, a session, a week
  static const std::vector<LoadLimit> kRows{
      {Load::kHandTime, 0, 1, sec(240), sec(720)},
      {Load::kHandTime, 8, 1, sec(420), sec(1500)},
      {Load::kHandTime, 8, 5, sec(600), sec(2400)},
      {Load::kHandTime, 12, 1, sec(720), sec(3000)},
      {Load::kHandTimes, 0, 1, 200, 500},
      {Load::kHandTimes, 8, 1, 320, 1000},
      {Load::kHandTimes, 8, 5, 450, 1600},
      {Load::kHandTimes, 12, 1, 600, 2200},
      {Load::kLandings, 0, 1, 120, 300},
      {Load::kLandings, 8, 1, 180, 500},
      {Load::kLandings, 8, 5, 250, 800},
      {Load::kLandings, 12, 1, 300, 1000},
      {Load::kBounces, 0, 1, 400, 1200},
      {Load::kBounces, 8, 1, 700, 2400},
      {Load::kBounces, 12, 1, 1000, 4000},
      {Load::kNeckTimes, 0, 1, 30, 80},
      {Load::kNeckTimes, 8, 1, 45, 120},
      {Load::kNeckTimes, 12, 1, 60, 180},
      {Load::kBackBends, 0, 1, 40, 100},
      {Load::kBackBends, 8, 1, 80, 200},
      {Load::kBackBends, 8, 5, 110, 350},
      {Load::kBackBends, 12, 1, 120, 400},
      {Load::kUpsideDown, 0, 1, sec(180), sec(480)},
      {Load::kUpsideDown, 8, 1, sec(300), sec(900)},
      {Load::kUpsideDown, 8, 5, sec(480), sec(1500)},
      {Load::kUpsideDown, 12, 1, sec(600), sec(2100)},
  };
  return kRows;
}

std::string_view load_limits_source() { return "common practice, no source"; }

std::optional<LoadLimit> load_limit(Load load, const std::optional<plan::Group>& group) {
  constexpr int kUnknownAge = 100;
  const int age = group && group->youngest ? std::max(0, group->youngest->value) : kUnknownAge;
  const int level = group && group->level ? group->level->value : 1;
  std::optional<LoadLimit> out;
  for (const LoadLimit& row : load_limits()) {
    if (row.load == load && row.from_age <= age && row.from_level <= level) out = row;
  }
  return out;
}

std::string limit_text(const LoadLimit& limit) {
  const std::string ages =
      limit.from_age == 0 ? "the youngest" : fmt::format("{} years and up", limit.from_age);
  return limit.from_level > 1 ? fmt::format("{}, level {} and up", ages, limit.from_level) : ages;
}

}  // namespace chalkleaf::reason
