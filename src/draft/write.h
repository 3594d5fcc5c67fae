// A draft, as read, in the taught form. Tested by tests/draft/write_test.cpp.
#pragma once

#include <string>

#include "draft/document.h"
#include "draft/facts.h"
#include "draft/read.h"

namespace chalkleaf::draft {

/// The canonical plan and where each of its bytes came from.
Draft write(const Lexicon& words, const SourcePtr& coach, const DraftDocument& document,
            const Facts& facts);

/// A drill as entries of a list: its line, and one for each remark on it.
std::string item_text(const SpokenDrill& drill);

}  // namespace chalkleaf::draft
