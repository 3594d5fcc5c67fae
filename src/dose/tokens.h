// Numbers, words and marks: what doses and lengths of time are made of.
//
// Understands what people, phones and word processors write: decimal commas, ½, ×, every dash,
// no-break spaces, `20s` without a space, `1:30`, `20"`, `1'30"`, full-width and keycap digits.
// Numbers are exact fractions and never overflow. Tested by tests/plan/dose_test.cpp and
// dose_corpus_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::dose {

enum class TokenKind {
  kNumber,  ///< `numerator / denominator`, in digits or (then `in_words`) as `twelve`
  kClock,   ///< `1:30` or `1:15:00`; `fields` has its numbers
  kWord,    ///< `word`, lower case; the marks of `1'30"` are the words `min` and `s`
  kTimes,   ///< ×, * and their kin (a letter x is a word)
  kDash,    ///< - – — −
  kComma,
  kSemicolon,
  kColon,
  kSlash,
  kOpen,   ///< (
  kClose,  ///< )
  kStop,   ///< . or !
  kMoves,  ///< a row of moves, put in the place of its tokens (dose/moves.h)
  kOther,  ///< `word` has the sign itself
};

struct Token {
  TokenKind kind = TokenKind::kOther;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
  bool in_words = false;
  bool too_large = false;  ///< more digits than any plan needs; the value is not kept
  std::vector<std::int64_t> fields = {};
  std::string word = {};

  bool is(TokenKind wanted) const { return kind == wanted; }
  bool is_word(std::string_view wanted) const { return kind == TokenKind::kWord && word == wanted; }
  bool is_sign(std::string_view wanted) const {
    return kind == TokenKind::kOther && word == wanted;
  }
  bool is_whole() const { return numerator % denominator == 0; }
};

std::vector<Token> tokens_of(std::string_view text);

}  // namespace chalkleaf::dose
