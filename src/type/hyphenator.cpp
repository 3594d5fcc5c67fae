#include "type/hyphenator.h"

#include <unicode/uchar.h>

#include "base/text.h"

namespace chalkleaf::type {
namespace {

constexpr std::size_t kMostKnown = 20'000;

bool is_letter_code(char32_t code) { return u_isalpha(as_icu(code)) != 0; }

// A word without the punctuation around it.
struct Core {
  std::u32string letters;
  std::vector<std::uint32_t> ends;  // of each letter, as byte offsets in the whole word
  bool only_letters = true;
};

Core core_of(std::string_view word) {
  Core out;
  bool ended = false;
  for (std::size_t at = 0; at < word.size();) {
    const Decoded decoded = decode_utf8(word, at);
    at += decoded.size;
    if (!is_letter_code(decoded.code)) {
      ended = !out.letters.empty();
      // Punctuation may stand around a word; figures may not.
      if (u_isdigit(as_icu(decoded.code)) != 0) out.only_letters = false;
      continue;
    }
    if (ended) out.only_letters = false;
    out.letters.push_back(decoded.code);
    out.ends.push_back(static_cast<std::uint32_t>(at));
  }
  return out;
}

}  // namespace

bool Hyphenator::is_plain_word(std::string_view word) const {
  if (hyphenation_ == nullptr) return false;
  const Core core = core_of(word);
  if (!core.only_letters) return false;
  const std::string& language = hyphenation_->language();
  const bool nouns_are_capital = language == "de" || language.starts_with("de-");
  for (std::size_t i = nouns_are_capital ? 1 : 0; i < core.letters.size(); ++i) {
    if (u_isUUppercase(as_icu(core.letters[i])) != 0) return false;
  }
  return true;
}

const std::vector<std::uint32_t>& Hyphenator::places(std::string_view word) {
  static const std::vector<std::uint32_t> kNone;
  if (hyphenation_ == nullptr) return kNone;
  if (const auto found = known_.find(word); found != known_.end()) return found->second;
  if (known_.size() >= kMostKnown) known_.clear();
  std::vector<std::uint32_t>& out = known_[std::string(word)];
  Core core = core_of(word);
  if (!core.only_letters) return out;
  const Hyphenation* patterns = hyphenation_->get();
  if (patterns == nullptr) return out;
  for (char32_t& letter : core.letters) letter = static_cast<char32_t>(u_tolower(as_icu(letter)));
  for (const std::uint32_t before : patterns->places(core.letters))
    out.push_back(core.ends[before - 1]);
  return out;
}

}  // namespace chalkleaf::type
