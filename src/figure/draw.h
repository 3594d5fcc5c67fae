// A solved pose becomes paths: limbs, trunk, head, and a line of paper round what lies in front.
//
// Tested by tests/figure/picture_test.cpp.
#pragma once

#include "figure/scene.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

/// Whole, or only where the outline was.
enum class Manner { kFull, kGhost };

void draw_body(const Solved& solved, Manner manner, Scene& scene);

/// The point where a hand holds or grips: the middle of the fist.
Vec grip_of(const Skeleton& skeleton, Side side);

}  // namespace chalkleaf::figure
