// Sheets of paper. Sizes from ISO 216. Tested by tests/base/geometry_test.cpp.
#pragma once

#include "base/geometry.h"

namespace chalkleaf {

enum class Paper { kA4, kA5 };

/// Portrait, in the sizes ISO 216 gives in millimetres.
inline Size paper_size(Paper paper) {
  return paper == Paper::kA4 ? Size{Length::mm(210), Length::mm(297)}
                             : Size{Length::mm(148), Length::mm(210)};
}

}  // namespace chalkleaf
