// The grammar of a dose: clauses between commas, each a row of phrases (dose/phrases.h); a row
// of moves is found first (dose/moves.h).
//
// Says what is wrong instead of reporting it, so that the same grammar can also be asked whether a
// text is a dose at all. Tested by tests/plan/dose_test.cpp and dose_corpus_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "dose/dose.h"
#include "source/tree.h"

namespace chalkleaf::dose {

/// Limits of sense; beyond them a number is a slip of the pen (`bad-value`).
inline constexpr std::int64_t kMostSets = 100;
inline constexpr std::int64_t kMostCount = 10'000;
/// Bytes of a dose that are looked at; keeps hostile lines cheap.
inline constexpr std::size_t kLongestDose = 1'000;

struct DoseProblem {
  enum class Kind { kUnreadable, kBadValue };
  Kind kind = Kind::kUnreadable;
  std::size_t begin = 0;  ///< in the text given
  std::size_t end = 0;
  std::string message;
  std::string hint;
};

/// The forms a dose can have, as a hint.
inline constexpr const char* kDoseForms =
    "write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, "
    "`max hold, up to 15 s, 3 goes`";

tl::expected<Dose, DoseProblem> parse_dose(const source::Text& text);

/// Reads a line that is several moves in a row, without a drill's name and colon: `10 star jumps,
/// 10 high knees, rest 30 s`. Nothing when it is no such row or cannot be read. `Dose::moves` has
/// at least two.
std::optional<Dose> parse_moves_line(const source::Text& text);

}  // namespace chalkleaf::dose
