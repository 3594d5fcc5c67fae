// The command line, read by CLI11 after the table of commands. Tested by
// tests/cli/command_line_test.cpp.
#pragma once

#include <string>
#include <variant>

#include "cli/command_table.h"

namespace chalkleaf::cli {

/// A command and what was given to it.
struct Chosen {
  const Command* command = nullptr;
  Given given;
};

/// Nothing to run: help or the version was asked for (0), or the command line is wrong (2).
struct Stop {
  int exit_code = 0;
  std::string text;  ///< for standard output when the code is 0, else for standard error
};

std::variant<Chosen, Stop> read_command_line(int count, const char* const* values);

/// `human`, `short` or `json`, if the command takes it and it was given.
MessageStyle message_style(const Given& given);

}  // namespace chalkleaf::cli
