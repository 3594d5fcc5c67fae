// Hands are put where the file says: on knees, hips, ankles, round a bar.
//
// The two bones of an arm reach a point in one way but for the elbow, which goes where the written
// angles would have it. Tested by tests/figure/reach_test.cpp.
#pragma once

#include <vector>

#include "figure/pose.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

/// A hand that could not get where it should, and what was missing (metres).
struct OutOfReach {
  Reach reach;
  double by = 0;
};
/// Moves the arms of `solved`; `bar` is where a bar is, for Target::kBar.
std::vector<OutOfReach> reach(const Pose& pose, const Vec& bar, Solved& solved);

}  // namespace chalkleaf::figure
