// Text as lower-case words, for the checks that judge by words. Inside the room.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::reason {

/// A word of a text. Its accents are taken off: `passé` is `passe`.
struct TextWord {
  std::string text;       ///< lower case; hyphens and apostrophes inside it are kept
  std::size_t begin = 0;  ///< bytes in the text
  std::size_t end = 0;
};
std::vector<TextWord> words_in(std::string_view text);

/// The singular of an English noun, as far as a rule can tell: `boxes` is `box`. Both sides of a
/// comparison go through it, so it need not be a real word.
std::string singular(std::string_view word);

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> list);
/// True when one of the words, or its singular, is in the list.
bool has_one_of(const std::vector<TextWord>& words, std::initializer_list<std::string_view> list);

}  // namespace chalkleaf::reason
