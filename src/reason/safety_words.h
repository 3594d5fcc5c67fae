// Does a safety note say that an adult is there, and that the floor is cleared?
//
// Word lists, not understanding: a clause counts when it has a word of each list and is not turned
// round by a `no` or `without`. The lists are short on purpose; the hint of the check shows a
// wording that is known. English only for now. Common practice, no source.
// Tested by tests/reason/safety_words_test.cpp.
#pragma once

#include <string_view>

namespace chalkleaf::reason {

/// A clause has an adult (adult, grown-up, parent, carer, guardian, mum, dad) who stays, watches,
/// is in the room, is with the child or is beside it.
bool says_adult_present(std::string_view text);
/// A clause clears, tidies or empties the floor, a space, some steps, or moves furniture.
bool says_space_cleared(std::string_view text);

}  // namespace chalkleaf::reason
