// The whole program: reads its arguments, runs the command, gives its exit code. Tested through the
// program by tests/cli/program_test.cpp.
#pragma once

#include <exception>

namespace chalkleaf::cli {

/// 0 all well, 1 a plan has errors, 2 the command line or the surroundings are at fault.
int run_program(int count, const char* const* values);
/// Says what ended the program from within; the exit code.
int stopped_by(const std::exception& error);

}  // namespace chalkleaf::cli
