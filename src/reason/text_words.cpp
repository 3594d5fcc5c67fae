// Tested by tests/reason/text_words_test.cpp.
#include "reason/text_words.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"

namespace chalkleaf::reason {
namespace {

// Letters with marks that an English coach writes, mostly in words of dance.
char folded(char32_t code) {
  static constexpr std::array<std::pair<std::u32string_view, char>, 7> kMarked{{
      {U"àáâäãåÀÁÂÄÃÅ", 'a'},
      {U"èéêëÈÉÊË", 'e'},
      {U"ìíîïÌÍÎÏ", 'i'},
      {U"òóôöõÒÓÔÖÕ", 'o'},
      {U"ùúûüÙÚÛÜ", 'u'},
      {U"çÇ", 'c'},
      {U"ñÑ", 'n'},
  }};
  for (const auto& [marked, plain] : kMarked) {
    if (marked.find(code) != std::u32string_view::npos) return plain;
  }
  return '\0';
}

bool is_combining_mark(char32_t code) { return code >= 0x300 && code <= 0x36F; }

// What one character adds to a word; empty when it ends the word.
std::string letter(std::string_view text, const Decoded& at, std::size_t begin) {
  if (at.code < 0x80) {
    const char c = static_cast<char>(at.code);
    if (c >= 'A' && c <= 'Z') return std::string(1, static_cast<char>(c - 'A' + 'a'));
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) return std::string(1, c);
    return {};
  }
  if (const char plain = folded(at.code)) return std::string(1, plain);
  const bool mark = at.code == 0xA0 || at.code == 0xD7 || at.code == 0xFFFD ||
                    (at.code >= 0x2000 && at.code <= 0x2BFF);
  return mark ? std::string() : std::string(text.substr(begin, at.size));
}

char joiner(char32_t code) {
  if (code == U'-' || code == U'‐' || code == U'‑') return '-';
  return code == U'\'' || code == U'’' ? '\'' : '\0';
}

}  // namespace

std::vector<TextWord> words_in(std::string_view text) {
  std::vector<TextWord> out;
  TextWord word;
  char joined_by = '\0';  // a hyphen or apostrophe that waits for the letter behind it
  const auto end_word = [&] {
    if (!word.text.empty()) out.push_back(std::move(word));
    word = {};
    joined_by = '\0';
  };
  for (std::size_t at = 0; at < text.size();) {
    const Decoded here = decode_utf8(text, at);
    const std::size_t begin = at;
    at += here.size;
    if (is_combining_mark(here.code)) {
      if (!word.text.empty() && joined_by == '\0') word.end = at;
      continue;
    }
    if (const char join = joiner(here.code); join != '\0' && !word.text.empty() && !joined_by) {
      joined_by = join;
      continue;
    }
    const std::string more = letter(text, here, begin);
    if (more.empty()) {
      end_word();
      continue;
    }
    if (word.text.empty()) word.begin = begin;
    if (joined_by != '\0') word.text += joined_by;
    joined_by = '\0';
    word.text += more;
    word.end = at;
  }
  end_word();
  return out;
}

std::string singular(std::string_view word) {
  const auto without = [&](std::size_t n) { return std::string(word.substr(0, word.size() - n)); };
  if (word.size() > 2 && word.ends_with("'s")) return without(2);
  if (word.size() < 4 || !word.ends_with('s') || word.ends_with("ss")) return std::string(word);
  if (word.ends_with("ies") && word.size() > 4) return without(3) + "y";
  for (const std::string_view end : {"ches", "shes", "xes", "sses", "zes"}) {
    if (word.ends_with(end)) return without(2);
  }
  return without(1);
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool has_one_of(const std::vector<TextWord>& words, std::initializer_list<std::string_view> list) {
  return std::any_of(words.begin(), words.end(), [&](const TextWord& word) {
    return is_one_of(word.text, list) || is_one_of(singular(word.text), list);
  });
}

}  // namespace chalkleaf::reason
