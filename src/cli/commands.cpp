#include "cli/commands.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstdio>

#include "base/text.h"
#include "cli/explain.h"
#include "cli/stop_signal.h"
#include "cli/terminal.h"
#include "cli/times_table.h"
#include "club/begin.h"
#include "club/list_looks.h"

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

int run_explain(const std::string& name) {
  const auto text = explain(name);
  if (!text) {
    std::fprintf(stderr, "chalkleaf: %s\n", printable(text.error()).c_str());
    return kEnvironmentError;
  }
  std::fwrite(text->data(), 1, text->size(), stdout);
  return 0;
}

// As a shell takes it for one word (POSIX.1-2017, XCU 2.2.2).
std::string shell_word(const std::string& text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](unsigned char c) {
    return std::isalnum(c) != 0 || c == '/' || c == '.' || c == '_' || c == '-' || c >= 0x80;
  });
  return plain && !text.starts_with('-') ? text : "'" + replace_all(text, "'", "'\\''") + "'";
}

int run_begin(const Arguments& arguments, const club::Surroundings& around,
              const std::string& standing, Terminal& terminal) {
  const auto begun = club::begin_club(around, standing, arguments.name);
  if (!begun) {
    terminal.problem(begun.error());
    return kEnvironmentError;
  }
  const std::string folder = normal_path(begun->folder);
  const auto within = [&](std::string_view name) {
    return printable(normal_path(join_path(folder, name)));
  };
  const std::string go = folder == "." ? "" : "cd " + shell_word(printable(folder)) + " && ";
  const std::string said = fmt::format(
      "A new club folder is in ‘{}’: {} files, all yours to change.\n"
      "Next:\n"
      "  1. Open {} in a text editor and put your club's name in.\n"
      "  2. Make the sheets:  {}chalkleaf build\n"
      "  3. Look into {} for them, and read {}.\n",
      printable(folder), begun->files.size(), within("club.yaml"), go, within("out"),
      within("README.md"));
  std::fwrite(said.data(), 1, said.size(), stdout);
  return 0;
}

int run_looks(const Arguments& arguments, const club::Surroundings& around,
              const std::string& standing, Terminal& terminal) {
  const auto folder = arguments.name.empty() ? std::nullopt : std::optional(arguments.name);
  const club::ListedLooks listed = club::list_looks(folder, standing, around, terminal);
  std::size_t longest = 0;
  for (const auto& [name, about] : listed.looks) longest = std::max(longest, display_width(name));
  for (const auto& [name, about] : listed.looks) {
    const std::string line = printable(name) + std::string(longest - display_width(name) + 2, ' ') +
                             printable(about) + "\n";
    std::fwrite(line.data(), 1, line.size(), stdout);
  }
  return listed.exit_code;
}

int run_figures(const Arguments& arguments, const club::Surroundings& around,
                const std::string& standing, Terminal& terminal) {
  club::DrawRequest request = arguments.draw;
  request.standing = standing;
  const club::Drawn drawn = arguments.command == Command::kFigure
                                ? club::draw_figures(request, around, terminal)
                                : club::draw_catalogue(request, around, terminal);
  if (!drawn.path.empty()) {
    const std::string said =
        fmt::format("{} {} in {}\n", drawn.figures, drawn.figures == 1 ? "figure" : "figures",
                    printable(drawn.path));
    std::fwrite(said.data(), 1, said.size(), stdout);
  }
  return drawn.exit_code;
}

int run_together(const Arguments& arguments, const club::Surroundings& around,
                 const std::string& standing, Terminal& terminal) {
  club::TogetherRequest request = arguments.together;
  request.base.standing = standing;
  const bool week = arguments.command == Command::kWeek;
  const club::Together made = week ? club::make_week(request, around, terminal)
                                   : club::make_booklet(request, around, terminal);
  if (!made.path.empty() && arguments.messages != MessageStyle::kJson) {
    std::string said =
        fmt::format("{} in {}: ", counted(made.sessions, "plan", "plans"), printable(made.path));
    said += counted(made.pages, "page", "pages");
    if (week) {
      said += fmt::format(", the week from {}\n", iso_text(*made.first));
      if (made.undated > 0) {
        said += fmt::format("{} left out: no date and no days\n",
                            counted(made.undated, "plan is", "plans are"));
      }
    } else {
      said += fmt::format(
          " on {}\nPrint on both sides, turned over by the short edge; fold, and staple the "
          "fold.\n",
          counted(made.sheets, "sheet", "sheets"));
    }
    std::fwrite(said.data(), 1, said.size(), stdout);
  }
  return made.summary.exit_code();
}

}  // namespace

int run(const Arguments& arguments) {
  if (arguments.command == Command::kExplain) return finished(run_explain(arguments.name));
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
  if (arguments.command == Command::kFigure || arguments.command == Command::kFigures) {
    return finished(run_figures(arguments, around, *standing, terminal));
  }
  if (arguments.command == Command::kWeek || arguments.command == Command::kBooklet) {
    return finished(run_together(arguments, around, *standing, terminal));
  }
  if (arguments.command == Command::kLooks) {
    return finished(run_looks(arguments, around, *standing, terminal));
  }
  if (arguments.command == Command::kBegin) {
    return finished(run_begin(arguments, around, *standing, terminal));
  }
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
