// The command line, as CLI11 reads it. Tested through the program by tests/club/program_test.cpp.
#pragma once

#include <string>
#include <variant>

#include "base/diagnostic_text.h"
#include "club/build.h"
#include "club/draw.h"
#include "club/week.h"

namespace chalkleaf::cli {

enum class Command {
  kBuild,
  kCheck,
  kTimes,
  kExplain,
  kBegin,
  kFigure,
  kFigures,
  kWeek,
  kBooklet,
  kProof,
  kLooks
};

/// What the user asked for.
struct Arguments {
  Command command = Command::kBuild;
  club::Request request;  ///< without `standing`
  MessageStyle messages = MessageStyle::kHuman;
  club::DrawRequest draw;          ///< kFigure and kFigures, without `standing`
  club::TogetherRequest together;  ///< kWeek and kBooklet, without `standing`
  std::string name;                ///< kExplain: the check, or empty; kBegin: the folder
};

/// Nothing to run: help or the version was asked for (0), or the command line is wrong (2).
struct Stop {
  int exit_code = 0;
  std::string text;  ///< for standard output when the code is 0, else for standard error
};

std::variant<Arguments, Stop> read_arguments(int count, const char* const* values);

}  // namespace chalkleaf::cli
