// Several documents become one. Pure. Tested by tests/page/impose_test.cpp.
#pragma once

#include <vector>

#include "page/display_list.h"

namespace chalkleaf::page {

/// Their pages behind each other, each document's structure a Sect below one Document node, its
/// bookmarks on its pages as they now are. A document whose language is not `info`'s says so.
DisplayList join(std::vector<DisplayList> documents, DocumentInfo info);

}  // namespace chalkleaf::page
