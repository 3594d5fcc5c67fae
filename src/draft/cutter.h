// A line as words, elements and the marks between them. Tested by tests/draft/drills_test.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "draft/elements.h"

namespace chalkleaf::draft {

/// A run of words, an element, a bracket or a mark between clauses.
struct Item {
  enum class Kind { kWords, kElement, kBracket, kComma, kStop, kDivide };
  Kind kind = Kind::kWords;
  std::size_t begin = 0;  ///< pieces
  std::size_t end = 0;
  Element element = {};
};

/// Cuts a line into items; `begin` says what a number at its begin may be.
std::vector<Item> cut(const Lexicon& words, const Pieces& pieces, std::string_view line,
                      Place begin = Place::kFirst);

}  // namespace chalkleaf::draft
