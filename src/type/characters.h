// What setting type needs to know of single characters, from the Unicode Character Database (ICU).
// Only for this room. Tested through tests/type/lines_test.cpp.
#pragma once

#include <cstdint>
#include <string>

namespace chalkleaf::type {

inline constexpr char32_t kSoftHyphen = 0x00AD;
inline constexpr char32_t kHyphenSign = 0x2010;
inline constexpr char32_t kNoBreakHyphen = 0x2011;

/// As ICU's functions take it.
constexpr std::int32_t as_icu(char32_t code) { return static_cast<std::int32_t>(code); }

/// A character that ends a line (UAX 14, classes BK, CR, LF, NL).
bool is_line_end(char32_t code);
/// A space at which a line may end: it hangs beyond the edge there.
bool is_breaking_space(char32_t code);
/// Any white space that is set as an empty advance, breaking or not.
bool is_blank(char32_t code);
/// Neither seen nor needed by the shaper: controls and invisible format characters.
bool is_dropped(char32_t code);
/// Belongs to the character before it: combining marks, joiners, variation selectors.
bool is_follower(char32_t code);
/// Shapes its neighbours, without a glyph of its own (ZWJ, ZWNJ, variation selectors).
bool is_ignorable(char32_t code);

/// The name of its script, `Devanagari`; empty for what all scripts share and for signs.
std::string script_name(char32_t code);

}  // namespace chalkleaf::type
