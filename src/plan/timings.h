// `timings:` of a club or a plan. Tested by tests/plan/front_matter_test.cpp.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// `parts: {Warm-up: 8 min}`: a part's title and the time it is given.
struct Budget {
  Words part;
  Sourced<Duration> time;
};

/// Overrides the times that `node` gives, with `origin` as who said so. Only a plan may have
/// `parts`; its budgets are returned.
std::vector<Budget> read_timings(const source::YamlNode& node, Timing::Origin origin,
                                 Timings& timings, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
