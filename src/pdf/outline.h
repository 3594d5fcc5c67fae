// The outline: what readers show as bookmarks (ISO 32000-1, 12.3.3). Only for this room.
// Tested by tests/pdf/write_test.cpp.
#pragma once

#include <optional>

#include "page/display_list.h"
#include "pdf/objects.h"

namespace chalkleaf::pdf {

/// The number of /Outlines; nothing when there are no entries. `pages` are the page objects.
/// Entries of pages that do not exist are left out.
std::optional<ObjectId> write_outline(const page::DisplayList& list,
                                      const std::vector<ObjectId>& pages, Objects& objects);

}  // namespace chalkleaf::pdf
