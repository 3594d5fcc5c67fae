// What a drill's line without a readable dose should have been, for hints.
// Tested by tests/plan/drill_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "plan/dose.h"

namespace chalkleaf::plan {

/// `Star jumps: 10` for a drill without a dose that was written as `Star jumps x 10`, `Star jumps
/// 10` or `10 star jumps`; nothing when its name has no number that could be meant.
std::optional<std::string> mended_drill_line(const Words& name);

}  // namespace chalkleaf::plan
