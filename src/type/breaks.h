// Where a line may end (UAX 14) and where a word may be cut (UAX 29), as ICU implements them. Only
// for this room.
//
// One iterator of each kind is kept for the worker's life; asking ICU costs about 9 ns a character,
// a third of the time a remembered paragraph takes to set (a quick way round it for plain words
// was measured, and saved too little to keep). Tested by tests/type/breaks_test.cpp.
#pragma once

#include <unicode/ubrk.h>
#include <unicode/utext.h>

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::type {

/// A place where a line may or must end, as a byte offset in the text; never 0.
struct Break {
  std::uint32_t offset = 0;
  bool forced = false;
  bool operator==(const Break&) const = default;
};

class Breaker {
 public:
  /// `language` is a BCP 47 tag; an unknown one breaks as the standard says for all.
  explicit Breaker(const std::string& language);
  /// All line breaks of valid UTF-8 text, ascending; the end of the text is one only where a line
  /// end forces it.
  void find(std::string_view text, std::vector<Break>& out);
  /// Where grapheme clusters end, ascending; the last is the end of the text.
  std::vector<std::uint32_t> graphemes(std::string_view text);

 private:
  struct IteratorEnd {
    void operator()(UBreakIterator* iterator) const { ubrk_close(iterator); }
  };
  using Iterator = std::unique_ptr<UBreakIterator, IteratorEnd>;
  static Iterator open(UBreakIteratorType type, const std::string& language);
  // Calls found(offset, rule status) for every boundary after the start.
  template <class Found>
  static void walk(UBreakIterator* iterator, std::string_view text, Found found);

  Iterator lines_;
  Iterator graphemes_;
};

}  // namespace chalkleaf::type
