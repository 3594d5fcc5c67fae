// What the user sees while a command runs: diagnostics as they come, a line of progress when it
// takes long, and a summary at the end.
//
// Diagnostics and problems go to standard error, the summary to standard output; with JSON messages
// standard output has the messages and nothing else. Tested through the program by
// tests/cli/program_test.cpp.
#pragma once

#include <chrono>
#include <cstdio>
#include <string>

#include "base/diagnostic_text.h"
#include "base/environment.h"
#include "club/build.h"

namespace chalkleaf::cli {

class Terminal final : public club::Listener {
 public:
  Terminal(MessageStyle style, const Environment& environment);
  void problem(const std::string& sentence) override;
  void found(const Diagnostic& diagnostic) override;
  void progress(std::size_t done, std::size_t total) override;
  /// The closing summary; ends the line of progress.
  void close(const club::Summary& summary, club::Purpose purpose);

 private:
  using Clock = std::chrono::steady_clock;  // for the line of progress alone
  void clear_progress();

  MessageStyle style_;
  Colouring colouring_;
  bool shows_progress_;
  bool progress_stands_ = false;
  Clock::time_point next_progress_;
};

/// The summary's lines, each with its line end. Empty when there was nothing to do.
std::string summary_text(const club::Summary& summary, club::Purpose purpose);

/// Writes what is still held back; false when standard output would not take it (a full disk).
bool flush_output();

}  // namespace chalkleaf::cli
