// Every check of the program by its stable name, in the order of the manual.
// Tested by tests/reason/check_list_test.cpp and the gallery of mistakes in examples/mistakes.
#include "reason/check_list.h"

namespace chalkleaf::reason {

const std::vector<CheckInfo>& all_checks() {
  static const std::vector<CheckInfo> kChecks = [] {
    std::vector<CheckInfo> all = session_checks();
    for (const auto& more : {rotation_checks(), body_checks(), danger_checks(), kit_checks(),
                             figure_list_checks(), writing_checks()}) {
      all.insert(all.end(), more.begin(), more.end());
    }
    return all;
  }();
  return kChecks;
}

}  // namespace chalkleaf::reason
