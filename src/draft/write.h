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

}  // namespace chalkleaf::draft
