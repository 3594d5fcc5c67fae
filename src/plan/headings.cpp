// See the header.
#include "plan/headings.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/text.h"
#include "plan/tokens.h"
#include "plan/values.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using Kind = Token::Kind;

// The first words in lower-case ASCII letters, anything else parting them.
std::vector<std::string> first_words(std::string_view title, std::size_t most) {
  std::vector<std::string> out;
  bool inside = false;
  for (const char c : lower_ascii(title)) {
    const bool letter = c >= 'a' && c <= 'z';
    if (letter && !inside) {
      if (out.size() == most) break;
      out.emplace_back();
    }
    if (letter) out.back() += c;
    inside = letter;
  }
  return out;
}

// Behind the separator that begins at token `at`; nothing when there is no time there to the end.
std::optional<std::size_t> time_begin(const std::vector<Token>& tokens, std::size_t at) {
  const Token& mark = tokens[at];
  const bool parts = mark.is(Kind::kColon) || mark.is(Kind::kDash) || mark.is(Kind::kComma) ||
                     mark.is(Kind::kOpen);
  if (!parts || at == 0 || at + 1 >= tokens.size()) return std::nullopt;
  const Token& next = tokens[at + 1];
  if (!next.is(Kind::kNumber) && !next.is(Kind::kClock)) return std::nullopt;
  if (mark.is(Kind::kOpen) && !tokens.back().is(Kind::kClose)) return std::nullopt;
  return at + 1;
}

}  // namespace

PartRole role_of(std::string_view title) {
  const auto is_any = [](const std::string& word, std::initializer_list<std::string_view> known) {
    return std::find(known.begin(), known.end(), word) != known.end();
  };
  std::string word;  // `Warm-up`, `warm up` and `WARMUP` are one word
  for (const std::string& piece : first_words(title, 2)) {
    word += piece;
    if (is_any(word, {"warmup", "warmups", "warmingup"})) return PartRole::kWarmUp;
    if (is_any(word, {"cooldown", "cooldowns", "coolingdown", "warmdown", "warmingdown"})) {
      return PartRole::kCoolDown;
    }
  }
  return PartRole::kMain;
}

Heading read_heading(const source::Text& text) {
  Heading out{plain_words_of(text), std::nullopt};
  constexpr std::size_t kLongest = 200;  // a title, not an essay
  if (out.title.text.size() > kLongest) return out;
  const std::vector<Token> tokens = tokens_of(text.str());
  for (std::size_t i = 1; i < tokens.size(); ++i) {
    const auto begin = time_begin(tokens, i);
    if (!begin) continue;
    const std::size_t last = tokens.size() - (tokens.back().is(Kind::kClose) ? 2 : 1);
    if (last < *begin) continue;
    const source::Text written = text.slice(tokens[*begin].begin, tokens[last].end);
    const auto time = parse_duration(written.str(), Zero::kRefused);
    if (!time) continue;
    const Words title = plain_words_of(text.slice(0, tokens[i].begin));
    if (title.empty()) continue;
    out.title = title;
    out.time = Sourced<Duration>{*time, written.span()};
    return out;
  }
  return out;
}

}  // namespace chalkleaf::plan
