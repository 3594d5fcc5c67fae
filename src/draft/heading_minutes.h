// Minutes behind a heading: `10 mins`, `(10 min)`, `20'`, `(15)`.
// Internal to the room. Tested by tests/draft/headings_test.cpp.
#pragma once

#include <optional>

#include "draft/elements.h"

namespace chalkleaf::draft {

/// `10 mins`, `(10 min)`, `20'`, `(15)`: minutes behind a heading.
struct MinutesRead {
  std::size_t begin = 0;  ///< pieces
  std::size_t end = 0;
  double minutes = 0;
  bool bracket = false;
  bool bare = false;
};

/// A line as it is read for its minutes.
struct HeadLine {
  const Lexicon& words;
  const Pieces& pieces;
  std::string_view text;
  bool ends;  ///< in its minutes, as the parts of this document do
};

/// The minutes that begin at piece `at`; nothing where a dose or a clock stands there.
std::optional<MinutesRead> minutes_at(const HeadLine& line, std::size_t at);

}  // namespace chalkleaf::draft
