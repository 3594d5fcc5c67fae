// A row of a table that the program writes beside the coach's own, such as a proposed grid.
// Tested by tests/sheet/evening_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "plan/model.h"

namespace chalkleaf::plan {

enum class RowKind { kHead, kBody };

/// A note that is printed as that row. `span`: what the row was made from.
Note table_row(const std::vector<std::string>& cells, RowKind kind, const Span& span);

}  // namespace chalkleaf::plan
