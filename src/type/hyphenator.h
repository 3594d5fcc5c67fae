// Which words may be hyphenated, and what is known of them. One per worker, so that a word is asked
// about once. Only for this room. Tested by tests/type/hyphenation_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "type/hyphenation.h"
#include "type/text_hash.h"

namespace chalkleaf::type {

class Hyphenator {
 public:
  /// `hyphenation` may be null.
  explicit Hyphenator(const LazyHyphenation* hyphenation) : hyphenation_(hyphenation) {}

  /// Whether a hyphen is a matter of taste in this word: not in names and short forms, that is,
  /// words with capitals (German nouns but for), nor with figures or marks inside. Punctuation
  /// around a word is no part of it.
  bool is_plain_word(std::string_view word) const;
  /// Where hyphens may stand in a word with whatever punctuation around it, as byte offsets,
  /// ascending. None where there is anything but letters inside.
  const std::vector<std::uint32_t>& places(std::string_view word);

 private:
  const LazyHyphenation* hyphenation_;
  std::unordered_map<std::string, std::vector<std::uint32_t>, TextHash, std::equal_to<>> known_;
};

}  // namespace chalkleaf::type
