// `paper:`, `filing-margin:`, `return-slip:`, `sheet:` and `look:` of a club or a plan.
// Tested by tests/plan/printing_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "plan/keys.h"
#include "plan/model.h"

namespace chalkleaf::plan {

/// Overrides what `keys` says of printing; what it does not say stays as it is.
void read_printing(const Keys& keys, Printing& printing);

}  // namespace chalkleaf::plan
