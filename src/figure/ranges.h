// How far each joint bends: what is published as normal, and what nobody can do.
//
// A normal value is the larger of those published; it is a mean or a convention and no limit, so
// beyond it is a warning. Trained gymnasts go further at shoulder, hip, trunk and ankle, but not at
// knee and elbow (Kirby et al. 1981, Am J Sports Med 9:160-164). A joint without a published value
// here is only held to what is possible. Tested by tests/figure/truth_test.cpp.
#pragma once

#include <optional>

#include "figure/joints.h"

namespace chalkleaf::figure {

/// Degrees, in the sense of pose files: knee bent backwards is below 0.
struct Range {
  std::optional<double> normal_low;
  std::optional<double> normal_high;
  double possible_low = 0;
  double possible_high = 0;
  bool trained_go_further = false;
};

const Range& range_of(Joint joint);

}  // namespace chalkleaf::figure
