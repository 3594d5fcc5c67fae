// The sums of loads as tables and as JSON.
#include "cli/loads_table.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/loads_json.h"
#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;

namespace {

plan::LibraryDrill jumps(const std::string& name) {
  plan::LibraryDrill out;
  out.source = std::make_shared<const Source>("d.md", name + "\n");
  out.name = {name, {}};
  out.kind.value = plan::DrillKind::kJump;
  out.each.landings = plan::Sourced<int>{1, {}};
  out.effort = plan::Sourced<int>{6, {}};
  return out;
}

/// Of one group of six-year-olds.
club::LoadsRun run_of(const std::string& body) {
  Diagnostics found;
  plan::Club club;
  plan::Group wrens;
  wrens.name = {"Wrens", {}};
  wrens.youngest = plan::Sourced<int>{6, {}};
  club.groups = {wrens};
  const SourcePtr source = source::load_text(
      "t.md",
      "---\ntitle: T\nplace: gym\ngroup: Wrens\ndate: 2026-12-02\n---\n\n## Jumps\n\n" + body,
      found);
  auto plan = std::make_unique<club::LoadedPlan>();
  plan->path = "t.md";
  auto book = std::make_shared<plan::DrillBook>(
      std::vector<plan::LibraryDrill>{jumps("Frog hop"), jumps("Line hop")}, found);
  plan->plan.session = plan::read_session(source::read_document(source, found), club, found);
  plan::inherit(plan->plan.session, *book, found);
  plan->plan.drills = book;
  plan->plan.timetable = reason::timetable(plan->plan.session, club);
  plan->loads = reason::loads_of(plan->plan.session, plan->plan.timetable, *book);
  club::LoadsRun run;
  run.weeks = reason::group_weeks(
      {reason::week_session(plan->plan.session, plan->plan.timetable, plan->loads.sum)});
  run.plans.push_back(std::move(plan));
  CHECK(found.all().empty());
  return run;
}

}  // namespace

TEST_CASE("loads table: sums, what is a lot, the lines that add most, and the week") {
  CHECK(cli::loads_table(run_of("- Frog hop: 3 x 30\n- Line hop: 40\n- Geese: 5\n")) ==
        "T  (t.md)\n"
        "                sum  a lot  most of it\n"
        "  landings      130  120 !  Frog hop 90, Line hop 40\n"
        "  effort x min  26   –      Frog hop 18, Line hop 8\n"
        "  not counted: Geese\n"
        "\n"
        "Wrens, week from 2026-11-30: 1 day in the gym (5 min)\n"
        "                sum  a lot  most of it\n"
        "  landings      130  300    T 130\n"
        "  effort x min  26   –      T 26\n");
}

TEST_CASE("loads table: a plan that asks nothing says so") {
  CHECK(cli::loads_table(run_of("- Geese: 5\n")).find("nothing that is added up") !=
        std::string::npos);
}

TEST_CASE("loads as JSON: sums, limits, lines and weeks") {
  const auto json = nlohmann::json::parse(cli::loads_json(run_of("- Frog hop: 30\n- Geese: 5\n")));
  CHECK(json["schema"] == cli::kLoadsSchema);
  const auto& plan = json["plans"][0];
  CHECK(plan["group"] == "Wrens");
  CHECK(plan["date"] == "2026-12-02");
  CHECK(plan["sums"]["landings"] == 30);
  CHECK(plan["sums"]["effort_min"] == 6);
  CHECK(plan["limits"]["landings"] == 120);
  CHECK(plan["limits"]["effort_min"].is_null());
  CHECK(plan["lines"].size() == 1);
  CHECK(plan["lines"][0]["line"] == 10);
  CHECK(plan["uncounted"][0] == "Geese");
  const auto& week = json["weeks"][0];
  CHECK(week["first"] == "2026-11-30");
  CHECK(week["gym_days"][0] == "2026-12-02");
  CHECK(week["limits"]["landings"] == 300);
}
