// See the header.
#include "plan/tokens.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"

namespace chalkleaf::plan {
namespace {

using Kind = Token::Kind;

constexpr std::size_t kMostDigits = 7;    // 9,999,999: above every limit, far below overflow
constexpr std::size_t kMostDecimals = 3;  // thousandths: a Duration is whole milliseconds

struct NumberWord {
  std::string_view word;
  std::int64_t value;
};
constexpr std::array<NumberWord, 14> kNumberWords{{{"one", 1},
                                                   {"two", 2},
                                                   {"three", 3},
                                                   {"four", 4},
                                                   {"five", 5},
                                                   {"six", 6},
                                                   {"seven", 7},
                                                   {"eight", 8},
                                                   {"nine", 9},
                                                   {"ten", 10},
                                                   {"eleven", 11},
                                                   {"twelve", 12},
                                                   {"twenty", 20},
                                                   {"thirty", 30}}};

struct Fraction {
  char32_t code;
  std::int64_t numerator;
  std::int64_t denominator;
};
constexpr std::array<Fraction, 5> kFractions{
    {{U'½', 1, 2}, {U'¼', 1, 4}, {U'¾', 3, 4}, {U'⅓', 1, 3}, {U'⅔', 2, 3}}};

const Fraction* fraction(char32_t code) {
  const auto found = std::find_if(kFractions.begin(), kFractions.end(),
                                  [&](const Fraction& f) { return f.code == code; });
  return found == kFractions.end() ? nullptr : found;
}

bool is_digit(char32_t c) { return c >= '0' && c <= '9'; }

bool is_space(char32_t c) {
  return c == ' ' || (c >= '\t' && c <= '\r') || c == 0xA0 || (c >= 0x2000 && c <= 0x200B) ||
         c == 0x202F || c == 0x3000 || c == 0xFEFF;
}

Kind mark_kind(char32_t c) {
  switch (c) {
    case U'×':
    case U'✕':
    case U'✖':
    case U'⨯':
    case U'*':
      return Kind::kTimes;
    case U'-':
    case U'‐':
    case U'‑':
    case U'‒':
    case U'–':
    case U'—':
    case U'−':
      return Kind::kDash;
    case U',':
      return Kind::kComma;
    case U';':
      return Kind::kSemicolon;
    case U':':
      return Kind::kColon;
    case U'/':
    case U'⁄':
      return Kind::kSlash;
    case U'(':
    case U'[':
      return Kind::kOpen;
    case U')':
    case U']':
      return Kind::kClose;
    case U'.':
    case U'…':
      return Kind::kStop;
    default:
      return Kind::kOther;
  }
}

bool is_letter(char32_t c) {
  if (c < 0x80) return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  if (c >= 0x2010 && c <= 0x2BFF) return false;  // punctuation and symbols
  return !is_space(c) && fraction(c) == nullptr && c != U'×' && c != 0xFFFD;
}

bool is_apostrophe(char32_t c) { return c == '\'' || c == U'’' || c == U'ʼ'; }

/// Cuts a text into tokens, left to right.
class Lexer {
 public:
  explicit Lexer(std::string_view text) : text_(text) {}

  std::vector<Token> run() {
    while (at_ < text_.size()) {
      const auto [code, size] = decode_utf8(text_, at_);
      if (is_space(code)) {
        at_ += size;
      } else if (is_digit(code) || fraction(code) != nullptr) {
        number();
      } else if (is_letter(code)) {
        word();
      } else {
        Token token;
        token.kind = mark_kind(code);
        push(std::move(token), at_ + size);
      }
    }
    return std::move(out_);
  }

 private:
  char32_t code_at(std::size_t at) const {
    return at < text_.size() ? decode_utf8(text_, at).code : U'\0';
  }
  std::size_t digits_end(std::size_t at) const {
    while (at < text_.size() && is_digit(static_cast<unsigned char>(text_[at]))) ++at;
    return at;
  }
  // At most kMostDigits of them.
  std::int64_t value(std::size_t begin, std::size_t end) const {
    std::int64_t out = 0;
    for (std::size_t i = begin; i < std::min(end, begin + kMostDigits); ++i) {
      out = out * 10 + (text_[i] - '0');
    }
    return out;
  }
  void push(Token token, std::size_t end) {
    token.begin = at_;
    token.end = end;
    at_ = end;
    out_.push_back(std::move(token));
  }

  void number() {
    Token token;
    token.kind = Kind::kNumber;
    std::size_t end = digits_end(at_);
    if (clock(end)) return;
    token.too_large = end - at_ > kMostDigits;
    token.numerator = value(at_, end);
    const char32_t mark = code_at(end);
    if (end > at_ && (mark == '.' || mark == ',') && digits_end(end + 1) > end + 1) {
      const std::size_t stop = digits_end(end + 1);
      // `10,000` may be ten or ten thousand: not for us to guess.
      const bool unsure = mark == ',' && stop - end - 1 == 3;
      if (unsure || stop - end - 1 > kMostDecimals) token.too_large = true;
      for (std::size_t i = end + 1; i < std::min(stop, end + 1 + kMostDecimals); ++i) {
        token.numerator = token.numerator * 10 + (text_[i] - '0');
        token.denominator *= 10;
      }
      end = stop;
    } else if (const Fraction* part = fraction(mark)) {  // `2½`, or `½` alone
      token.numerator = token.numerator * part->denominator + part->numerator;
      token.denominator = part->denominator;
      end += decode_utf8(text_, end).size;
    }
    if (token.too_large) token.numerator = token.denominator = 1;
    push(std::move(token), end);
  }

  // `1:30`: digits, a colon, exactly two digits, perhaps once more.
  bool clock(std::size_t end) {
    if (end == at_ || end - at_ > 4) return false;
    Token token;
    token.kind = Kind::kClock;
    token.fields.push_back(value(at_, end));
    while (code_at(end) == ':' && digits_end(end + 1) == end + 3 && token.fields.size() < 3) {
      token.fields.push_back(value(end + 1, end + 3));
      end += 3;
    }
    if (token.fields.size() < 2) return false;
    push(std::move(token), end);
    return true;
  }

  void word() {
    std::size_t end = at_;
    while (end < text_.size()) {
      const auto [code, size] = decode_utf8(text_, end);
      const bool inside = is_apostrophe(code) || code == '-';
      if (!is_letter(code) && !(inside && end > at_ && is_letter(code_at(end + size)))) break;
      end += size;
    }
    Token token;
    token.kind = Kind::kWord;
    token.word = lower_ascii(text_.substr(at_, end - at_));
    for (const NumberWord& known : kNumberWords) {
      if (known.word != token.word) continue;
      token.kind = Kind::kNumber;
      token.numerator = known.value;
      token.in_words = true;
    }
    push(std::move(token), end);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Token> out_;
};

}  // namespace

std::vector<Token> tokens_of(std::string_view text) { return Lexer(text).run(); }

}  // namespace chalkleaf::plan
