// What the first lines of a draft say about the session: day, clock, place, how many come.
// Tested by tests/draft/facts_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "draft/document.h"

namespace chalkleaf::draft {

struct Facts {
  bool home = false;
  std::optional<int> start = {};  ///< minutes of the day
  std::optional<int> slot = {};   ///< minutes
  std::optional<int> gymnasts = {};
};

/// `document` has its readings; the clock of a part comes before that of the title.
Facts facts_of(const Lexicon& words, const Source& source, const DraftDocument& document);

/// A clock of the morning becomes one of the afternoon where gyms are open: 1 to 7 o'clock.
int in_gym_hours(int minutes);

}  // namespace chalkleaf::draft
