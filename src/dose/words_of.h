// From running text to words. Apart from dose/words.h, which rooms include that know no trees.
// Tested by tests/plan/session_test.cpp through everything that uses it.
#pragma once

#include "dose/words.h"
#include "source/tree.h"

namespace chalkleaf::dose {

/// The text without white space at its ends, line breaks as spaces, with its emphasis.
Words words_of(const source::Text& text);

}  // namespace chalkleaf::dose
