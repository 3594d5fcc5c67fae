// Contacts are solved, not placed.
//
// The first contact decides how high the body is; the second, how far it is turned in the picture
// (unless its file says so: then a joint of that limb gives); every further one a joint of its own
// limb. Each is one unknown found by bisection between angles that bracket it, so the result is
// exact to far below a hundredth of stature, or it is said that the part cannot get there. Tested
// by tests/figure/solve_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "figure/pose.h"
#include "figure/skeleton.h"

namespace chalkleaf::figure {

/// A pose with all its points in the picture.
struct Solved {
  Skeleton skeleton;
  Joints joints;  ///< as drawn: contacts have changed some
  Stance stance;  ///< likewise
  Modes modes;
  Body body;
  double ground = 0;  ///< height of the floor; 0
  /// A contact that could not be met, and by how much (metres).
  struct Missed {
    Contact contact;
    double by = 0;
  };
  std::vector<Missed> missed;
};

/// What a prop's upper side is above the floor, in metres; 0 for what is the ground itself.
double surface_height(Prop prop);
/// Whether a part rests on it from above (a wall and a bar are put where they are touched).
bool bears_from_below(Prop prop);

/// How the body stands when its file does not say: by the first contact.
Stance first_stance(const Pose& pose);
Modes modes_of(const Pose& pose);

Solved solve(const Pose& pose, const Body& body);

}  // namespace chalkleaf::figure
