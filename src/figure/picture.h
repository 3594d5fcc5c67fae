// A figure becomes a drawing for one body: solved, drawn, with its things, its ground, its arrows.
//
// Tested by tests/figure/picture_test.cpp.
#pragma once

#include <vector>

#include "figure/reach.h"
#include "figure/scene.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

/// One pose of a figure as it is drawn, for who checks it.
struct Shown {
  Solved solved;
  std::vector<OutOfReach> out_of_reach;
};

/// Every pose solved and, from the second on, put beside the one before it as the movement goes.
std::vector<Shown> show(const Figure& figure, const Body& body);
/// The drawing of poses that were solved before.
Scene picture(const Figure& figure, const std::vector<Shown>& shown);
/// Both at once.
Scene picture(const Figure& figure, const Body& body);

}  // namespace chalkleaf::figure
