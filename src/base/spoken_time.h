// A time of day as people type it in a plan: `9.30`, `9:30`, `16h30`, `1700`, `5pm`, `9.30 am`.
//
// What it is part of decides what it means: a bare `5.30` in the evening, a range, a height of
// `1.15m`. Tested by tests/base/spoken_time_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace chalkleaf {

struct SpokenTime {
  int minutes = 0;         ///< of the day, `am` and `pm` obeyed
  int written = 0;         ///< the same without them
  std::size_t end = 0;     ///< of the text, behind it
  bool half_said = false;  ///< `am` or `pm` stands behind it
  bool four_digits = false;
};
/// The time that begins at `at`; nothing when none does. An hour alone is one only with its half of
/// the day: `5pm`.
std::optional<SpokenTime> spoken_time(std::string_view text, std::size_t at);

/// The bytes of a space, a tab or a space of Unicode at `at`; 0 when there is none.
std::size_t space_size(std::string_view text, std::size_t at);
/// The first byte from `at` on that is none of these.
std::size_t behind_spaces(std::string_view text, std::size_t at);

}  // namespace chalkleaf
