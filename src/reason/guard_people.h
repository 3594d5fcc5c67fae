// Who comes, as far as a plan's own text says, and whether they are enough. Inside the room.
#pragma once

#include <optional>

#include "base/diagnostic.h"

namespace chalkleaf::reason {

/// Who comes, as far as the text says.
struct People {
  std::optional<int> youngest;
  std::optional<int> oldest;
  int children = 0;  // 0: not said, or of several groups
  int adults = 0;
  int named_adults = 0;  // `Jas (24) and Wes (33)`
  bool beginners = false;
  Span span;  // where the children are counted
};

/// Who is there for how many. Read from prose, so said only when it is far off: a count may have
/// left out who is named elsewhere.
void check_people(const People& people, Diagnostics& diagnostics);

}  // namespace chalkleaf::reason
