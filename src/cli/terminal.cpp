#include "cli/terminal.h"

#include <fmt/format.h>
#include <unistd.h>

#include "base/text.h"

namespace chalkleaf::cli {
namespace {

constexpr std::chrono::milliseconds kLong{500};  // a shorter run needs no line of progress
constexpr std::chrono::milliseconds kBetween{100};
constexpr std::size_t kMostFolders = 3;

void print(std::FILE* to, const std::string& text) { std::fwrite(text.data(), 1, text.size(), to); }

// https://no-color.org: any value but the empty one.
bool wants_colour(const Environment& environment) {
  const bool refused = !environment.get("NO_COLOR").value_or("").empty();
  return !refused && environment.get("TERM").value_or("dumb") != "dumb";
}

std::string folders_text(const std::vector<std::string>& folders) {
  if (folders.size() > kMostFolders) return fmt::format("{} folders", folders.size());
  return printable(join_list(folders));
}

// `3 plans and 1 shared part`
std::string checked_text(const club::Summary& summary) {
  std::vector<std::string> kinds;
  if (summary.plans > 0) kinds.push_back(counted(summary.plans, "plan", "plans"));
  if (summary.parts > 0) kinds.push_back(counted(summary.parts, "shared part", "shared parts"));
  if (summary.drills > 0) kinds.push_back(counted(summary.drills, "drill", "drills"));
  if (summary.club_files > 0) {
    kinds.push_back(counted(summary.club_files, "club file", "club files"));
  }
  return join_list(kinds);
}

std::string failed_text(const club::Summary& summary, club::Purpose purpose) {
  std::vector<std::string> names = summary.failed_plans;
  if (summary.failed > names.size()) {
    names.push_back(fmt::format("{} more", summary.failed - names.size()));
  }
  const std::string_view verb = purpose == club::Purpose::kCheck ? "cannot be printed"
                                : summary.failed == 1            ? "was not printed"
                                                                 : "were not printed";
  return fmt::format("{} {} because of errors: {}\n", counted(summary.failed, "plan", "plans"),
                     verb, printable(join_list(names)));
}

// `2 PDFs are not from this version: out/a-card.pdf and out/b-card.pdf`
std::string sheets_text(std::size_t count, std::vector<std::string> names, std::string_view one,
                        std::string_view many) {
  if (count == 0) return {};
  if (count > names.size()) names.push_back(fmt::format("{} more", count - names.size()));
  return fmt::format("{} {}: {}\n", counted(count, "PDF", "PDFs"), count == 1 ? one : many,
                     printable(join_list(names)));
}

// The coach's card is printed all the same, with what was found on top.
std::string held_text(const club::Summary& summary, club::Purpose purpose) {
  std::vector<std::string> names = summary.held_plans;
  if (summary.held_back > names.size()) {
    names.push_back(fmt::format("{} more", summary.held_back - names.size()));
  }
  const bool one = summary.held_back == 1;
  const std::string_view verb = purpose == club::Purpose::kCheck ? "cannot go to families"
                                : one                            ? "was not printed for families"
                                                                 : "were not printed for families";
  return fmt::format("{} {} as written, only as {}: {}\n",
                     counted(summary.held_back, "home plan", "home plans"), verb,
                     one ? "a coach card" : "coach cards", printable(join_list(names)));
}

}  // namespace

Terminal::Terminal(MessageStyle style, const Environment& environment)
    : style_(style), next_progress_(Clock::now() + kLong) {
  const bool on_terminal = ::isatty(STDERR_FILENO) == 1;
  colouring_ = on_terminal && wants_colour(environment) ? Colouring::kAnsi : Colouring::kPlain;
  shows_progress_ = on_terminal && environment.get("TERM").value_or("dumb") != "dumb";
}

void Terminal::problem(const std::string& sentence) {
  clear_progress();
  print(stderr, "chalkleaf: " + printable(sentence) + "\n");
}

void Terminal::found(const Diagnostic& diagnostic) {
  clear_progress();
  print(style_ == MessageStyle::kJson ? stdout : stderr, render(diagnostic, style_, colouring_));
}

void Terminal::progress(std::size_t done, std::size_t total) {
  if (!shows_progress_) return;
  const auto now = Clock::now();
  if (now < next_progress_) return;
  next_progress_ = now + kBetween;
  print(stderr, fmt::format("\r{} of {} plans", done, total));
  std::fflush(stderr);
  progress_stands_ = true;
}

void Terminal::clear_progress() {
  if (!progress_stands_) return;
  print(stderr, "\r\x1b[K");
  progress_stands_ = false;
}

void Terminal::close(const club::Summary& summary, club::Purpose purpose) {
  clear_progress();
  print(style_ == MessageStyle::kJson ? stderr : stdout, summary_text(summary, purpose));
}

std::string summary_text(const club::Summary& summary, club::Purpose purpose) {
  if (summary.plans + summary.parts + summary.drills + summary.club_files == 0) return {};
  const std::string plans = counted(summary.plans, "plan", "plans");
  std::string out;
  if (purpose == club::Purpose::kCheck) {
    out = fmt::format("{} checked: {}, {}\n", checked_text(summary),
                      counted(summary.errors, "error", "errors"),
                      counted(summary.warnings, "warning", "warnings"));
    if (summary.parts > 0) {
      out += "A shared part's times and safety are checked with the sessions that use it.\n";
    }
  } else {
    const bool pictures = purpose == club::Purpose::kProof;
    out = summary.sheets == 0
              ? plans + (pictures ? ": no pictures" : ": no PDFs")
              : fmt::format("{}: {} in {}", plans,
                            pictures ? counted(summary.sheets, "picture", "pictures")
                                     : counted(summary.sheets, "PDF", "PDFs"),
                            folders_text(summary.folders));
    if (summary.warnings > 0) out += ", " + counted(summary.warnings, "warning", "warnings");
    out += "\n";
  }
  if (summary.failed > 0) out += failed_text(summary, purpose);
  out += sheets_text(summary.moved_count, summary.moved,
                     "was moved to the folder ‘earlier’, because its plan has errors, is gone or "
                     "has no such sheet now",
                     "were moved to the folder ‘earlier’, because their plans have errors, are "
                     "gone or have no such sheet now");
  out += sheets_text(summary.stayed_count, summary.stayed,
                     "is not from this version, and stays as it was",
                     "are not from this version, and stay as they were");
  if (summary.held_back > 0) out += held_text(summary, purpose);
  if (summary.skipped > 0) {
    out += fmt::format(
        "Stopped: {} not reached. Every file that is there is whole.\n",
        summary.skipped == 1 ? "1 plan was" : fmt::format("{} plans were", summary.skipped));
  }
  return out;
}

bool flush_output() {
  std::fflush(stderr);
  return std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
}

}  // namespace chalkleaf::cli
