// Arrows: where a part goes, what circles, what turns.
//
// Thick is fast and thin broken lines are slow. An arrow keeps beside the limb that goes, and never
// runs under the ground. Tested by tests/figure/picture_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "figure/picture.h"

namespace chalkleaf::figure {

/// The paths between the key poses of a figure.
void draw_movement(const Figure& figure, const std::vector<Shown>& shown, Scene& scene);
/// What its `circles` and `turns` name, on one pose.
void draw_turning(const Figure& figure, const Solved& solved, Scene& scene);

/// The names that `circles:` and `turns:` understand.
const std::vector<std::string>& circling_parts();
const std::vector<std::string>& turning_parts();

}  // namespace chalkleaf::figure
