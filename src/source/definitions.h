// Link definitions that no link uses: Markdown shows nothing of them, but a coach who writes
// `[Wrens]: hop` meant to say something, and nothing may vanish.
// Tested by tests/source/markdown_test.cpp.
#pragma once

#include <cstdint>

#include "source/tree.h"

namespace chalkleaf::source {

/// Adds each unused definition of the body as a paragraph of the document, in its place.
void add_unused_definitions(const Source& source, std::uint32_t begin, MarkNode& document);

}  // namespace chalkleaf::source
