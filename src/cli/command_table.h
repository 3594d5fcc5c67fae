// The commands, one row each: its name, what it takes, its help, and what it does. Help, the
// reading of the command line and the list of commands in messages are all made from this table, so
// a command is added by one row and one function. Tested by tests/cli/command_line_test.cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cli/options.h"
#include "cli/terminal.h"
#include "club/build.h"

namespace chalkleaf::cli {

/// The command line, or the disk, or the program's own data is at fault.
inline constexpr int kUsageError = 2;
inline constexpr int kEnvironmentError = 2;

/// What a command runs in.
struct Run {
  const Given& given;
  const std::string& standing;  ///< the folder the user stands in, absolute, no links
  const club::Surroundings& around;
  Terminal& terminal;
};

struct Command {
  std::string_view name;
  std::string_view about;     ///< one line
  std::string_view examples;  ///< shown under its help
  std::vector<const Option*> options;
  /// Does it, prints what it has to say, gives the exit code: 0 all well, 1 a plan has errors, 2
  /// the command line or the surroundings are at fault.
  int (*action)(const Run& run);
  /// Why these options will not do together: a sentence, or nothing. May be null.
  std::string (*refuses)(const Given& given) = nullptr;
};

/// In the order of help.
const std::vector<Command>& commands();

}  // namespace chalkleaf::cli
