// How drills stand in columns that are read down, each about as high as the others. Internal to the
// room.
//
// Tested by tests/sheet/columns_test.cpp against trying all ways.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "base/geometry.h"

namespace chalkleaf::sheet {

/// What stands in a column.
struct Standing {
  Length height;
  Length above;        ///< kept free above it where it is not the first of its column
  bool keeps = false;  ///< it is never the last of a column but the last of all
};

/// Where the columns end: how many entries stand in each, in order.
struct Balanced {
  std::vector<std::size_t> columns;
  Length height;  ///< of the highest
};

/// The entries in at most so many columns, in their order, so that the highest column is as low as
/// it can be; of equal ways the one with more in front. `at_least` is a height that is known to be
/// needed, which saves looking below it.
Balanced balance(std::span<const Standing> entries, std::size_t columns, Length at_least = {});

}  // namespace chalkleaf::sheet
