// The notation of `must:` and `wish:` lines.
#include <algorithm>
#include <charconv>

#include "rota/lines.h"
#include "rota/mentions.h"

namespace chalkleaf::rota {
namespace {

bool has(const std::vector<Token>& tokens, std::string_view word) {
  return std::any_of(tokens.begin(), tokens.end(),
                     [&](const Token& one) { return one.text == word; });
}

bool has_row(const std::vector<Token>& tokens, std::initializer_list<std::string_view> words) {
  return std::search(tokens.begin(), tokens.end(), words.begin(), words.end(),
                     [](const Token& one, std::string_view word) { return one.text == word; }) !=
         tokens.end();
}

std::size_t place_of(const std::vector<Token>& tokens, std::string_view word) {
  const auto found = std::find_if(tokens.begin(), tokens.end(),
                                  [&](const Token& one) { return one.text == word; });
  return static_cast<std::size_t>(found - tokens.begin());
}

// How many turns begin before a clock that stands behind a word.
std::optional<int> turns_before(const Rotation& rotation, std::string_view text,
                                const Token& behind) {
  std::size_t at = behind.end;
  while (at < text.size() && text[at] == ' ') ++at;
  auto clock = read_clock(text.substr(at));
  int minutes = 0;
  if (clock) {
    minutes = clock->clock.minutes;
  } else {  // `before 8`
    int hour = 0;
    const auto read = std::from_chars(text.data() + at, text.data() + text.size(), hour);
    if (read.ec != std::errc() || hour < 1 || hour > 23) return std::nullopt;
    minutes = hour * 60;
    const auto start = rotation.start();
    if (start && minutes < *start) minutes += 720;
  }
  int out = 0;
  for (const Turn& turn : rotation.turns) {
    if (!turn.clock) return std::nullopt;
    out += *turn.clock < minutes ? 1 : 0;
  }
  return out;
}

}  // namespace

Rule read_rule(const Words& words, const Rotation& rotation, std::string_view text) {
  Rule out;
  out.text = std::string(text);
  const std::vector<Token> tokens = tokens_of(text);
  for (const Mention& one : Mentions(words, rotation).in(text, tokens)) {
    (one.what == Mention::What::kGroup ? out.groups : out.stations).push_back(one.which);
  }
  const bool no = has(tokens, "not") || has(tokens, "never");
  const std::size_t first = place_of(tokens, "first");
  const bool counted = first + 1 < tokens.size() && tokens[first + 1].is_number();
  if (has_row(tokens, {"same", "way"})) {
    out.kind = Rule::Kind::kSameWayRound;
  } else if (has(tokens, "balanced")) {
    out.kind = Rule::Kind::kBalanced;
  } else if (has(tokens, "hall") && has(tokens, "once")) {
    out.kind = Rule::Kind::kOneHallChange;
  } else if (has_row(tokens, {"side", "by", "side"}) && out.groups.size() == 2) {
    out.kind = Rule::Kind::kNotBeside;
  } else if (no && has(tokens, "after") && out.stations.size() == 2) {
    out.kind = Rule::Kind::kNotAfter;
  } else if (!tokens.empty() && tokens[0].text == "one" && has(tokens, "for") &&
             out.stations.size() > 1) {
    out.kind = Rule::Kind::kOneKit;
  } else if (counted && !out.stations.empty()) {
    out.kind = Rule::Kind::kInFirst;
    std::from_chars(tokens[first + 1].text.data(),
                    tokens[first + 1].text.data() + tokens[first + 1].text.size(), out.number);
  } else if (has(tokens, "before") && out.stations.size() == 2 && !has(tokens, "must")) {
    out.kind = Rule::Kind::kBefore;
  } else if (has(tokens, "before") && out.stations.size() == 1) {
    if (const auto turns = turns_before(rotation, text, tokens[place_of(tokens, "before")])) {
      out.kind = Rule::Kind::kInFirst;
      out.number = *turns;
    }
  } else if (first < tokens.size() && !out.stations.empty()) {
    out.kind = no ? Rule::Kind::kNotFirst : Rule::Kind::kInFirst;
    out.number = 1;
  } else if (has(tokens, "last") && !out.stations.empty()) {
    out.kind = no ? Rule::Kind::kNotLast : Rule::Kind::kLast;
  }
  return out;
}

}  // namespace chalkleaf::rota
