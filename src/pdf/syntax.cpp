#include "pdf/syntax.h"

#include <algorithm>
#include <charconv>

#include "base/text.h"

namespace chalkleaf::pdf {
namespace {

constexpr char kDigits[] = "0123456789ABCDEF";

bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; });
}

}  // namespace

void append_int(std::string& out, std::int64_t value) {
  char buffer[24];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  out.append(buffer, end);
}

char* write_thousandths(char* at, std::int64_t thousandths) {
  if (thousandths < 0) {
    *at++ = '-';
    thousandths = -thousandths;
  }
  const std::int64_t whole = thousandths / 1000;
  auto rest = static_cast<int>(thousandths % 1000);
  if (whole >= 1000) {
    at = std::to_chars(at, at + kLongestNumber, whole).ptr;
  } else if (whole != 0 || rest == 0) {
    const auto small = static_cast<int>(whole);
    if (small >= 100) *at++ = kDigits[small / 100];
    if (small >= 10) *at++ = kDigits[small / 10 % 10];
    *at++ = kDigits[small % 10];
  }
  if (rest == 0) return at;
  *at++ = '.';
  for (int place = 100; rest > 0; rest %= place, place /= 10) *at++ = kDigits[rest / place];
  return at;
}

void append_thousandths(std::string& out, std::int64_t thousandths) {
  char buffer[kLongestNumber];
  out.append(buffer, write_thousandths(buffer, thousandths));
}

void append_ratio(std::string& out, Length a, Length b) {
  constexpr std::int64_t kMillion = 1'000'000;
  const std::int64_t millionths =
      rounded_quotient(a.in_millipoints() * kMillion, b.in_millipoints());
  if (millionths < 0) out.push_back('-');
  const std::int64_t size = millionths < 0 ? -millionths : millionths;
  append_int(out, size / kMillion);
  std::int64_t rest = size % kMillion;
  if (rest == 0) return;
  out.push_back('.');
  for (std::int64_t place = kMillion / 10; rest > 0; rest %= place, place /= 10)
    out.push_back(kDigits[rest / place]);
}

void append_hex_16(std::string& out, std::uint16_t value) {
  for (int shift = 12; shift >= 0; shift -= 4) out.push_back(kDigits[value >> shift & 0xF]);
}

void append_reference(std::string& out, unsigned object) {
  append_int(out, object);
  out += " 0 R";
}

std::string reference(unsigned object) {
  std::string out;
  append_reference(out, object);
  return out;
}

std::u16string utf16(std::string_view utf8) {
  std::u16string out;
  for (std::size_t i = 0; i < utf8.size();) {
    const Decoded decoded = decode_utf8(utf8, i);
    i += decoded.size;
    if (decoded.code < 0x10000) {
      out.push_back(static_cast<char16_t>(decoded.code));
    } else {
      const char32_t rest = decoded.code - 0x10000;
      out.push_back(static_cast<char16_t>(0xD800 + (rest >> 10U)));
      out.push_back(static_cast<char16_t>(0xDC00 + (rest & 0x3FFU)));
    }
  }
  return out;
}

void append_utf16_hex(std::string& out, std::u16string_view text) {
  for (const char16_t unit : text) append_hex_16(out, unit);
}

void append_text_string(std::string& out, std::string_view utf8) {
  if (!is_plain(utf8)) {
    out += "<FEFF";
    append_utf16_hex(out, utf16(utf8));
    out.push_back('>');
    return;
  }
  out.push_back('(');
  for (const char c : utf8) {
    if (c == '(' || c == ')' || c == '\\') out.push_back('\\');
    out.push_back(c);
  }
  out.push_back(')');
}

std::string text_string(std::string_view utf8) {
  std::string out;
  append_text_string(out, utf8);
  return out;
}

void append_colour(std::string& out, Colour colour, Paint paint) {
  const auto channel = [&](std::uint8_t value) {
    append_thousandths(out, rounded_quotient(value * 1000, 255));
    out.push_back(' ');
  };
  const bool fill = paint == Paint::kFill;
  channel(colour.red);
  if (colour.red == colour.green && colour.green == colour.blue) {
    out += fill ? "g\n" : "G\n";
    return;
  }
  channel(colour.green);
  channel(colour.blue);
  out += fill ? "rg\n" : "RG\n";
}

}  // namespace chalkleaf::pdf
