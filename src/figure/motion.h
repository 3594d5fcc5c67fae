// What happens between two key poses: joints on their arcs, and the path of the part that travels.
//
// Tested by tests/figure/motion_test.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "figure/scene.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

/// Moves `later` sideways so that what stays on the ground stays where it is; without such a
/// part, so that the hips keep their place.
void align(const Pose& earlier_pose, const Solved& earlier, const Pose& later_pose, Solved& later);

/// The body part of the way from one solved pose to the next: 0 is a, 1 is b.
Solved between(const Pose& pose_a, const Solved& a, const Pose& pose_b, const Solved& b, double t);

/// Where the part that travels farthest (or the one named) goes, in equal steps of time.
std::vector<Spot> path_between(const Pose& pose_a, const Solved& a, const Pose& pose_b,
                               const Solved& b, std::string_view part);
/// The names `moves:` understands.
const std::vector<std::string>& travelling_parts();

}  // namespace chalkleaf::figure
