#include "cli/program.h"

#include <cstdio>

#include "base/diagnostic_text.h"
#include "cli/command_line.h"
#include "cli/stop_signal.h"

namespace chalkleaf::cli {
namespace {

int finished(int exit_code) {
  if (flush_output()) return exit_code;
  std::fputs("chalkleaf: standard output cannot be written to: is the disk full?\n", stderr);
  return kEnvironmentError;
}

int say_and_stop(const Stop& stop) {
  // What was typed is quoted in it, and may be anything.
  const std::string text = printable_lines(stop.text);
  std::fwrite(text.data(), 1, text.size(), stop.exit_code == 0 ? stdout : stderr);
  return finished(stop.exit_code);
}

}  // namespace

int run_program(int count, const char* const* values) {
  const auto read = read_command_line(count, values);
  if (const auto* nothing_to_run = std::get_if<Stop>(&read)) return say_and_stop(*nothing_to_run);
  const Chosen& chosen = std::get<Chosen>(read);
  RealFileSystem files;
  const ProcessEnvironment environment;
  Terminal terminal(message_style(chosen.given), environment);
  const auto standing = files.real_path(".");
  if (!standing) {
    terminal.problem("the folder you stand in is no longer there");
    return finished(kEnvironmentError);
  }
  const club::Surroundings around{
      files, environment, files.real_path("/proc/self/exe").value_or(*standing), {}, stop_asked};
  const int exit_code =
      finished(chosen.command->action({chosen.given, *standing, around, terminal}));
  end_if_stopped();
  return exit_code;
}

int stopped_by(const std::exception& error) {
  std::fprintf(stderr, "chalkleaf: stopped by an internal error: %s\n",
               printable(error.what()).c_str());
  return kEnvironmentError;
}

}  // namespace chalkleaf::cli
