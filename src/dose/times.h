// Lengths of time as people write them: `20 s`, `1 min 30 s`, `1:30`, `2½ min`, `1:15 h`, `1'30"`,
// `half a minute`, `1 min 30`. Tested by tests/plan/dose_test.cpp, dose_corpus_test.cpp and
// values_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/duration.h"
#include "dose/tokens.h"

namespace chalkleaf::dose {

struct TimeRead {
  Duration value;
  std::size_t next = 0;     ///< the first token behind it
  bool too_large = false;   ///< above kLongestDuration, or finer than a millisecond
  bool bare_clock = false;  ///< `1:30` with no unit: minutes and seconds
  bool seconds = false;     ///< its last unit is the second
  bool doubtful = false;    ///< `1.30 min`: a decimal, or minutes and seconds
};

/// Reads a length of time that begins at token `at` and ends before token `end`; nothing when there
/// is none there. A bare number is none.
std::optional<TimeRead> read_time(const std::vector<Token>& tokens, std::size_t at,
                                  std::size_t end);
/// The milliseconds of the unit at token `at`; nothing when none stands there.
std::optional<std::int64_t> unit_at(const std::vector<Token>& tokens, std::size_t at,
                                    std::size_t end);

}  // namespace chalkleaf::dose
