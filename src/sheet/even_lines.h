// How many boxes stand on a line, where one line cannot hold them all. Internal to the room.
#pragma once

#include <algorithm>
#include <cstdint>

#include "base/geometry.h"

namespace chalkleaf::sheet {

struct EvenLines {
  std::int64_t lines = 1;
  std::int64_t a_line = 1;  ///< boxes on each, fewer on the last
};

/// As few lines as `room` allows, all about as long as each other; a box a line where it holds
/// none.
inline EvenLines even_lines(std::int64_t boxes, Length room, Length side, Length gap) {
  const std::int64_t most =
      std::max<std::int64_t>(1, (room + gap).in_millipoints() / (side + gap).in_millipoints());
  const std::int64_t lines = std::max<std::int64_t>(1, (boxes + most - 1) / most);
  return {lines, (boxes + lines - 1) / lines};
}

}  // namespace chalkleaf::sheet
