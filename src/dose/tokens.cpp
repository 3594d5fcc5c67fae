// See the header.
#include "dose/tokens.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"

namespace chalkleaf::dose {
namespace {

constexpr std::size_t kMostDigits = 7;    // 9,999,999: above every limit, far below overflow
constexpr std::size_t kMostDecimals = 3;  // thousandths: a Duration is whole milliseconds

struct NumberWord {
  std::string_view word;
  std::int64_t value;
};
constexpr std::array<NumberWord, 26> kNumberWords{
    {{"one", 1},      {"two", 2},        {"three", 3},       {"four", 4},      {"five", 5},
     {"six", 6},      {"seven", 7},      {"eight", 8},       {"nine", 9},      {"ten", 10},
     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13},   {"fourteen", 14}, {"fifteen", 15},
     {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18},   {"nineteen", 19}, {"twenty", 20},
     {"thirty", 30},  {"forty", 40},     {"forty-five", 45}, {"fifty", 50},    {"sixty", 60},
     {"ninety", 90}}};

struct Fraction {
  char32_t code;
  std::int64_t numerator;
  std::int64_t denominator;
};
constexpr std::array<Fraction, 6> kFractions{
    {{U'½', 1, 2}, {U'¼', 1, 4}, {U'¾', 3, 4}, {U'⅓', 1, 3}, {U'⅔', 2, 3}, {U'⅛', 1, 8}}};

const Fraction* fraction(char32_t code) {
  const auto found = std::find_if(kFractions.begin(), kFractions.end(),
                                  [&](const Fraction& f) { return f.code == code; });
  return found == kFractions.end() ? nullptr : found;
}

/// A digit as phones and word processors write it, and the bytes it takes.
struct Digit {
  std::int64_t value = 0;
  std::size_t size = 0;  ///< 0: there is none
};

// ASCII, full-width (U+FF10) and keycap digits: an ASCII digit, perhaps U+FE0F, and U+20E3
// (Unicode Technical Standard 51, emoji keycap sequence).
Digit digit_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto [code, size] = decode_utf8(text, at);
  if (code >= 0xFF10 && code <= 0xFF19) return {static_cast<std::int64_t>(code - 0xFF10), size};
  if (code < '0' || code > '9') return {};
  std::size_t end = at + size;
  const std::string_view behind = text.substr(end);
  constexpr std::string_view kSelector = "\xEF\xB8\x8F";
  constexpr std::string_view kKeycap = "\xE2\x83\xA3";
  if (behind.starts_with(kKeycap)) {
    end += kKeycap.size();
  } else if (behind.starts_with(kSelector) &&
             behind.substr(kSelector.size()).starts_with(kKeycap)) {
    end += kSelector.size() + kKeycap.size();
  }
  return {static_cast<std::int64_t>(code - '0'), end - at};
}

/// A run of digits, its value cut off behind kMostDigits.
struct Digits {
  std::size_t end = 0;
  std::size_t count = 0;
  std::int64_t value = 0;
};
Digits digits_at(std::string_view text, std::size_t at, std::size_t most = kMostDigits) {
  Digits out{at, 0, 0};
  for (Digit digit = digit_at(text, at); digit.size > 0; digit = digit_at(text, out.end)) {
    if (out.count < most) out.value = out.value * 10 + digit.value;
    ++out.count;
    out.end += digit.size;
  }
  return out;
}

bool is_space(char32_t c) {
  return c == ' ' || (c >= '\t' && c <= '\r') || c == 0xA0 || (c >= 0x2000 && c <= 0x200B) ||
         c == 0x202F || c == 0x3000 || c == 0xFEFF;
}

TokenKind mark_kind(char32_t c) {
  switch (c) {
    case U'×':
    case U'✕':
    case U'✖':
    case U'⨯':
    case U'*':
    case U'Х':  // a Cyrillic keyboard's; only behind a digit
    case U'х':
      return TokenKind::kTimes;
    case U'-':
    case U'‐':
    case U'‑':
    case U'‒':
    case U'–':
    case U'—':
    case U'−':
    case U'－':
      return TokenKind::kDash;
    case U',':
    case U'，':
    case U'、':
      return TokenKind::kComma;
    case U';':
    case U'；':
      return TokenKind::kSemicolon;
    case U':':
    case U'：':
      return TokenKind::kColon;
    case U'/':
    case U'⁄':
    case U'／':
      return TokenKind::kSlash;
    case U'(':
    case U'[':
    case U'（':
      return TokenKind::kOpen;
    case U')':
    case U']':
    case U'）':
      return TokenKind::kClose;
    case U'.':
    case U'…':
    case U'!':
    case U'。':
      return TokenKind::kStop;
    default:
      return TokenKind::kOther;
  }
}

bool is_letter_code(char32_t c) {
  if (c < 0x80) return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  if (c >= 0x2010 && c <= 0x2BFF) return false;  // punctuation and symbols
  if (c == 0x3001 || c == 0x3002) return false;
  if (c >= 0xFF01 && c <= 0xFF20) return false;  // full-width marks and digits
  return !is_space(c) && fraction(c) == nullptr && c != U'×' && c != 0xFFFD;
}

// In lower case, full-width letters (U+FF21, U+FF41) as ASCII.
std::string narrow_lower(std::string_view text) {
  if (text.find('\xEF') == std::string_view::npos) return lower_ascii(text);
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const auto [code, size] = decode_utf8(text, at);
    const bool wide = (code >= 0xFF21 && code <= 0xFF3A) || (code >= 0xFF41 && code <= 0xFF5A);
    append_utf8(out, wide ? code - 0xFEE0 : code);
    at += size;
  }
  return lower_ascii(out);
}

bool is_apostrophe(char32_t c) { return c == '\'' || c == U'’' || c == U'ʼ'; }
bool is_minute_mark(char32_t c) { return c == '\'' || c == U'’' || c == U'′'; }
bool is_second_mark(char32_t c) { return c == '"' || c == U'”' || c == U'″'; }
bool is_cross(char32_t c) { return c == 'x' || c == 'X' || c == U'ｘ' || c == U'Ｘ'; }
bool is_cyrillic_cross(char32_t c) { return c == U'х' || c == U'Х'; }

/// Cuts a text into tokens, left to right.
class Lexer {
 public:
  explicit Lexer(std::string_view text) : text_(text) {}

  std::vector<Token> run() {
    while (at_ < text_.size()) {
      const auto [code, size] = decode_utf8(text_, at_);
      if (is_space(code)) {
        at_ += size;
      } else if (digit_at(text_, at_).size > 0 || fraction(code) != nullptr) {
        number();
      } else if (behind_digits() && (prime(code, size) || cross(code, size))) {
        continue;
      } else if (code == U'🔟') {
        push(number_token(10), at_ + size);
      } else if (is_letter_code(code)) {
        word();
      } else {
        Token token;
        token.kind = mark_kind(code);
        if (token.is(TokenKind::kOther)) token.word = text_.substr(at_, size);
        // `8~12`; before a number alone it means `about`.
        if ((code == '~' || code == U'～') && behind_digits()) token.kind = TokenKind::kDash;
        push(std::move(token), at_ + size);
      }
    }
    return std::move(out_);
  }

 private:
  char32_t code_at(std::size_t at) const {
    return at < text_.size() ? decode_utf8(text_, at).code : U'\0';
  }
  void push(Token token, std::size_t end) {
    token.begin = at_;
    token.end = end;
    at_ = end;
    out_.push_back(std::move(token));
  }
  void push_word(std::string_view word, std::size_t end) {
    Token token;
    token.kind = TokenKind::kWord;
    token.word = word;
    push(std::move(token), end);
  }
  static Token number_token(std::int64_t value) {
    Token token;
    token.kind = TokenKind::kNumber;
    token.numerator = value;
    return token;
  }
  bool behind_digits() const {
    return !out_.empty() && out_.back().is(TokenKind::kNumber) && !out_.back().in_words &&
           out_.back().end == at_;
  }

  // `20"` and `20''` are seconds, `1'` is minutes. Not in `10's`.
  bool prime(char32_t code, std::size_t size) {
    const char32_t next = code_at(at_ + size);
    const bool two = is_minute_mark(code) && next == code;
    const std::size_t end = at_ + (two ? 2 * size : size);
    if (!is_minute_mark(code) && !is_second_mark(code)) return false;
    if (is_letter_code(code_at(end)) && !is_cross(code_at(end))) return false;
    push_word(two || is_second_mark(code) ? "s" : "min", end);
    return true;
  }

  // The x of `3xhold` is not the word's; the one of a Cyrillic keyboard looks the same.
  bool cross(char32_t code, std::size_t size) {
    if (!is_cyrillic_cross(code) && (!is_cross(code) || !is_letter_code(code_at(at_ + size)))) {
      return false;
    }
    Token token;
    token.kind = TokenKind::kTimes;
    push(std::move(token), at_ + size);
    return true;
  }

  void number() {
    Token token;
    token.kind = TokenKind::kNumber;
    const Digits whole = digits_at(text_, at_);
    std::size_t end = whole.end;
    if (clock(whole)) return;
    token.too_large = whole.count > kMostDigits;
    token.numerator = whole.value;
    const char32_t mark = code_at(end);
    const Digits part = digits_at(text_, end + 1, kMostDecimals);
    if (whole.count > 0 && (mark == '.' || mark == ',') && part.count > 0) {
      // `10,000` may be ten or ten thousand: not for us to guess.
      const bool unsure = mark == ',' && part.count == 3;
      if (unsure || part.count > kMostDecimals) token.too_large = true;
      for (std::size_t i = 0; i < std::min(part.count, kMostDecimals); ++i) {
        token.numerator *= 10;
        token.denominator *= 10;
      }
      token.numerator += part.value;
      end = part.end;
    } else if (const Fraction* share = fraction(mark)) {  // `2½`, or `½` alone
      token.numerator = token.numerator * share->denominator + share->numerator;
      token.denominator = share->denominator;
      end += decode_utf8(text_, end).size;
    }
    if (token.too_large) token.numerator = token.denominator = 1;
    push(std::move(token), end);
  }

  // `1:30`: digits, a colon, exactly two digits, perhaps once more.
  bool clock(const Digits& first) {
    if (first.count == 0 || first.count > 4) return false;
    Token token;
    token.kind = TokenKind::kClock;
    token.fields.push_back(first.value);
    std::size_t end = first.end;
    while (token.fields.size() < 3 && (code_at(end) == ':' || code_at(end) == U'：')) {
      const Digits next = digits_at(text_, end + decode_utf8(text_, end).size);
      if (next.count != 2) break;
      token.fields.push_back(next.value);
      end = next.end;
    }
    if (token.fields.size() < 2) return false;
    push(std::move(token), end);
    return true;
  }

  std::size_t word_end() const {
    std::size_t end = at_;
    while (end < text_.size()) {
      const auto [code, size] = decode_utf8(text_, end);
      const bool inside = is_apostrophe(code) || code == '-';
      if (!is_letter_code(code) && !(inside && end > at_ && is_letter_code(code_at(end + size))))
        break;
      end += size;
    }
    return end;
  }

  void word() {
    std::size_t end = word_end();
    // `20sx3`: the x belongs to the number behind it.
    static constexpr std::array<std::string_view, 6> kCrossed{"sx",   "secx", "secsx",
                                                              "minx", "repx", "repsx"};
    std::string word = narrow_lower(text_.substr(at_, end - at_));
    if (behind_digits() && digit_at(text_, end).size > 0 &&
        std::find(kCrossed.begin(), kCrossed.end(), word) != kCrossed.end()) {
      --end;
      word.pop_back();
    }
    for (const NumberWord& known : kNumberWords) {
      if (known.word != word) continue;
      Token token = number_token(known.value);
      token.in_words = true;
      return push(std::move(token), end);
    }
    push_word(word, end);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Token> out_;
};

}  // namespace

std::vector<Token> tokens_of(std::string_view text) { return Lexer(text).run(); }

}  // namespace chalkleaf::dose
