// Drills that stand before the first part. Inside the room. Tested by
// tests/draft/document_test.cpp.
#pragma once

#include <vector>

#include "draft/document.h"

namespace chalkleaf::draft {

/// Two lines of known moves or three lines of anything with sure doses, one right below the other,
/// are drills although no heading stands above them; a short line right above them is their
/// heading: `The bear walks (10 min)`, `We tiptoe round, 2 laps`, `We stomp like giants, 1 lap`, …
void settle_opening_run(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines);

}  // namespace chalkleaf::draft
