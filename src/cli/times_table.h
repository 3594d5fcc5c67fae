// The timetable as a plain text table, for `times`: when, what, how much, how long, and why.
// Every printed sum adds up exactly: fractions of a second are shown where there are any. Columns
// stand in one place in all rows; a name or a dose too long for that is cut with `…`.
// Tested by tests/cli/times_table_test.cpp.
#pragma once

#include <string>

#include "reason/timetable.h"

namespace chalkleaf::cli {

std::string times_table(const plan::Session& session, const reason::Timetable& timetable);

}  // namespace chalkleaf::cli
