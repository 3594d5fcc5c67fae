// What a heading says of its whole part, once it is known which lines are headings: rounds, sets,
// rests, the shape that is held; and the drills read again by it.
// Internal to the room. Tested by tests/draft/document_test.cpp and write_test.cpp.
#pragma once

#include <vector>

#include "draft/document.h"

namespace chalkleaf::draft {

/// Finds what holds for all drills of a part, and gives it to them.
void settle_parts(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines);

}  // namespace chalkleaf::draft
