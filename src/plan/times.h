// Lengths of time as people write them: `20 s`, `1 min 30 s`, `1:30`, `2½ min`, `1:15 h`.
// Tested by tests/plan/dose_test.cpp and values_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/duration.h"
#include "plan/tokens.h"

namespace chalkleaf::plan {

struct TimeRead {
  Duration value;
  std::size_t next = 0;     ///< the first token behind it
  bool too_large = false;   ///< above kLongestDuration, or finer than a millisecond
  bool bare_clock = false;  ///< `1:30` with no unit: minutes and seconds
};

/// Reads a length of time that begins at token `at` and ends before token `end`; nothing when there
/// is none there. A bare number is none.
std::optional<TimeRead> read_time(const std::vector<Token>& tokens, std::size_t at,
                                  std::size_t end);

}  // namespace chalkleaf::plan
