#include "cli/commands.h"

#include <cstdio>

#include "cli/stop_signal.h"
#include "cli/terminal.h"
#include "cli/times_table.h"

namespace chalkleaf::cli {
namespace {

constexpr int kEnvironmentError = 2;

int finished(int exit_code) {
  if (flush_output()) return exit_code;
  std::fputs("chalkleaf: standard output cannot be written to: is the disk full?\n", stderr);
  return kEnvironmentError;
}

int run_times(const club::Request& request, const club::Surroundings& around, Terminal& terminal) {
  const club::Timed timed = club::times(request, around, terminal);
  if (timed.plan) {
    const std::string table = times_table(timed.plan->session, timed.plan->timetable);
    std::fwrite(table.data(), 1, table.size(), stdout);
  }
  return timed.summary.exit_code();
}

}  // namespace

int run(const Arguments& arguments) {
  RealFileSystem files;
  const ProcessEnvironment environment;
  Terminal terminal(arguments.messages, environment);
  const auto standing = files.real_path(".");
  if (!standing) {
    terminal.problem("the folder you stand in is no longer there");
    return finished(kEnvironmentError);
  }
  club::Request request = arguments.request;
  request.standing = *standing;
  const club::Surroundings around{
      files, environment, files.real_path("/proc/self/exe").value_or(*standing), {}, stop_asked};
  if (arguments.command == Command::kTimes) return finished(run_times(request, around, terminal));
  listen_for_stop();
  const club::Summary summary = club::build(request, around, terminal);
  terminal.close(summary, request.purpose);
  const int exit_code = finished(summary.exit_code());
  end_if_stopped();
  return exit_code;
}

int stop(const Stop& stop) {
  std::fwrite(stop.text.data(), 1, stop.text.size(), stop.exit_code == 0 ? stdout : stderr);
  return finished(stop.exit_code);
}

}  // namespace chalkleaf::cli
