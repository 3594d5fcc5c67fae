// See the header.
#include "rota/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"
#include "source/read.h"

namespace chalkleaf::rota {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

struct List {
  std::string_view key;
  Phrases Words::*phrases;
};

constexpr std::array<List, 28> kLists{
    {{"stations", &Words::stations},   {"pauses", &Words::pauses}, {"rotating", &Words::rotating},
     {"events", &Words::events},       {"turns", &Words::turns},   {"first", &Words::first},
     {"minutes", &Words::minutes},     {"each", &Words::each},     {"move", &Words::move},
     {"rest", &Words::rest},           {"group", &Words::group},   {"coach", &Words::coach},
     {"children", &Words::children},   {"years", &Words::years},   {"at", &Words::at},
     {"with", &Words::with},           {"from", &Words::from},     {"until", &Words::until},
     {"most", &Words::most},           {"same", &Words::same},     {"red", &Words::red},
     {"orange", &Words::orange},       {"yellow", &Words::yellow}, {"green", &Words::green},
     {"turquoise", &Words::turquoise}, {"blue", &Words::blue},     {"purple", &Words::purple},
     {"black", &Words::black}}};

}  // namespace

bool Token::is_word() const { return !text.empty() && is_letter(text[0]); }
bool Token::is_number() const {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> out;
  std::size_t at = 0;
  while (at < text.size()) {
    if (is_blank(text[at])) {
      ++at;
      continue;
    }
    std::size_t end = at + 1;
    if (is_letter(text[at]) || is_digit(text[at])) {
      const bool number = is_digit(text[at]);
      const auto goes_on = [&](char c) {
        return number ? is_digit(c) : is_letter(c) || is_digit(c) || c == '\'';
      };
      while (end < text.size() && goes_on(text[end])) ++end;
    }
    out.push_back({lower_ascii(text.substr(at, end - at)), at, end});
    at = end;
  }
  return out;
}

std::size_t match(const Phrases& phrases, const std::vector<Token>& tokens, std::size_t at) {
  std::size_t longest = 0;
  for (const std::vector<std::string>& phrase : phrases) {
    const std::size_t n = phrase.size();
    if (n <= longest || at + n > tokens.size()) continue;
    std::size_t i = 0;
    while (i < n && tokens[at + i].text == phrase[i]) ++i;
    if (i == n) longest = n;
  }
  return longest;
}

bool within(const Phrases& phrases, std::string_view text) {
  const std::vector<Token> tokens = tokens_of(text);
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    if (match(phrases, tokens, at) > 0) return true;
  }
  return false;
}

std::shared_ptr<const Words> read_words(const SourcePtr& source, Diagnostics& diagnostics) {
  auto words = std::make_shared<Words>();
  words->source = source;
  Diagnostics found;
  const auto root = source::read_yaml(source, found);
  if (root) {
    for (const auto& [key, value] : root->entries) {
      const std::string& named = key.text;
      const auto list = std::find_if(kLists.begin(), kLists.end(),
                                     [&named](const List& one) { return one.key == named; });
      if (list == kLists.end()) {
        if (key.text == "language") continue;
        found.error("unknown-key", key.span, fmt::format("‘{}’ means nothing here", key.text),
                    "remove it, or see the head of the file for the keys there are");
        continue;
      }
      for (const source::YamlNode& item : value.items) {
        std::vector<std::string> phrase;
        for (const Token& token : tokens_of(item.text)) phrase.push_back(token.text);
        if (!phrase.empty()) (words.get()->*list->phrases).push_back(std::move(phrase));
      }
    }
    for (const List& list : kLists) {
      if (!(words.get()->*list.phrases).empty()) continue;
      found.error("missing-key", root->span, fmt::format("there are no words for ‘{}’", list.key),
                  fmt::format("add ‘{}: […]’", list.key));
    }
  }
  diagnostics.append(found);
  return found.has_errors() ? nullptr : words;
}

}  // namespace chalkleaf::rota
