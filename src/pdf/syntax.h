// How numbers, strings and names are written in a PDF (ISO 32000-1, 7.3). Only for this room.
//
// Numbers are made from whole thousandths, so what is laid out is what is printed, on every machine
// and in every locale. Tested by tests/pdf/syntax_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/colour.h"
#include "base/geometry.h"

namespace chalkleaf::pdf {

void append_int(std::string& out, std::int64_t value);
/// A number of thousandths, as the shortest decimal: 1500 is "1.5", -20 is "-.02".
void append_thousandths(std::string& out, std::int64_t thousandths);
/// The same to where there is room for kLongestNumber; where it ends. For paths, which are nothing
/// but thousands of numbers.
char* write_thousandths(char* at, std::int64_t thousandths);
inline constexpr std::size_t kLongestNumber = 28;
inline void append_length(std::string& out, Length length) {
  append_thousandths(out, length.in_millipoints());
}
/// a / b to six decimals; `b` is positive.
void append_ratio(std::string& out, Length a, Length b);
/// Four hexadecimal digits.
void append_hex_16(std::string& out, std::uint16_t value);
/// `12 0 R`
void append_reference(std::string& out, unsigned object);
std::string reference(unsigned object);
/// A text string (7.9.2.2): as it is when it is plain ASCII, in UTF-16 otherwise.
void append_text_string(std::string& out, std::string_view utf8);
std::string text_string(std::string_view utf8);
std::u16string utf16(std::string_view utf8);
/// The units of a UTF-16 text as hexadecimal digits, without the angle brackets.
void append_utf16_hex(std::string& out, std::u16string_view text);
/// "0.5 g", or "1 0 0 rg"; capitals for strokes.
enum class Paint { kFill, kStroke };
void append_colour(std::string& out, Colour colour, Paint paint);

/// a / b to the nearest whole number, halves away from zero. `b` is positive.
constexpr std::int64_t rounded_quotient(std::int64_t a, std::int64_t b) {
  return (a >= 0 ? 2 * a + b : 2 * a - b) / (2 * b);
}

}  // namespace chalkleaf::pdf
