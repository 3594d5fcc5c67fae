// Whether a figure can be true: joints that bend so far, contacts that meet, a balance that holds.
//
// Catches slips of the pen in pose files. Findings point at the joint or the contact in the file
// and say what to change: `figure-range`, `figure-impossible`, `figure-contact`, `figure-falls`,
// `figure-below-ground`. Tested by tests/figure/truth_test.cpp.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "figure/picture.h"

namespace chalkleaf::figure {

/// `shown` are the poses of `figure`, as `show` gives them.
void check(const Figure& figure, const std::vector<Shown>& shown, Diagnostics& diagnostics);

}  // namespace chalkleaf::figure
