// A clause becomes lower-case words; then the two lists are looked for in it.
#include "reason/safety_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <vector>

#include "base/text.h"

namespace chalkleaf::reason {
namespace {

using Phrase = std::vector<std::string>;
using List = std::span<const std::string_view>;

constexpr std::array<std::string_view, 12> kAdults = {
    "adult",   "adults", "grown-up", "grown-ups", "grownup", "parent",
    "parents", "carer",  "carers",   "guardian",  "mum",     "dad"};
// `in+room` and `with+child` are put together by `join_pairs`.
constexpr std::array<std::string_view, 14> kPresent = {
    "stay",       "stays",  "staying", "watch",  "watches",   "watching",   "in+room",
    "with+child", "beside", "present", "nearby", "supervise", "supervises", "supervising"};
constexpr std::array<std::string_view, 8> kClear = {"clear", "clears", "cleared", "clearing",
                                                    "tidy",  "empty",  "tidied",  "emptied"};
constexpr std::array<std::string_view, 13> kFloor = {
    "floor", "space", "area",  "room",   "furniture", "carpet", "rug",
    "step",  "steps", "metre", "metres", "ground",    "way"};
constexpr std::array<std::string_view, 5> kMove = {"move", "moves", "moved", "push", "pushed"};
constexpr std::array<std::string_view, 8> kMoved = {"furniture", "table", "tables", "chairs",
                                                    "sofa",      "toys",  "rugs",   "obstacles"};
constexpr std::array<std::string_view, 1> kMake = {"make"};
constexpr std::array<std::string_view, 2> kMade = {"space", "room"};
constexpr std::array<std::string_view, 1> kRoom = {"room"};
constexpr std::array<std::string_view, 8> kChild = {"you",   "them",     "her",     "him",
                                                    "child", "children", "gymnast", "gymnasts"};
// Each of these turns the meaning round; two of them turn it back: `not … without an adult`.
constexpr std::array<std::string_view, 9> kTurns = {"no",    "not",    "never", "without", "unless",
                                                    "until", "cannot", "none",  "needn't"};

bool is_in(const std::string& word, List list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool turns(const std::string& word) { return is_in(word, kTurns) || word.ends_with("n't"); }

// The clauses of a text, each as its words. A clause ends at any of . , ; : ! ? ( ) and line ends.
std::vector<Phrase> clauses(std::string_view text) {
  const std::string plain = lower_ascii(replace_all(text, "’", "'"));
  std::vector<Phrase> out(1);
  std::string word;
  const auto end_word = [&] {
    if (!word.empty()) out.back().push_back(std::move(word));
    word.clear();
  };
  for (const char c : plain) {
    const bool letter =
        (c >= 'a' && c <= 'z') || c == '\'' || c == '-' || static_cast<unsigned char>(c) >= 0x80;
    if (letter) {
      word += c;
      continue;
    }
    end_word();
    if (std::string_view(".,;:!?()\n").find(c) != std::string_view::npos) out.emplace_back();
  }
  end_word();
  return out;
}

std::ptrdiff_t turns_between(const Phrase& words, std::size_t from, std::size_t to) {
  const auto at = [&](std::size_t i) { return words.begin() + static_cast<std::ptrdiff_t>(i); };
  return std::count_if(at(from), at(to), turns);
}

std::size_t find_in(const Phrase& words, List list, std::size_t from) {
  while (from < words.size() && !is_in(words[from], list)) ++from;
  return from;
}

// `first` then, anywhere in the clause, `second`; meant as said.
bool says(const Phrase& words, List first, List second) {
  const std::size_t a = find_in(words, first, 0);
  if (a == words.size()) return false;
  std::size_t b = find_in(words, second, a + 1);
  if (b == words.size()) b = find_in(words, second, 0);
  if (b == words.size()) return false;
  const std::size_t low = std::min(a, b);
  const std::size_t high = std::max(a, b);
  return turns_between(words, 0, low) % 2 == 0 && turns_between(words, low, high) == 0;
}

// Phrase that mean something only together become one word: `grown up`, `in the same room`, `with
// the child`. `Ask an adult to clear the room` says nothing about who stays.
void join_pairs(Phrase& words) {
  const auto soon = [&](std::size_t i, List wanted, std::size_t within) {
    for (std::size_t k = i + 1; k <= i + within && k < words.size(); ++k) {
      if (is_in(words[k], wanted)) return true;
    }
    return false;
  };
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i] == "grown" && words[i + 1].starts_with("up")) words[i] = "grown-up";
    if (words[i] == "in" && soon(i, kRoom, 3)) words[i] = "in+room";
    if (words[i] == "with" && soon(i, kChild, 2)) words[i] = "with+child";
  }
}

}  // namespace

bool says_adult_present(std::string_view text) {
  std::vector<Phrase> all = clauses(text);
  return std::any_of(all.begin(), all.end(), [](Phrase& words) {
    join_pairs(words);
    return says(words, kAdults, kPresent);
  });
}

bool says_space_cleared(std::string_view text) {
  const std::vector<Phrase> all = clauses(text);
  return std::any_of(all.begin(), all.end(), [](const Phrase& words) {
    return says(words, kClear, kFloor) || says(words, kMove, kMoved) || says(words, kMake, kMade);
  });
}

}  // namespace chalkleaf::reason
