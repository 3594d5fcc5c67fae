// What a part says when groups go from station to station in it: its title, and the lines of the
// notation
// (`- groups: A 4, B 4`). Only which lines these are; what they mean is for rota/read.h.
// Tested by tests/plan/rotations_test.cpp.
#pragma once

#include <string_view>

namespace chalkleaf::plan {

/// `Rotations (4 x 28 min, 2 min to move)`, `Stations (5 x 35 min)`
bool is_rotation(std::string_view title);

/// `groups: …`, `break after 2: …`, `must: …`
bool is_rotation_line(std::string_view line);

}  // namespace chalkleaf::plan
