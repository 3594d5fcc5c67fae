// The program itself: exit codes, what goes where, and help.
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <regex>

#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf::club::tests;

namespace {

/// Runs the program in a folder; `streams` says what of it to see: `2>&1`, `2>/dev/null`, …
Outcome program(const TemporaryFolder& folder, const std::string& arguments,
                const std::string& streams = "2>&1") {
  return shell("cd '" + folder.str() + "' && CHALKLEAF_DATA='" + support::repository() +
               "' SOURCE_DATE_EPOCH=1764600000 '" + support::program() + "' " + arguments + " " +
               streams);
}

std::string broken_plan() {
  std::string plan = gym_plan("Broken");
  return plan.replace(plan.find("- Walk: 20 min"), 14, "- Walk: a few times");
}

}  // namespace

TEST_CASE("program: a build and its summary") {
  const TemporaryFolder folder("program-build");
  folder.put("plans/club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("plans/sessions/a.md", gym_plan("A"));
  folder.put("plans/sessions/b.md", home_plan("B"));
  const Outcome well = program(folder, "build plans");
  CHECK(well.text == "2 plans: 3 PDFs in plans/out\n");
  CHECK(well.exit_code == 0);
  folder.put("plans/sessions/c.md", broken_plan());
  const Outcome one_wrong = program(folder, "build plans", "2>/dev/null");
  CHECK(one_wrong.text ==
        "3 plans: 3 PDFs in plans/out\n"
        "1 plan was not printed because of errors: plans/sessions/c.md\n");
  CHECK(one_wrong.exit_code == 1);
  const Outcome checked = program(folder, "check plans", "2>/dev/null");
  CHECK(checked.text ==
        "3 plans checked: 1 error, 0 warnings\n"
        "1 plan cannot be printed because of errors: plans/sessions/c.md\n");
  CHECK(checked.exit_code == 1);
}

TEST_CASE("program: a missing file is a usage error, and the others are built") {
  const TemporaryFolder folder("program-missing");
  folder.put("a.md", gym_plan("A"));
  const Outcome outcome = program(folder, "build b.md a.md");
  CHECK(outcome.text ==
        "chalkleaf: there is no file or folder ‘b.md’\n"
        "1 plan: 1 PDF in out\n");
  CHECK(outcome.exit_code == 2);
  CHECK(folder.has("out/a-card.pdf"));
}

TEST_CASE("program: JSON messages are one object a line, and nothing else on standard output") {
  const TemporaryFolder folder("program-json");
  folder.put("c.md", broken_plan());
  const Outcome outcome = program(folder, "check --messages json c.md", "2>/dev/null");
  CHECK(outcome.exit_code == 1);
  std::istringstream lines(outcome.text);
  std::string names;
  for (std::string line; std::getline(lines, line);) {
    const auto object = nlohmann::json::parse(line);
    CHECK(object["schema"] == 1);
    CHECK(object["path"] == "c.md");
    for (const char* field : {"line", "column", "end_line", "end_column"}) {
      CHECK(object[field].is_number_unsigned());
    }
    for (const char* field : {"severity", "message", "hint"}) CHECK(object[field].is_string());
    names += object["name"].get<std::string>() + " ";
  }
  CHECK(names == "unreadable-dose ");
}

TEST_CASE("program: no colours where there is no terminal") {
  const TemporaryFolder folder("program-plain");
  folder.put("c.md", broken_plan());
  CHECK(program(folder, "check c.md").text.find('\x1b') == std::string::npos);
}

TEST_CASE("program: colours on a terminal, unless NO_COLOR is set") {
  const TemporaryFolder folder("program-colour");
  folder.put("c.md", broken_plan());
  // script(1) gives the program a terminal of its own.
  const auto on_terminal = [&](const std::string& environment) {
    return shell("cd '" + folder.str() + "' && " + environment + " TERM=xterm CHALKLEAF_DATA='" +
                 support::repository() + "' script -qec \"'" + support::program() +
                 "' check c.md\" /dev/null </dev/null")
        .text;
  };
  CHECK(on_terminal("NO_COLOR=").find("\x1b[1;31merror\x1b[0m") != std::string::npos);
  // A slow machine also sees how far it has come, in a line that is erased.
  const std::regex colour("\x1b\\[[0-9;]*m");
  CHECK_FALSE(std::regex_search(on_terminal("NO_COLOR=1"), colour));
}

TEST_CASE("program: what is wrong with a command line is said, with exit code 2") {
  const TemporaryFolder folder("program-usage");
  folder.put("a.md", gym_plan("A"));
  for (const char* arguments :
       {"", "print a.md", "build --colour a.md", "build --paper a3 a.md", "build --jobs 0 a.md",
        "build --only posters a.md", "check --messages xml a.md", "times", "times a.md a.md"}) {
    INFO(arguments);
    const Outcome outcome = program(folder, arguments);
    CHECK(outcome.exit_code == 2);
    CHECK(outcome.text.starts_with("chalkleaf: "));
    CHECK(program(folder, arguments, "2>/dev/null").text.empty());
  }
  CHECK_FALSE(folder.has("out"));
}

TEST_CASE("program: a number of jobs that is none is named, with what would be one") {
  const TemporaryFolder folder("program-jobs");
  folder.put("a.md", gym_plan("A"));
  for (const std::string jobs : {"0", "-1", "10000", "two", "1.5", "99999999999999999999"}) {
    const Outcome outcome = program(folder, "build a.md --jobs " + jobs);
    CHECK(outcome.text == "chalkleaf: --jobs: a number from 1 to 256 is needed, not ‘" + jobs +
                              "’\nRun with --help for more information.\n");
    CHECK(outcome.exit_code == 2);
  }
  CHECK(program(folder, "build a.md --jobs 256").exit_code == 0);
  CHECK(program(folder, "build a.md --out ''").exit_code == 2);
}

TEST_CASE("program: checking a shared part and the club's file") {
  const TemporaryFolder folder("program-shared");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("parts/warm-up.md", "- Jog: 2 min\n");
  const Outcome part = program(folder, "check parts/warm-up.md club.yaml");
  CHECK(part.text ==
        "1 shared part and 1 club file checked: 0 errors, 0 warnings\n"
        "A shared part's times and safety are checked with the sessions that use it.\n");
  CHECK(part.exit_code == 0);
  const Outcome timed = program(folder, "times parts/warm-up.md");
  CHECK(timed.text ==
        "chalkleaf: ‘parts/warm-up.md’ is a shared part, used by sessions: name one of those\n");
  CHECK(timed.exit_code == 2);
}

TEST_CASE("program: a club without plans says so") {
  const TemporaryFolder folder("program-no-plans");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("Sessions/a.md", gym_plan("A"));
  const Outcome outcome = program(folder, "build");
  CHECK(outcome.text ==
        "chalkleaf: this club has no plans: its plans are the .md files in its folder ‘sessions’; "
        "rename ‘Sessions’ to ‘sessions’\n");
  CHECK(outcome.exit_code == 2);
}

TEST_CASE("program: help and version go to standard output, with an example") {
  const TemporaryFolder folder("program-help");
  for (const char* arguments : {"--help", "build --help", "check --help", "times --help"}) {
    const Outcome outcome = program(folder, arguments, "2>/dev/null");
    CHECK(outcome.exit_code == 0);
    CHECK(outcome.text.find("Example") != std::string::npos);
  }
  CHECK(program(folder, "--version", "2>/dev/null").text.starts_with("chalkleaf 0."));
}

TEST_CASE("program: times prints the table, and a full disk is noticed") {
  const TemporaryFolder folder("program-times");
  folder.put("a.md", gym_plan("A"));
  const Outcome outcome = program(folder, "times a.md");
  CHECK(outcome.exit_code == 0);
  CHECK(outcome.text ==
        "A\n"
        "\n"
        " 0:00  Warm-up             5:00\n"
        " 0:00    Jog      5 min    5:00  5 min\n"
        "\n"
        " 5:00  Beam               20:00\n"
        " 5:00    Walk     20 min  20:00  20 min\n"
        "\n"
        "25:00  Cool-down           5:00\n"
        "25:00    Sway     5 min    5:00  5 min\n"
        "\n"
        "       Sum                30:00  5:00 + 20:00 + 5:00\n"
        "       Slot               30:00\n"
        "       Spare               0:00  30:00 − 30:00\n");
  // /dev/full takes nothing, as a full disk does (full(4)).
  const Outcome full = program(folder, "times a.md", "2>&1 >/dev/full");
  CHECK(full.exit_code == 2);
  CHECK(full.text == "chalkleaf: standard output cannot be written to: is the disk full?\n");
}

TEST_CASE("program: drills are listed, shown and searched, with no plan in sight") {
  const TemporaryFolder folder("program-drills");
  const Outcome one = program(folder, "drills hollow holds");
  CHECK(one.text.starts_with("Dish hold\n"));
  CHECK(one.text.find("\nA plan that names it gets:\n  - cue: ") != std::string::npos);
  CHECK(one.text.find("  stands in   shelf/dish-hold.md\n") != std::string::npos);
  CHECK(one.exit_code == 0);
  const Outcome found = program(folder, "drills level 3 wrists home");
  CHECK(found.text.find("wrists") == std::string::npos);  // one line each, and not why
  CHECK(found.text.find(" level 3 ") != std::string::npos);
  CHECK(found.exit_code == 0);
  const Outcome all = program(folder, "drills");
  CHECK(std::count(all.text.begin(), all.text.end(), '\n') > 600);
  const Outcome none = program(folder, "drills hollow hodl");
  CHECK(none.text == "chalkleaf: no drill has all of ‘hollow hodl’: did you mean ‘hollow hold’?\n");
  CHECK(none.exit_code == 2);
}

TEST_CASE("program: a plan of ten lines outside any club takes from the shelf, unless it may not") {
  const TemporaryFolder folder("program-shelf");
  folder.put("plan.md",
             "---\ntitle: Ten lines\nplace: gym\n---\n\n## Warm-up\n\n- Jog: 3 min\n\n## Shapes\n\n"
             "- Hollow hold: 3 x 20 s, rest 20 s\n- Dish hodl: 20 s\n\n## Cool-down\n\n"
             "- Slow walk: 2 min\n");
  const Outcome slip = program(folder, "check --messages short plan.md", "2>&1 >/dev/null");
  CHECK(slip.text.find("did you mean ‘Dish hold’?") != std::string::npos);
  const Outcome built = program(folder, "build plan.md", "2>/dev/null");
  CHECK(built.exit_code == 0);
  const Outcome words = shell("pdftotext '" + folder / "out/plan-card.pdf" + "' - 2>&1");
  CHECK(words.text.find("Easier") != std::string::npos);
  folder.put("club.yaml", "name: Ours\nshelf: off\n");
  CHECK(program(folder, "build plan.md", "2>/dev/null").exit_code == 0);
  const Outcome bare = shell("pdftotext '" + folder / "out/plan-card.pdf" + "' - 2>&1");
  CHECK(bare.text.find("Easier") == std::string::npos);
}
