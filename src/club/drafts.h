// A draft on its way through the passes: read as a canonical plan, and told of in its own words.
// Tested by tests/club/drafts_test.cpp.
#pragma once

#include <optional>

#include "base/diagnostic.h"
#include "draft/read.h"
#include "plan/read.h"

namespace chalkleaf::club {

/// What was found in the canonical plan of a draft, at its places in the coach's file. Findings of
/// form are no more than notes there, and nothing but what endangers a child keeps a draft from
/// being printed.
Diagnostics told_of_draft(const Diagnostics& found, const draft::Draft& draft);

/// Whether a mended plan is given the lines it lacks, such as `place:`. To print it they are
/// assumed and the coach is warned; `tidy` writes them.
enum class Supply { kNothing, kMissingKeys };

/// A plan in the taught form whose errors of form can be mended: with these lines mended. Nothing
/// when there are none, or nothing helps. `found` is what reading `coach` found.
std::optional<draft::Draft> mended(const draft::Lexicon& words, const SourcePtr& coach,
                                   const Diagnostics& found, Supply supply);

/// What a language's words stand for in front matter; `words` must outlive what is returned, and
/// may be null.
plan::FrontWords front_words(const draft::Lexicon* words);

/// What of a mended plan was not as it is taught, as one note with its places.
void tell_mended(const draft::Draft& draft, Diagnostics& found);

/// The draft's lines of drills, for the card.
std::vector<plan::Words> typed_lines(const draft::Draft& draft);

}  // namespace chalkleaf::club
