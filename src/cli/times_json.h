// The timetable as JSON, for scripts: the keys of examples/begin/schemas/times.schema.json.
// Tested by tests/cli/times_json_test.cpp.
#pragma once

#include <string>

#include "club/build.h"

namespace chalkleaf::cli {

inline constexpr int kTimesSchema = 1;

/// One line. Times are seconds; a written time of a part is its clock.
std::string times_json(const club::TimedPlan& plan);

}  // namespace chalkleaf::cli
