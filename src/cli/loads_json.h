// The sums of loads as JSON, for scripts: the keys of examples/begin/schemas/loads.schema.json.
// Tested by tests/cli/loads_table_test.cpp.
#pragma once

#include <string>

#include "club/loads.h"

namespace chalkleaf::cli {

inline constexpr int kLoadsSchema = 1;

/// One line. Times are seconds, effort is in minutes × effort; a load without a limit has null.
std::string loads_json(const club::LoadsRun& run);

}  // namespace chalkleaf::cli
