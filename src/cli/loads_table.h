// The sums of loads as plain text tables, for `loads`: what is added up, how much, how much is a
// lot, and which lines add most. Tested by tests/cli/loads_table_test.cpp.
#pragma once

#include <string>

#include "club/loads.h"

namespace chalkleaf::cli {

std::string loads_table(const club::LoadsRun& run);

}  // namespace chalkleaf::cli
