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

/// Where the columns end: how many entries stand in each, in order.
struct Balanced {
  std::vector<std::size_t> columns;
  Length height;  ///< of the highest
};

/// The entries in at most so many columns, in their order, so that the highest column is as low as
/// it can be; of equal ways the one with more in front. `gap` stands between entries.
Balanced balance(std::span<const Length> entries, std::size_t columns, Length gap);

}  // namespace chalkleaf::sheet
