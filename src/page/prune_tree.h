// Takes out of a display list the nodes of blocks that were not set after all.
// Tested by tests/page/compose_test.cpp.
#pragma once

#include <vector>

#include "page/compose.h"

namespace chalkleaf::page {

/// Drops the nodes of the ranges, which no mark names and no other node hangs below, and numbers
/// the others anew.
void prune_tree(DisplayList& list, const std::vector<NodeRange>& dropped);

}  // namespace chalkleaf::page
