#include "reason/hall_words.h"

#include <algorithm>

#include "dose/tokens.h"

namespace chalkleaf::reason {
namespace {

bool begins_here(const std::vector<TextWord>& words, std::size_t at,
                 const std::vector<std::string>& phrase) {
  if (at + phrase.size() > words.size()) return false;
  for (std::size_t i = 0; i < phrase.size(); ++i) {
    if (words[at + i].text != phrase[i]) return false;
  }
  return true;
}

// How many words of the text the longest of the phrases takes here; 0: none begins here.
std::size_t longest_here(const std::vector<TextWord>& words, std::size_t at,
                         const plan::Phrases& phrases) {
  std::size_t longest = 0;
  for (const auto& phrase : phrases) {
    if (begins_here(words, at, phrase)) longest = std::max(longest, phrase.size());
  }
  return longest;
}

template <class T>
const T* first_named(const std::vector<TextWord>& words, const std::vector<T>& known,
                     std::size_t last) {
  for (std::size_t at = 0; at < std::min(words.size(), last); ++at) {
    const T* best = nullptr;
    std::size_t longest = 0;
    for (const T& one : known) {
      const std::size_t size = longest_here(words, at, one.words);
      if (size > longest) {
        longest = size;
        best = &one;
      }
    }
    if (best != nullptr) return best;
  }
  return nullptr;
}

}  // namespace

std::optional<int> small_number(std::string_view word) {
  const std::vector<dose::Token> tokens = dose::tokens_of(word);
  if (tokens.size() != 1 || !tokens[0].is(dose::TokenKind::kNumber) || tokens[0].too_large ||
      !tokens[0].is_whole())
    return std::nullopt;
  const std::int64_t value = tokens[0].numerator / tokens[0].denominator;
  return value <= plan::kMostLanes ? std::optional(static_cast<int>(value)) : std::nullopt;
}

std::optional<std::size_t> find_phrase(const std::vector<TextWord>& words,
                                       const plan::Phrases& phrases) {
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (longest_here(words, at, phrases) > 0) return at;
  }
  return std::nullopt;
}

const plan::HallPlace* place_in(std::string_view text, const plan::HallBook& book) {
  const std::vector<TextWord> words = words_in(text);
  return first_named(words, book.places, words.size());
}

const plan::HallActivity* activity_in(std::string_view text, const plan::HallBook& book) {
  const std::vector<TextWord> words = words_in(text);
  return first_named(words, book.activities, words.size());
}

const plan::HallActivity* activity_at_begin(std::string_view text, const plan::HallBook& book) {
  return first_named(words_in(text), book.activities, 2);
}

std::int64_t drills_listed(std::string_view name, const plan::HallBook& book) {
  const std::vector<TextWord> words = words_in(name);
  const auto listed = std::count_if(words.begin(), words.end(), [&](const TextWord& word) {
    return find_phrase({word}, book.several).has_value();
  });
  return std::max<std::int64_t>(1, listed);
}

std::optional<int> lanes_in(std::string_view text, const plan::HallPlace& place) {
  const std::vector<TextWord> words = words_in(text);
  for (std::size_t at = 1; at < words.size(); ++at) {
    if (longest_here(words, at, place.counted) == 0) continue;
    const auto number = small_number(words[at - 1].text);
    if (number && *number > 0) return number;
  }
  return std::nullopt;
}

}  // namespace chalkleaf::reason
