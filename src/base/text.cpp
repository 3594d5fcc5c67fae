#include "base/text.h"

#include <unicode/uchar.h>

#include <algorithm>
#include <array>

namespace chalkleaf {
namespace {

bool is_continuation(unsigned char byte) { return (byte & 0xC0U) == 0x80U; }

// Unicode 15, 3.9, table 3-7: the well-formed byte sequences. Returns 0 when ill-formed.
std::size_t sequence_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
  };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF)
    return is_continuation(static_cast<unsigned char>(byte(1))) ? 2 : 0;
  const auto tail = [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i <= to; ++i) {
      if (!is_continuation(static_cast<unsigned char>(byte(i)))) return false;
    }
    return true;
  };
  if (first >= 0xE0 && first <= 0xEF) {
    const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = first == 0xED ? 0x9F : 0xBF;
    return byte(1) >= low && byte(1) <= high && tail(2, 2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const unsigned low = first == 0xF0 ? 0x90 : 0x80;
    const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
    return byte(1) >= low && byte(1) <= high && tail(2, 3) ? 4 : 0;
  }
  return 0;
}

// East Asian Wide and Fullwidth (UAX 11); emoji are Wide there.
bool is_wide(char32_t c) {
  const int width = u_getIntPropertyValue(static_cast<UChar32>(c), UCHAR_EAST_ASIAN_WIDTH);
  return width == U_EA_WIDE || width == U_EA_FULLWIDTH;
}

// Marks that stand on the letter before them, and characters that only steer.
bool is_zero_width(char32_t c) {
  constexpr std::uint32_t kNone = U_GC_MN_MASK | U_GC_ME_MASK | U_GC_CF_MASK;
  return (U_GET_GC_MASK(static_cast<UChar32>(c)) & kNone) != 0;
}

std::u32string to_code_points(std::string_view text) {
  std::u32string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto [code, size] = decode_utf8(text, i);
    out.push_back(code);
    i += size;
  }
  return out;
}

}  // namespace

Decoded decode_utf8(std::string_view text, std::size_t at) {
  const std::size_t size = sequence_length(text, at);
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  switch (size) {
    case 1:
      return {byte(0), 1};
    case 2:
      return {(byte(0) & 0x1FU) << 6U | (byte(1) & 0x3FU), 2};
    case 3:
      return {(byte(0) & 0x0FU) << 12U | (byte(1) & 0x3FU) << 6U | (byte(2) & 0x3FU), 3};
    case 4:
      return {(byte(0) & 0x07U) << 18U | (byte(1) & 0x3FU) << 12U | (byte(2) & 0x3FU) << 6U |
                  (byte(3) & 0x3FU),
              4};
    default:
      return {0xFFFD, 1};
  }
}

void append_utf8(std::string& out, char32_t code) {
  if (code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) code = 0xFFFD;
  const auto push = [&](char32_t byte) { out.push_back(static_cast<char>(byte)); };
  if (code < 0x80) {
    push(code);
  } else if (code < 0x800) {
    push(0xC0 | code >> 6U);
    push(0x80 | (code & 0x3FU));
  } else if (code < 0x10000) {
    push(0xE0 | code >> 12U);
    push(0x80 | (code >> 6U & 0x3FU));
    push(0x80 | (code & 0x3FU));
  } else {
    push(0xF0 | code >> 18U);
    push(0x80 | (code >> 12U & 0x3FU));
    push(0x80 | (code >> 6U & 0x3FU));
    push(0x80 | (code & 0x3FU));
  }
}

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = sequence_length(text, i);
    if (size == 0) return i;
    i += size;
  }
  return std::nullopt;
}

std::size_t count_characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); i += decode_utf8(text, i).size) ++count;
  return count;
}

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t i = 0; i < text.size();) {
    const auto [code, size] = decode_utf8(text, i);
    i += size;
    if (!is_zero_width(code)) width += is_wide(code) ? 2 : 1;
  }
  return width;
}

bool is_uri_character(char c) {
  return c > ' ' && c < 0x7F && std::string_view("\"<>\\^`{|}").find(c) == std::string_view::npos;
}

std::string_view trim(std::string_view text) {
  const auto space_at_front = [](std::string_view s) -> std::size_t {
    if (s.empty()) return 0;
    if (s[0] == ' ' || (s[0] >= '\t' && s[0] <= '\r')) return 1;
    return s.starts_with("\xC2\xA0") ? 2 : 0;
  };
  const auto space_at_back = [](std::string_view s) -> std::size_t {
    if (s.empty()) return 0;
    if (s.back() == ' ' || (s.back() >= '\t' && s.back() <= '\r')) return 1;
    return s.ends_with("\xC2\xA0") ? 2 : 0;
  };
  while (const std::size_t n = space_at_front(text)) text.remove_prefix(n);
  while (const std::size_t n = space_at_back(text)) text.remove_suffix(n);
  return text;
}

std::string lower_ascii(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

bool starts_with_ignoring_case(std::string_view text, std::string_view prefix) {
  return text.size() >= prefix.size() &&
         lower_ascii(text.substr(0, prefix.size())) == lower_ascii(prefix);
}

std::string replace_all(std::string_view text, std::string_view from, std::string_view to) {
  std::string out;
  while (!from.empty()) {
    const std::size_t at = text.find(from);
    if (at == std::string_view::npos) break;
    out.append(text.substr(0, at)).append(to);
    text.remove_prefix(at + from.size());
  }
  return out.append(text);
}

std::string join_list(const std::vector<std::string>& items, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) {
      if (i + 1 == items.size()) {
        out.append(" ").append(last).append(" ");
      } else {
        out.append(", ");
      }
    }
    out.append(items[i]);
  }
  return out;
}

std::string escape_xml(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const Decoded decoded = decode_utf8(text, i);
    i += decoded.size;
    switch (decoded.code) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        if (decoded.code >= 0x20 && decoded.code != 0xFFFE && decoded.code != 0xFFFF) {
          append_utf8(out, decoded.code);
        } else if (decoded.code == '\n' || decoded.code == '\t') {
          out += ' ';
        }
    }
  }
  return out;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  constexpr std::size_t kLongest = 64;  // words, not essays: keeps the work small on hostile input
  auto s = to_code_points(a.substr(0, 4 * kLongest));
  auto t = to_code_points(b.substr(0, 4 * kLongest));
  s.resize(std::min(s.size(), kLongest));
  t.resize(std::min(t.size(), kLongest));
  // Three rows of the table are enough: this one, the one before, and, for swaps, the one before
  // that.
  std::array<std::array<std::size_t, kLongest + 1>, 3> rows{};
  for (std::size_t j = 0; j <= t.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= s.size(); ++i) {
    auto& row = rows[i % 3];
    const auto& above = rows[(i + 2) % 3];
    const auto& two_above = rows[(i + 1) % 3];
    row[0] = i;
    for (std::size_t j = 1; j <= t.size(); ++j) {
      const std::size_t change = s[i - 1] == t[j - 1] ? 0 : 1;
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
      const bool swapped = i > 1 && j > 1 && s[i - 1] == t[j - 2] && s[i - 2] == t[j - 1];
      if (swapped) row[j] = std::min(row[j], two_above[j - 2] + 1);
    }
  }
  return rows[s.size() % 3][t.size()];
}

std::optional<std::string> closest(std::string_view word,
                                   const std::vector<std::string>& candidates) {
  constexpr std::size_t kLongest = 64;
  const std::string wanted = lower_ascii(word.substr(0, 4 * kLongest));
  const std::size_t length = count_characters(wanted);
  if (length > kLongest) return std::nullopt;
  const std::size_t limit = std::max<std::size_t>(1, length / 3);
  std::optional<std::string> best;
  std::size_t best_distance = limit + 1;
  for (const std::string& candidate : candidates) {
    // Each character of difference in length is an edit at least; a character has four bytes at
    // most.
    if (candidate.size() > 4 * (length + limit) || candidate.size() + limit < length) continue;
    const std::size_t distance = edit_distance(wanted, lower_ascii(candidate));
    if (distance < best_distance) {
      best_distance = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace chalkleaf
