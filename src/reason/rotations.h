// Rotations in the session's time: the part with the grid takes the grid's clock, and the parts of
// its stations run beside each other in it, a turn long. Tested by tests/reason/rotations_test.cpp.
#pragma once

#include <vector>

#include "plan/model.h"
#include "reason/timetable.h"
#include "rota/model.h"

namespace chalkleaf::reason {

/// Marks which parts are stations, and gives parts of a rotation the time they have where none is
/// written. What a station's drills are timed for is the largest group.
std::vector<Seat> seat_rotations(plan::Session& session,
                                 const std::vector<rota::Rotation>& rotations);

}  // namespace chalkleaf::reason
