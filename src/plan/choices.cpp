// See the header.
#include "plan/choices.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "base/text.h"
#include "dose/tokens.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kLongestName = 300;  // bytes; keeps hostile lines cheap
constexpr std::size_t kMostChoices = 8;

bool is_pair_word(const Token& token) {
  static constexpr std::array<std::string_view, 37> kWords{
      "left",   "right",  "forwards", "backwards", "forward",  "backward", "sideways", "up",
      "down",   "in",     "out",      "on",        "off",      "with",     "without",  "more",
      "less",   "fewer",  "straight", "bent",      "open",     "closed",   "big",      "small",
      "high",   "low",    "fast",     "slow",      "quick",    "long",     "short",    "both",
      "single", "double", "tucked",   "piked",     "straddled"};
  if (token.is(TokenKind::kNumber) || token.is(TokenKind::kClock)) return true;
  return std::find(kWords.begin(), kWords.end(), token.word) != kWords.end();
}

// `one or two legs`, `forwards or backwards`: one drill done in one of two ways.
bool joins_a_pair(const std::vector<Token>& tokens, std::size_t at) {
  return is_pair_word(tokens[at - 1]) && is_pair_word(tokens[at + 1]);
}

}  // namespace

std::vector<Words> choices_in(const source::Text& name, std::size_t most_words) {
  const std::string& all = name.str();
  if (all.size() > kLongestName) return {};
  const std::vector<Token> tokens = tokens_of(all);
  std::vector<Words> out;
  std::size_t begin = 0;
  int open = 0;
  const auto piece = [&](std::size_t end) {
    source::Text text = name.slice(begin, end).trimmed();
    while (text.str().ends_with(',')) text = text.slice(0, text.str().size() - 1).trimmed();
    out.push_back(plain_words_of(text));
  };
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (tokens[i].is(TokenKind::kOpen)) ++open;
    if (tokens[i].is(TokenKind::kClose)) --open;
    if (!tokens[i].is_word("or") || open > 0 || i == 0 || i + 1 == tokens.size()) continue;
    if (joins_a_pair(tokens, i)) continue;
    piece(tokens[i].begin);
    begin = tokens[i].end;
  }
  if (out.empty()) return {};
  piece(all.size());
  const bool bad = std::any_of(out.begin(), out.end(), [&](const Words& one) {
    const auto gaps = std::count(one.text.begin(), one.text.end(), ' ');
    return one.empty() || static_cast<std::size_t>(gaps) >= most_words;
  });
  if (bad || out.size() > kMostChoices) return {};
  return out;
}

}  // namespace chalkleaf::plan
