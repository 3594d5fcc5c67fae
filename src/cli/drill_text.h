// Drills as plain text, for `drills`: a list, or one with all it says.
// Tested by tests/cli/drill_text_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "plan/library.h"

namespace chalkleaf::cli {

/// One line a drill: name, kind, level, where it may be done.
std::string drill_list(const std::vector<const plan::LibraryDrill*>& drills);
/// What a plan's line takes from the drill, in the words of a plan, and what else is known of it.
std::string drill_text(const plan::LibraryDrill& drill);

}  // namespace chalkleaf::cli
