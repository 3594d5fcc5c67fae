// A dose on the line below its name: `Spiderman walk`, and then `(2 lengths)`; `Do: side support`,
// and then `How many: 2 x 10 secs`.
// Internal to the room. Tested by tests/draft/write_test.cpp.
#pragma once

#include <vector>

#include "draft/document.h"

namespace chalkleaf::draft {

/// Where three or more are written so, the dose belongs to the name above it, and what stands
/// further in below the dose is a remark.
void join_doses(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines);

}  // namespace chalkleaf::draft
