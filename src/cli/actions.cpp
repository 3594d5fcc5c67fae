#include "cli/actions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <thread>

#include "base/text.h"
#include "cli/command_line.h"
#include "cli/drill_text.h"
#include "cli/explain.h"
#include "cli/loads_json.h"
#include "cli/loads_table.h"
#include "cli/stop_signal.h"
#include "cli/times_json.h"
#include "cli/times_table.h"
#include "club/begin.h"
#include "club/clashes.h"
#include "club/draw.h"
#include "club/list_drills.h"
#include "club/list_looks.h"
#include "club/loads.h"
#include "club/tidy.h"
#include "club/week.h"

namespace chalkleaf::cli {
namespace {

// What a club wrote is quoted in much of it, and may be anything.
void say(std::string_view text) {
  const std::string safe = printable_lines(text);
  std::fwrite(safe.data(), 1, safe.size(), stdout);
}

club::Request request_of(const Run& run, club::Purpose purpose = club::Purpose::kBuild) {
  const Given& given = run.given;
  club::Request out;
  out.arguments = given.all(kPlans);
  out.standing = run.standing;
  out.out = given.text(kOut);
  out.paper = read_paper(given.text(kPaper).value_or(""));
  out.look = given.text(kLook).value_or("");
  const std::string only = given.text(kOnly).value_or("");
  if (only == "cards") out.only = club::Only::kCards;
  if (only == "sheets") out.only = club::Only::kSheets;
  if (given.has(kTwoUp))
    out.two_up = given.number(kCopies) == 2 ? club::TwoUp::kCopies : club::TwoUp::kPages;
  out.purpose = purpose;
  out.dots = given.number(kDots).value_or(out.dots);
  if (given.has(kStrict)) out.strictness = club::Strictness::kStrict;
  const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
  out.jobs = static_cast<std::size_t>(given.number(kJobs).value_or(static_cast<int>(cores)));
  return out;
}

int run_plans(const Run& run, club::Purpose purpose) {
  const club::Request request = request_of(run, purpose);
  listen_for_stop();
  const club::Summary summary = club::build(request, run.around, run.terminal);
  run.terminal.close(summary, request.purpose);
  return summary.exit_code();
}

// As a shell takes it for one word (POSIX.1-2017, XCU 2.2.2).
std::string shell_word(const std::string& text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](unsigned char c) {
    return std::isalnum(c) != 0 || c == '/' || c == '.' || c == '_' || c == '-' || c >= 0x80;
  });
  return plain && !text.starts_with('-') ? text : "'" + replace_all(text, "'", "'\\''") + "'";
}

club::TogetherRequest together_of(const Run& run, const Option& file, const Option& paper) {
  club::TogetherRequest out;
  out.base = request_of(run);
  out.base.paper = read_paper(run.given.text(paper).value_or(""));
  out.group = run.given.text(kGroup);
  out.file = run.given.text(file);
  out.starting = parse_date(run.given.text(kStarting).value_or(""));
  return out;
}

// `3 plans in week.pdf: 2 pages`; nothing when nothing was made, or only data is wanted.
std::string made_text(const Run& run, const club::Together& made) {
  if (made.path.empty() || message_style(run.given) == MessageStyle::kJson) return {};
  return fmt::format("{} in {}: {}", counted(made.sessions, "plan", "plans"), printable(made.path),
                     counted(made.pages, "page", "pages"));
}

club::DrawRequest drawing_of(const Run& run, const Option& file) {
  club::DrawRequest out;
  out.standing = run.standing;
  out.names = run.given.all(kFigureNames);
  out.folder = run.given.text(kFigureFolder);
  out.out = run.given.text(file);
  out.paper = read_paper(run.given.text(kFigurePaper).value_or("")).value_or(out.paper);
  out.years = run.given.number(kAge).value_or(static_cast<int>(out.years));
  return out;
}

int tell_drawn(const club::Drawn& drawn) {
  if (!drawn.path.empty()) {
    say(fmt::format("{} in {}\n", counted(drawn.figures, "figure", "figures"),
                    printable(drawn.path)));
  }
  return drawn.exit_code;
}

}  // namespace

int build_plans(const Run& run) { return run_plans(run, club::Purpose::kBuild); }
int check_plans(const Run& run) { return run_plans(run, club::Purpose::kCheck); }
int proof_plans(const Run& run) { return run_plans(run, club::Purpose::kProof); }

int show_times(const Run& run) {
  club::Request request = request_of(run);
  request.arguments = run.given.all(kOnePlan);
  const club::Timed timed = club::times(request, run.around, run.terminal);
  if (timed.plan) {
    say(run.given.has(kJson) ? times_json(*timed.plan)
                             : times_table(timed.plan->session, timed.plan->timetable));
  }
  return timed.summary.exit_code();
}

int show_loads(const Run& run) {
  const club::LoadsRun made = club::loads(request_of(run), run.around, run.terminal);
  say(run.given.has(kJson) ? loads_json(made) : loads_table(made));
  return made.summary.exit_code();
}

int show_clashes(const Run& run) {
  const club::ClashesRun made = club::clashes(request_of(run), run.around, run.terminal);
  const std::string among =
      counted(made.sessions, "session in a hall with a clock", "sessions in a hall with a clock");
  if (made.clashes.empty()) {
    say(fmt::format("No clashes among {}\n", among));
    return made.summary.exit_code();
  }
  for (const club::ShownClash& one : made.clashes) {
    say(fmt::format("{}  {}\n              {}\n              {}\n", iso_text(one.day), one.what,
                    printable(one.first), printable(one.second)));
  }
  say(fmt::format("{} among {}\n", counted(made.clashes.size(), "clash", "clashes"), among));
  return made.summary.exit_code();
}

int tidy_plans(const Run& run) {
  const bool write = run.given.has(kWrite);
  const club::TidyRun made =
      club::tidy(request_of(run), write ? club::TidyWay::kWrite : club::TidyWay::kShow, run.around,
                 run.terminal);
  for (const club::Tidied& plan : made.plans) {
    if (!write) say(club::change_text(plan));
    if (write && plan.after != plan.before) {
      say(fmt::format("{} is now in the taught form\n", printable(plan.path)));
    }
  }
  return made.summary.exit_code();
}

int make_week(const Run& run) {
  const club::Together made =
      club::make_week(together_of(run, kWeekFile, kWeekPaper), run.around, run.terminal);
  std::string said = made_text(run, made);
  if (said.empty()) return made.summary.exit_code();
  said += fmt::format(", the week from {}\n", iso_text(*made.first));
  if (made.undated > 0) {
    said += fmt::format("{} left out: no date and no days\n",
                        counted(made.undated, "plan is", "plans are"));
  }
  say(said);
  return made.summary.exit_code();
}

int make_booklet(const Run& run) {
  const club::Together made =
      club::make_booklet(together_of(run, kBookletFile, kBookletPaper), run.around, run.terminal);
  const std::string said = made_text(run, made);
  if (said.empty()) return made.summary.exit_code();
  say(said + fmt::format(" on {}\nPrint on both sides, turned over by the short edge; fold, and "
                         "staple the fold.\n",
                         counted(made.sheets, "sheet", "sheets")));
  return made.summary.exit_code();
}

int draw_figures(const Run& run) {
  return tell_drawn(club::draw_figures(drawing_of(run, kFigureFile), run.around, run.terminal));
}

int draw_catalogue(const Run& run) {
  return tell_drawn(
      club::draw_catalogue(drawing_of(run, kCatalogueFile), run.around, run.terminal));
}

int explain_check(const Run& run) {
  const auto text = explain(run.given.text(kCheckName).value_or(""));
  if (!text) {
    run.terminal.problem(text.error());
    return kEnvironmentError;
  }
  say(*text);
  return 0;
}

// `begin monday.txt`
int begin_plan(const Run& run, const std::string& draft) {
  club::Request request = request_of(run);
  request.arguments = {draft};
  const auto made = club::begin_plan(request, run.around, run.terminal);
  if (!made) {
    run.terminal.problem(made.error());
    return kEnvironmentError;
  }
  say(
      fmt::format("‘{0}’ is what was understood of ‘{1}’, which stays as it is.\n"
                  "Next:\n"
                  "  1. Read {0}, and change what was meant otherwise.\n"
                  "  2. Make the sheets:  chalkleaf build {2}\n",
                  printable(*made), printable(draft), shell_word(printable(*made))));
  return 0;
}

int begin_club(const Run& run) {
  const std::string given = run.given.text(kNewFolder).value_or("");
  if (club::names_draft(given)) return begin_plan(run, given);
  const auto begun =
      club::begin_club(run.around, run.standing, run.given.text(kNewFolder).value_or(""));
  if (!begun) {
    run.terminal.problem(begun.error());
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
  say(said);
  return 0;
}

int list_looks(const Run& run) {
  const club::ListedLooks listed =
      club::list_looks(run.given.text(kClubFolder), run.standing, run.around, run.terminal);
  std::size_t longest = 0;
  for (const auto& [name, about] : listed.looks) longest = std::max(longest, display_width(name));
  for (const auto& [name, about] : listed.looks) {
    say(printable(name) + std::string(longest - display_width(name) + 2, ' ') + printable(about) +
        "\n");
  }
  return listed.exit_code;
}

int list_drills(const Run& run) {
  const std::vector<std::string> words = run.given.all(kDrillWords);
  const club::FoundDrills found = club::find_drills(words, run.standing, run.around, run.terminal);
  if (found.one != nullptr) {
    say(drill_text(*found.one));
    return found.exit_code;
  }
  if (!found.all.empty()) {
    say(drill_list(found.all) +
        fmt::format("{}. Name one to see all of it: chalkleaf drills {}\n",
                    counted(std::int64_t(found.all.size()), "drill", "drills"),
                    shell_word(printable(found.all.front()->name.text))));
    return found.exit_code;
  }
  if (found.book == nullptr) return found.exit_code;
  std::string asked;
  for (const std::string& word : words) asked += (asked.empty() ? "" : " ") + word;
  run.terminal.problem(fmt::format(
      "no drill has all of ‘{}’{}", printable(asked),
      found.closest.empty() ? "; try fewer words" : ": did you mean ‘" + found.closest + "’?"));
  return kUsageError;
}

}  // namespace chalkleaf::cli
