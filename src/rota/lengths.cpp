// How long a turn is, as a coach says it: `(4 x 28 min, 2 min to move)`, `28 mins each`, `25, 25,
// 20 min`.
#include <algorithm>
#include <charconv>

#include "rota/around.h"

namespace chalkleaf::rota {
namespace {

constexpr int kLongestTurn = 150;  // minutes; a longer one is an evening

std::optional<int> number_in(const Token& token) {
  int out = 0;
  const auto read = std::from_chars(token.text.data(), token.text.data() + token.text.size(), out);
  const bool whole = token.is_number() && read.ec == std::errc();
  return whole && out > 0 && out <= kLongestTurn ? std::optional(out) : std::nullopt;
}

/// Goes along the numbers of a line.
class LengthReader {
 public:
  LengthReader(const Words& words, std::string_view text)
      : words_(words), tokens_(tokens_of(text)) {}

  Lengths run() {
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
      const auto number = number_in(tokens_[at]);
      if (!number || part_of_clock(at)) continue;
      if (times(at, *number) || list(at)) continue;
      length(at, *number);
    }
    return out_;
  }

 private:
  bool is(std::size_t at, std::string_view text) const {
    return at < tokens_.size() && tokens_[at].text == text;
  }
  // `9.25`, `5-6`, and `x5`, which is a dose.
  bool part_of_clock(std::size_t at) const {
    const auto joined = [&](std::size_t sign, std::size_t other) {
      return other < tokens_.size() && (is(sign, ".") || is(sign, ":") || is(sign, "/")) &&
             tokens_[other].is_number() &&
             tokens_[std::max(sign, other)].begin == tokens_[std::min(sign, other)].end;
    };
    return joined(at + 1, at + 2) || (at > 1 && joined(at - 1, at - 2));
  }
  std::size_t minutes(std::size_t at) const { return match(words_.minutes, tokens_, at); }

  // `4 x 28 min`
  bool times(std::size_t& at, int number) {
    if (!is(at + 1, "x") && !is(at + 1, "×") && !is(at + 1, "*")) return false;
    const auto length = at + 2 < tokens_.size() ? number_in(tokens_[at + 2]) : std::nullopt;
    if (!length || number > 12 || minutes(at + 3) == 0) return false;
    out_.turns = number;
    out_.turn = *length;
    at += 3;
    return true;
  }

  // Three of them and their minutes, or the word for turns in front.
  bool list(std::size_t& at) {
    std::vector<int> found;
    std::size_t i = at;
    while (i < tokens_.size()) {
      const auto number = number_in(tokens_[i]);
      if (!number || *number < 5) break;
      found.push_back(*number);
      i += 1 + minutes(i + 1);
      if (is(i, ",") || is(i, "/") || is(i, "+")) {
        ++i;
      } else if (is(i, "and") || is(i, "then")) {
        ++i;
      } else {
        break;
      }
      if (is(i, "and") || is(i, "then")) ++i;
    }
    bool said = minutes(i) > 0 || (i > 0 && minutes(i - 1) > 0);
    for (std::size_t k = 0; k < at; ++k) said = said || match(words_.turns, tokens_, k) > 0;
    if (found.size() < 2 || (!said && found.size() < 3)) return false;
    if (!said) return false;
    out_.list = found;
    at = i;
    return true;
  }

  void length(std::size_t at, int number) {
    const std::size_t unit = minutes(at + 1);
    std::size_t next = at + 1 + unit;
    if (is(next, ")")) ++next;
    const std::size_t go = is(next, "to") || is(next, "for") || is(next, "a") ? 1 : 0;
    const bool moving = match(words_.move, tokens_, next) > 0 ||
                        match(words_.move, tokens_, next + go) > 0 || before(words_.move, at);
    if (moving && number <= 15 && (unit > 0 || match(words_.move, tokens_, next + go) > 0)) {
      if (!out_.move) out_.move = number;
      return;
    }
    if (match(words_.each, tokens_, next) > 0 && number >= 5 && (unit > 0 || is_last_of(next))) {
      if (!out_.turn) out_.turn = number;
      return;
    }
    if (unit > 0 && number >= 5 && !out_.alone) out_.alone = number;
  }
  // `28 each`, and no word for what there are 28 of.
  bool is_last_of(std::size_t at) const {
    const std::size_t n = match(words_.each, tokens_, at);
    return at + n >= tokens_.size() || !tokens_[at + n].is_word();
  }
  // `change 2 min`, `move: 2 min`
  bool before(const Phrases& phrases, std::size_t at) const {
    for (std::size_t back = 1; back <= 3 && back <= at; ++back) {
      const std::size_t n = match(phrases, tokens_, at - back);
      if (n == 0) continue;
      if (at - back + n == at ||
          (at - back + n + 1 == at && (is(at - 1, ":") || is(at - 1, "=") || is(at - 1, "of"))))
        return true;
    }
    return false;
  }

  const Words& words_;
  std::vector<Token> tokens_;
  Lengths out_;
};

}  // namespace

Lengths lengths_in(const Words& words, std::string_view text) {
  return LengthReader(words, text).run();
}

}  // namespace chalkleaf::rota
