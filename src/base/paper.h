// Sheets of paper: two sizes of ISO 216 and two of North America, each upright or on its side.
//
// A4 and A5 in the millimetres of ISO 216; Letter in the inches of ANSI/ASME Y14.1 (size A), and
// half of it: value from memory, as both standards are sold. Tested by tests/base/paper_test.cpp.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "base/geometry.h"

namespace chalkleaf {

enum class Paper {
  kA4,
  kA5,
  kLetter,
  kHalfLetter,
  kA4Landscape,
  kA5Landscape,
  kLetterLandscape,
  kHalfLetterLandscape
};
inline constexpr std::array kPapers = {
    Paper::kA4,          Paper::kA5,          Paper::kLetter,          Paper::kHalfLetter,
    Paper::kA4Landscape, Paper::kA5Landscape, Paper::kLetterLandscape, Paper::kHalfLetterLandscape};

Size paper_size(Paper paper);
bool is_landscape(Paper paper);
/// The same sheet turned by a quarter.
Paper turned(Paper paper);
/// The paper whose look serves for this one: upright for one on its side, else that of ISO 216 next
/// to it in size. A4 and A5 are their own.
Paper kin(Paper paper);
/// Half the sheet, as it is after one cut or fold across its long side; none for A5 and
/// half-letter, which are halves.
std::optional<Paper> half_of(Paper paper);
/// The sheet that is cut or folded into two of this; none for A4 and Letter.
std::optional<Paper> double_of(Paper paper);

/// `a5-landscape`: as a theme and a command write it.
std::string_view paper_key(Paper paper);
/// Reads `A5`, `a5 landscape`, `landscape A5`, `US Letter`, `half_letter`; nothing for other words.
std::optional<Paper> read_paper(std::string_view text);
/// What may be written, for messages.
inline constexpr std::string_view kPaperChoices =
    "a4, a5, letter or half-letter, and behind it landscape for a sheet on its side";

}  // namespace chalkleaf
