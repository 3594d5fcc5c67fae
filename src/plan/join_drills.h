// A club's drill with what it leaves out taken from the shelf's drill of its name.
// Tested by tests/plan/shelf_test.cpp.
#pragma once

#include "plan/library.h"

namespace chalkleaf::plan {

/// False when the club's is another thing under the same name: it says so, or is of another kind.
bool may_join(const LibraryDrill& own, const LibraryDrill& shelf);
/// `own`, key by key, and the rest from `shelf`; safety of both.
LibraryDrill joined(const LibraryDrill& own, const LibraryDrill& shelf);

}  // namespace chalkleaf::plan
