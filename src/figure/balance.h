// Whether a held pose stands: its centre of mass over what bears it, in the plane of the picture.
//
// Masses as in figure/body.h. What leans towards or away from the viewer is not judged. Tested by
// tests/figure/truth_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "figure/solve.h"

namespace chalkleaf::figure {

/// The ground under all that bears from below, left to right; none: nothing does.
std::optional<Footing> base_of_support(const Pose& pose, const Solved& solved);

/// A pose that would fall.
struct Fall {
  double by = 0;          ///< metres from the centre of mass to the base of support
  std::string direction;  ///< in the gymnast's terms: `forwards`
};
/// Nothing for what stands, hangs, holds on to a bar, leans on a wall or is in the air.
std::optional<Fall> fall_of(const Pose& pose, const Solved& solved);

}  // namespace chalkleaf::figure
