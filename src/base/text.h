// Small helpers for UTF-8 text: walking it, measuring it for a terminal, and guessing what was
// meant. Tested by tests/base/text_test.cpp.
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf {

/// One decoded character: its code point and how many bytes it took. An invalid byte gives U+FFFD
/// and 1.
struct Decoded {
  char32_t code = 0;
  std::size_t size = 0;
};
/// Decodes the character that begins at `at` (which must be inside `text`).
Decoded decode_utf8(std::string_view text, std::size_t at);
/// Appends a code point as UTF-8.
void append_utf8(std::string& out, char32_t code);
/// The offset of the first byte that is not valid UTF-8 (Unicode 15, table 3-7), if there is one.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);
/// The number of code points.
std::size_t count_characters(std::string_view text);
/// Columns the text takes on a terminal: wide East Asian characters 2, combining marks 0, a tab 1.
std::size_t display_width(std::string_view text);

/// Without white space (space, tab, line ends, no-break space) at either end.
std::string_view trim(std::string_view text);
/// A space, tab or line end of a file.
inline bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
/// An ASCII letter, or a byte of a character beyond ASCII.
inline bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}
/// Whether a character may stand in a URI as it is (RFC 3986, 2).
bool is_uri_character(char c);
/// ASCII letters to lower case; everything else as it is.
std::string lower_ascii(std::string_view text);
bool starts_with_ignoring_case(std::string_view text, std::string_view prefix);
std::string replace_all(std::string_view text, std::string_view from, std::string_view to);
/// "a", "a and b", "a, b and c".
std::string join_list(const std::vector<std::string>& items, std::string_view last = "and");

/// The one plural rule of messages: `1 plan`, `2 plans`.
template <std::integral Number>
std::string counted(Number n, std::string_view one, std::string_view many) {
  std::string out = std::to_string(n);
  out += ' ';
  return out += n == 1 ? one : many;
}
/// As text or a quoted attribute of XML 1.0 (2.2, 2.4): `&`, `<`, `>` and `"` escaped; what may not
/// stand in XML is left out, a tab or line end becomes a space.
std::string escape_xml(std::string_view text);

/// Optimal string alignment distance (insert, delete, replace, swap of neighbours) in characters.
std::size_t edit_distance(std::string_view a, std::string_view b);
/// The closest of `candidates` to `word`, ignoring ASCII case, if it is close enough to be what was
/// meant: at most max(1, length / 3) edits.
std::optional<std::string> closest(std::string_view word,
                                   const std::vector<std::string>& candidates);

}  // namespace chalkleaf
