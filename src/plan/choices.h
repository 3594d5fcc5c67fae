// Choices of a drill: `Donkey kick or wall walk-up or wall handstand`.
//
// Words that belong together (`left or right`, `one or two`) do not part a name. Where an `or` is
// part of a drill's name nothing is lost: the whole name is kept beside its pieces. Tested by
// tests/plan/choices_test.cpp.
#pragma once

#include <vector>

#include "plan/dose.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// The drills to choose between, in the order written; empty when the name has fewer than two.
/// Names of more than `most_words` words are sentences, not choices.
std::vector<Words> choices_in(const source::Text& name, std::size_t most_words);

}  // namespace chalkleaf::plan
