// The commands: from arguments to an exit code. No rules of the trade here.
#pragma once

#include "cli/arguments.h"

namespace chalkleaf::cli {

/// Runs the command and prints what it has to say. 0 all well, 1 a plan has errors, 2 usage or
/// environment.
int run(const Arguments& arguments);

/// Prints help, the version or what is wrong with the command line; gives its exit code.
int stop(const Stop& stop);

}  // namespace chalkleaf::cli
