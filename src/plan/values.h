// Single values of front matter and club files, from text: pure, nothing is reported here.
//
// Each answers with the value or with what is wrong and what to write instead.
// Tested by tests/plan/values_test.cpp.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/date.h"
#include "base/duration.h"
#include "base/paper.h"
#include "plan/model.h"

namespace chalkleaf::plan {

/// Why a value is not one: a message without full stop, and what to change.
struct ValueProblem {
  std::string message;
  std::string hint;
  std::string meant = {};  ///< the value as it should stand, where it is plain what was meant
};
template <class T>
using Value = tl::expected<T, ValueProblem>;

/// Drills and groups have a level from 1, a first visit, to this.
inline constexpr int kHighestLevel = 10;
/// What a drill asks of a region of the body: 1 light, 2 middling, 3 heavy.
inline constexpr int kHeaviestLoad = 3;
/// How hard work feels, from 1 (a rest) to this (all one has).
inline constexpr int kHighestEffort = 10;
/// More gymnasts than one coach card has columns for.
inline constexpr int kLargestGroup = 60;
/// More adults than any hall needs for them.
inline constexpr int kMostAdults = 30;

/// Longer ones make a code of more squares than a phone reads at the size it is printed in.
inline constexpr std::size_t kLongestAddress = 200;
inline constexpr std::string_view kPlanPlace = "{plan}";
enum class PlanPlace { kRefused, kAllowed };

/// Whether a time may be zero (a rest may, a slot may not).
enum class Zero { kAllowed, kRefused };

/// `40 min`, `1 h`, `1:15 h`; a unit is asked for, because `75` or `1:15` could mean two things.
Value<Duration> parse_duration(std::string_view text, Zero zero);
/// `17:00`, `17.00`, `5 pm`, `5:30pm`
Value<TimeOfDay> parse_time_of_day(std::string_view text);
/// `2026-12-02` (ISO 8601); other common forms are recognised in the hint.
Value<Date> parse_day(std::string_view text);
/// `Mon`, `Monday`, `Mondays`; `daily`, `weekdays` and `weekends` give several.
Value<std::vector<Weekday>> parse_weekdays(std::string_view text);
/// `A5`, `US Letter`, `a5 landscape`: see read_paper.
Value<Paper> parse_paper(std::string_view text);
/// More pages than a sheet is ever asked to fit.
inline constexpr int kMostPages = 60;
/// `1 page`, `3 pages`, `1 sheet`: a sheet of paper is printed on both sides.
Value<PageCount> parse_page_count(std::string_view text);
/// A block of training longer than this is two.
inline constexpr int kMostWeeks = 12;
/// `gymnasts`, `sets`, `days` or `6 weeks`, also said as `each set` or `per day`.
Value<Ticks> parse_ticks(std::string_view text);
/// A whole number from `least` to `most`.
Value<int> parse_whole(std::string_view text, int least, int most);
/// `https://club.example/plans`: an absolute web address in ASCII (RFC 3986), at most
/// kLongestAddress bytes; `www.club.example` gets its https://. With `kPlanPlace` allowed, the
/// address may have that once where a plan's name goes.
Value<std::string> parse_web_address(std::string_view text, PlanPlace place);
/// `yes` or `no`, `true` or `false`.
Value<bool> parse_yes_no(std::string_view text);
/// `on` or `off`, `yes` or `no`.
Value<bool> parse_on_off(std::string_view text);
/// `9–11`, `9-11`, `9 to 11` or `9`: years, youngest and oldest.
Value<std::pair<int, int>> parse_ages(std::string_view text);

}  // namespace chalkleaf::plan
