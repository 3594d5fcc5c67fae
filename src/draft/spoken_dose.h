// What the elements said of one drill come to.
// Tested by tests/draft/drills_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "draft/drills.h"

namespace chalkleaf::draft {

/// The dose of a drill; nothing when none was said. Amounts that cannot belong to it become its
/// notes.
std::optional<SpokenDose> resolve(const Lexicon& words, SpokenDrill& drill, const Setting& setting);

/// The dose in the taught form: `3 x 10 s each side, rest 30 s, until stuck 5`.
std::string canonical(const SpokenDose& dose);
/// Seconds as a plan says them: `90 s`, `2 min`.
std::string seconds_text(double seconds);

}  // namespace chalkleaf::draft
