// Words of the trade that a family may not know, on what is printed for them.
//
// A list, not understanding: what stands in it is looked for in all text of the home sheet, and is
// left alone where the club, the library or the plan itself explains it. English only. Common
// practice, no source. Tested by tests/reason/hard_words_test.cpp.
#pragma once

#include <vector>

#include "plan/model.h"

namespace chalkleaf::reason {

/// The words of the club's `words:` that stand anywhere in a home sheet's text, in the order they
/// first come up there: for a box that explains them. They point into `club`.
std::vector<const plan::ExplainedWord*> words_to_explain(const plan::Session& session,
                                                         const plan::Club& club);

}  // namespace chalkleaf::reason
