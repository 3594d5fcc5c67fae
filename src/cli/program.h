// The whole program: reads its arguments, runs the command, gives its exit code. Tested through the
// program by tests/cli/program_test.cpp.
#pragma once

namespace chalkleaf::cli {

/// 0 all well, 1 a plan has errors, 2 the command line or the surroundings are at fault.
int run_program(int count, const char* const* values);

}  // namespace chalkleaf::cli
