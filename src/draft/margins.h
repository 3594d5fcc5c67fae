// Signs at the margin that mean something only by the lines around them.
// Internal to the room. Tested by tests/draft/document_test.cpp.
#pragma once

#include <vector>

#include "draft/document.h"

namespace chalkleaf::draft {

/// Marks headings above a rule, lines behind bare numbers, letters or codes that count them, and
/// clocks in brackets: three or more of a kind.
void mark_margins(const Source& source, std::vector<DraftLine>& lines);

/// `> 10 lunges e/l`: where such lines have doses the sign is a bullet, not a quote.
bool quotes_are_bullets(const Lexicon& words, const Source& source,
                        const std::vector<DraftLine>& lines);

}  // namespace chalkleaf::draft
