// The typographer's marks for what people type: ’ for ', “ ” for ", – for -- and between figures, ×
// between figures and behind them, ½ ¼ ¾ for 1/2 and its like, … for three dots; and spaces at
// which no line ends: before a unit, about ×, before a dash. Addresses stay as they are. Only for
// text of the coach's that is printed; never for doses, which are set from the model. Tested by
// tests/sheet/typography_test.cpp.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace chalkleaf::sheet {

/// `the coach's "strong" legs - 3 x 5` → `the coach’s “strong” legs – 3 × 5`, with no-break spaces
/// before the dash and about the ×. Numbers joined by more than one hyphen (a tempo, a date) or
/// slash stay as they are.
std::string typographic(std::string_view text);
/// The same; `places` are byte offsets in `text`, ascending, and become those in what is returned.
std::string typographic(std::string_view text, std::span<std::size_t> places);

/// No-break space: between a figure and its unit, a label and its first word.
inline constexpr std::string_view kNoBreakSpace = "\u00A0";

}  // namespace chalkleaf::sheet
