// Every key that front matter and club files know, in the order of the manual.
//
// One list for the readers, for the hints that name them, and for the test that holds the JSON
// Schemas of examples/begin to them (tests/club/schemas_test.cpp).
#pragma once

#include <string>
#include <vector>

namespace chalkleaf::plan {

/// The maps whose keys are fixed. (Groups, stations, kit, parts … have names of the coach's own.)
enum class KeyMap {
  kSession,
  kEachSheet,  ///< of `fit`, `paper` and `ticks`
  kTimings,    ///< without a plan's `parts`
  kDrill,
  kLoads,
  kEachRepetition,  ///< `each` of a drill
  kClub,
  kGroup,
  kColours,
  kStation,
  kStock,
  kStaff,
  kLimits,
};
const std::vector<std::string>& known_keys(KeyMap map);

}  // namespace chalkleaf::plan
