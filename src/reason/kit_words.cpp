#include "reason/kit_words.h"

#include <algorithm>
#include <array>

#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

constexpr std::array<std::string_view, 13> kNumbers = {"no",   "one",    "two",   "three", "four",
                                                       "five", "six",    "seven", "eight", "nine",
                                                       "ten",  "eleven", "twelve"};
constexpr std::int64_t kMostItems = 100;  // a larger number is no number of things for a child

std::optional<std::int64_t> number(const std::string& word) {
  const auto* found = std::find(kNumbers.begin() + 1, kNumbers.end(), word);
  if (found != kNumbers.end()) return found - kNumbers.begin();
  if (word.empty() || word.size() > 3) return std::nullopt;
  std::int64_t out = 0;
  for (const char c : word) {
    if (c < '0' || c > '9') return std::nullopt;
    out = out * 10 + (c - '0');
  }
  return out > 0 && out <= kMostItems ? std::optional(out) : std::nullopt;
}

bool says_how_many(const std::string& word) {
  return number(word) || is_one_of(word, {"a", "an", "the", "your", "our", "some", "any", "each",
                                          "every", "pair", "per", "both"});
}

// Behind these comes what the thing is made of, filled with or used for.
bool ends_the_noun(const std::string& word) {
  return is_one_of(word, {"with", "on", "in", "under", "from", "at", "to", "for", "held", "between",
                          "beside", "along", "against", "without", "behind", "each", "per"});
}

bool is_gymnast(const std::string& word) {
  return is_one_of(singular(word), {"gymnast", "child", "children", "person", "people", "head"});
}

}  // namespace

std::vector<std::vector<std::string>> things_in(std::string_view text) {
  std::vector<std::vector<std::string>> out(1);
  bool ended = false;
  for (const TextWord& word : words_in(text)) {
    if (word.text == "or") {
      out.emplace_back();
      ended = false;
    } else if (ends_the_noun(word.text)) {
      ended = !out.back().empty();
    } else if (!ended && !says_how_many(word.text)) {
      out.back().push_back(singular(word.text));
    }
  }
  std::erase_if(out, [](const auto& thing) { return thing.empty(); });
  return out;
}

void KitNouns::add(std::string_view text) {
  for (const TextWord& word : words_in(text)) nouns_.insert(singular(word.text));
}

// `roll of tape`: either may be what the list calls it.
bool KitNouns::has(const std::vector<std::string>& thing) const {
  const auto of = std::find(thing.begin(), thing.end(), "of");
  if (of != thing.begin() && of != thing.end() && nouns_.count(*std::prev(of)) > 0) return true;
  return nouns_.count(thing.back()) > 0;
}

bool is_everywhere(const std::vector<std::string>& thing) {
  return is_one_of(thing.back(),
                   {"wall",  "floor",    "ground", "carpet",    "chair",   "door",   "doorway",
                    "frame", "sofa",     "settee", "doorframe", "bed",     "stair",  "step",
                    "table", "corner",   "window", "shelf",     "partner", "friend", "coach",
                    "adult", "grown-up", "parent", "hand",      "music"});
}

std::string joined(const std::vector<std::string>& thing) {
  std::string out;
  for (const std::string& word : thing) out += (out.empty() ? "" : " ") + word;
  return out;
}

namespace {

// `each` behind a number counts for one gymnast; `to each` and `each side` do not.
bool each_means_gymnast(const std::vector<TextWord>& words, std::size_t each) {
  if (each > 0 && is_one_of(words[each - 1].text, {"to", "on", "at", "in", "for"})) return false;
  return each + 1 == words.size() || is_gymnast(words[each + 1].text);
}

// The share that begins with the number at `i`: `two hoops each`, `one between two`.
std::optional<Share> share_from(const std::vector<TextWord>& words, std::size_t i) {
  const std::int64_t items = *number(words[i].text);
  for (std::size_t k = i + 1; k < words.size() && k <= i + 4; ++k) {
    const std::string& word = words[k].text;
    if (number(word)) return std::nullopt;
    if (word == "each") {
      if (!each_means_gymnast(words, k)) return std::nullopt;
      return Share{items, 1};
    }
    if (k + 1 == words.size()) return std::nullopt;
    const std::string& next = words[k + 1].text;
    if (is_one_of(word, {"per", "every", "a"}) && is_gymnast(next)) return Share{items, 1};
    if (is_one_of(word, {"per", "every", "a"}) && next == "pair") return Share{items, 2};
    const auto among = number(next);
    if (is_one_of(word, {"between", "among", "per", "for"}) && among) return Share{items, *among};
  }
  return std::nullopt;
}

}  // namespace

std::optional<Share> share_in(std::string_view text) {
  const std::vector<TextWord> words = words_in(text);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!number(words[i].text)) continue;
    // `two or three each`: who knows.
    const bool unsure =
        i + 2 < words.size() && words[i + 1].text == "or" && number(words[i + 2].text);
    if (unsure) return std::nullopt;
    // `two gymnasts to each`: the other way round.
    const bool gymnasts_first = i + 3 < words.size() && is_gymnast(words[i + 1].text) &&
                                is_one_of(words[i + 2].text, {"to", "on", "at"}) &&
                                is_one_of(words[i + 3].text, {"each", "one"});
    if (gymnasts_first) return Share{1, *number(words[i].text)};
    if (const auto share = share_from(words, i)) return share;
  }
  return std::nullopt;
}

}  // namespace chalkleaf::reason
