// Things with real sizes, put where the body touches them.
//
// Sizes are those of common things (metres; common practice, no source): a chair's seat 0.40, a
// bench 0.30, a bar 4 cm through, a beam 10 cm wide. Tested by tests/figure/picture_test.cpp.
#pragma once

#include "figure/scene.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

/// Where a bar is for this body: in its hands, or at its hips when only those touch it.
Vec bar_place(const Pose& pose, const Solved& solved);
/// What stands behind the body: chair, wall, bench, bar. Call before the body is drawn.
void draw_things_behind(const Pose& pose, const Solved& solved, Scene& scene);
/// What is in the hands. Call after the body is drawn.
void draw_things_held(const Pose& pose, const Solved& solved, Scene& scene);
/// The floor, line, beam or mat under all of it, from `left` to `right`. Call last: the body's
/// edge of paper must not eat it.
void draw_ground(const Pose& pose, const Solved& solved, double left, double right, Scene& scene);
/// Whether there is ground in the picture at all.
bool has_ground(const Pose& pose);

}  // namespace chalkleaf::figure
