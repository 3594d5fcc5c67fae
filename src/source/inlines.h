// Running text out of cmark's inline nodes, each byte traced to the file.
//
// cmark's own columns of inline nodes are wrong behind line ends, escapes and entities, so each
// literal is looked for in the source, forward from where the last one ended, within its block.
// Tested by tests/source/markdown_test.cpp.
#pragma once

#include <cmark-gfm.h>

#include "source/tree.h"

namespace chalkleaf::source {

/// Fills `text` and `links` of `node` from the inline children of `block`; `where` is the
/// block's place. What cannot be found is mapped to the whole of it.
void read_inlines(cmark_node* block, const Span& where, MarkNode& node);

}  // namespace chalkleaf::source
