// Lines that are remarks whatever else they look like: about one child, or about the session.
// Tested by tests/draft/document_test.cpp.
#pragma once

#include "draft/document.h"

namespace chalkleaf::draft {

/// `Girl 7 – heel`, `the kid in the green tee`, `Girls 4 and 9 only do …`; an allergy, where the
/// line has no dose.
bool is_about_child(const Lexicon& words, const DraftLine& one, const Pieces& pieces);

/// `Coaches: 2 + assistant`, `need: banner`, `ice only if puffy`
bool is_label(const Lexicon& words, const Pieces& pieces);

/// All the doses of the line are numbers before words that name no known move.
bool is_weak(const Lexicon& words, const DraftLine& one);

/// `water!! own bottles 2 mins`: the time is that of the part, no dose; false where there are
/// doses.
bool takes_time_of_pause(DraftLine& one);

}  // namespace chalkleaf::draft
