// See the header.
#include "plan/headings.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/text.h"
#include "dose/tokens.h"
#include "plan/values.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

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

bool parts(const Token& token) {
  return token.is(TokenKind::kColon) || token.is(TokenKind::kDash) || token.is(TokenKind::kComma) ||
         token.is(TokenKind::kOpen);
}

// `about`, `ca.`, `max`: words around a time that leave it what it is.
bool is_vague(const Token& token) {
  static constexpr std::array<std::string_view, 12> kWords{
      "about", "around", "approx", "approximately", "roughly", "ca", "circa", "max", "maximum",
      "up",    "to",     "for"};
  return token.is(TokenKind::kStop) || token.is_sign("~") ||
         std::find(kWords.begin(), kWords.end(), token.word) != kWords.end();
}

// The time that tokens `begin` to `end` are, and nothing else; of `10-15 min` the longer one.
std::optional<Sourced<Duration>> time_in(const source::Text& text, const std::vector<Token>& tokens,
                                         std::size_t begin, std::size_t end) {
  while (begin < end && is_vague(tokens[begin])) ++begin;
  while (begin < end && is_vague(tokens[end - 1])) --end;
  if (end - begin > 2 && tokens[begin].is(TokenKind::kNumber) &&
      (tokens[begin + 1].is(TokenKind::kDash) || tokens[begin + 1].is_word("to"))) {
    begin += 2;
  }
  if (begin >= end ||
      (!tokens[begin].is(TokenKind::kNumber) && !tokens[begin].is(TokenKind::kClock))) {
    return std::nullopt;
  }
  const source::Text written = text.slice(tokens[begin].begin, tokens[end - 1].end);
  const auto time = parse_duration(written.str(), Zero::kRefused);
  if (!time) return std::nullopt;
  return Sourced<Duration>{*time, written.span()};
}

// `Games (10 min)`, `Games: 10 min`, `Games 10 min`, `Games (10 min) with hoops`, `10 min: Games`.
std::optional<Heading> with_time(const source::Text& text, const std::vector<Token>& tokens) {
  const std::size_t n = tokens.size();
  const auto heading = [&](std::size_t begin, std::size_t end, const Sourced<Duration>& time) {
    return Heading{plain_words_of(text.slice(begin, end)), time};
  };
  for (std::size_t i = 0; i < n; ++i) {
    if (!tokens[i].is(TokenKind::kOpen)) continue;
    std::size_t close = i + 1;
    while (close < n && !tokens[close].is(TokenKind::kClose)) ++close;
    const auto time = close < n ? time_in(text, tokens, i + 1, close) : std::nullopt;
    if (!time) continue;
    source::Text title = text.slice(0, tokens[i].begin).trimmed();
    const source::Text rest = text.slice(tokens[close].end, text.str().size()).trimmed();
    if (!title.empty() && !rest.empty()) title.append(" ", rest.span());
    title.append(rest);
    if (!title.empty()) return Heading{plain_words_of(title), time};
  }
  for (std::size_t i = 1; i + 1 < n; ++i) {
    if (!parts(tokens[i])) continue;
    const auto time = time_in(text, tokens, i + 1, n);
    if (time && tokens[i].begin > 0) return heading(0, tokens[i].begin, *time);
  }
  // A clock time alone may be when the part begins: `Stretch 17:00`.
  for (std::size_t i = 1; i + 1 < n; ++i) {
    if (!tokens[i].is(TokenKind::kNumber) || tokens[i - 1].is(TokenKind::kNumber)) continue;
    if (const auto time = time_in(text, tokens, i, n)) return heading(0, tokens[i].begin, *time);
  }
  for (std::size_t end = 2; end < n; ++end) {
    const std::size_t begin = parts(tokens[end]) ? end + 1 : end;
    if (begin >= n || !tokens[0].is(TokenKind::kNumber)) continue;
    const auto time = time_in(text, tokens, 0, end);
    if (!time) continue;
    const bool sure = begin > end || (text.str()[tokens[begin].begin] >= 'A' &&
                                      text.str()[tokens[begin].begin] <= 'Z');
    if (sure) return heading(tokens[begin].begin, text.str().size(), *time);
  }
  return std::nullopt;
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
  constexpr std::size_t kLongestTitle = 200;  // a title, not an essay
  if (out.title.text.size() > kLongestTitle) return out;
  const std::vector<Token> tokens = tokens_of(text.str());
  auto found = with_time(text, tokens);
  if (found && !found->title.empty()) return std::move(*found);
  return out;
}

}  // namespace chalkleaf::plan
