// Words the coach wrote, as the model keeps them.
//
// They stand in this room because a dose has remarks and names; how running text becomes words
// stands in dose/words_of.h and plan/words.h. Tested by tests/plan/session_test.cpp through
// everything that uses them.
#pragma once

#include <string>
#include <vector>

#include "base/span.h"

namespace chalkleaf::dose {

/// A stretch of words the coach set off: `**strong**` or `*emphasised*`.
struct Emphasis {
  std::size_t begin = 0;  ///< in the text
  std::size_t end = 0;
  bool strong = false;
};

/// Words the coach wrote, with marks of emphasis taken off, and where they stand.
struct Words {
  std::string text;
  Span span;
  std::vector<Emphasis> emphasis = {};  ///< in order, not overlapping; kept where text is printed
  bool empty() const { return text.empty(); }
};

}  // namespace chalkleaf::dose
