// What plans ask of a body, for `loads`: each plan's sums, and each group's week.
// Tested by tests/club/loads_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "club/build.h"
#include "reason/group_week.h"
#include "reason/loads.h"

namespace chalkleaf::club {

/// A plan with its sums, which point into it.
struct LoadedPlan {
  std::string path;  ///< as the user names it
  TimedPlan plan;
  reason::PlanLoads loads;
};
struct LoadsRun {
  Summary summary;
  /// In the order of their paths. On the heap, because sums point into them.
  std::vector<std::unique_ptr<const LoadedPlan>> plans;
  /// Of all plans that have a group, by club, group and week.
  std::vector<reason::GroupWeek> weeks;
};
LoadsRun loads(const Request& request, const Surroundings& around, Listener& listener);

}  // namespace chalkleaf::club
