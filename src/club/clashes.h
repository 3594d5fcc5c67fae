// Which plans of a club are in each other's way, for `clashes`. Tested by
// tests/club/clashes_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "club/build.h"
#include "reason/clashes.h"

namespace chalkleaf::club {

/// One thing that two plans want at a time.
struct ShownClash {
  Date day = {};
  std::string what;   ///< `the beam from 17:48 to 17:58 (6 wanted, 3 there)`
  std::string first;  ///< path of a plan as the user names it
  std::string second;
};
struct ClashesRun {
  Summary summary;
  std::size_t sessions = 0;         ///< in a hall, with a clock, that were looked at
  std::vector<ShownClash> clashes;  ///< club by club, by day and clock
};
ClashesRun clashes(const Request& request, const Surroundings& around, Listener& listener);

}  // namespace chalkleaf::club
