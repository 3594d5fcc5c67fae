// A plan in the taught form, some lines of which are typed in a form of their own: `- Jog 3 mins`,
// a line without its dash, `easyer:`.
//
// Each such line is read as a line of a draft is, and everything else stays byte for byte, so what
// reads cleanly means what it meant. Tested by tests/draft/mend_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "draft/read.h"

namespace chalkleaf::draft {

/// The plan with those lines mended in which one of these findings stands: by the finding's own
/// edits where it has some, else by reading the line. Nothing when no line could be mended.
std::optional<Draft> mend(const Lexicon& words, const SourcePtr& coach,
                          const std::vector<Diagnostic>& findings);

}  // namespace chalkleaf::draft
