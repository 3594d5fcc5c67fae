// The program on clubs with a drill library: what its mistakes keep from being printed.
#include <catch2/catch.hpp>

#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf::club::tests;

namespace {

constexpr const char* kDish =
    "---\ntitle: Dish hold\nkind: shape\nplain: Lie like a dish.\n---\n- cue: Back down\n";

/// A club with one plan of a known drill and one of a drill nobody knows.
void fill(const TemporaryFolder& folder, const std::string& dish) {
  folder.put("club.yaml",
             "name: Alder Quay Gymnastics\nshelf: off\nchecks: {unknown-drill: off}\n");
  folder.put("drills/dish-hold.md", dish);
  std::string plan = gym_plan("A");
  // As long as the walk was; no child holds a dish for twenty minutes.
  plan.replace(plan.find("- Walk: 20 min"), 14, "- Dish hold: 40 x 15 s, rest 15 s");
  folder.put("sessions/a.md", plan);
  folder.put("sessions/b.md", gym_plan("B"));
}

Outcome run_drill(const TemporaryFolder& folder, const std::string& arguments) {
  return shell("cd " + folder.str() + " && CHALKLEAF_DATA=" + support::repository() +
               " NO_COLOR=1 " + support::program() + " " + arguments + " 2>&1");
}

constexpr const char* kLevel =
    "drills/dish-hold.md:3:8: error: ‘99’ is not a number that makes sense here [bad-value]; write "
    "a whole number from 1 to 10\n";

}  // namespace

TEST_CASE("a sound library is not spoken of") {
  const TemporaryFolder folder("drill-run-well");
  fill(folder, kDish);
  CHECK(run_drill(folder, "build --messages short").text == "2 plans: 2 PDFs in out\n");
  CHECK(run_drill(folder, "times sessions/a.md").exit_code == 0);
}

TEST_CASE("an error in a drill is said once, and keeps from print the plans that use it") {
  const TemporaryFolder folder("drill-run-error");
  fill(folder, "---\ntitle: Dish hold\nlevel: 99\n---\n");
  const std::string plan = folder.read("sessions/a.md");
  folder.put("sessions/c.md", plan);
  const Outcome built = run_drill(folder, "build --messages short");
  CHECK(built.text ==
        kLevel + std::string("3 plans: 1 PDF in out\n2 plans were not printed because of "
                             "errors: sessions/a.md and sessions/c.md\n"));
  CHECK(built.exit_code == 1);
  CHECK_FALSE(folder.has("out/a-card.pdf"));
  CHECK(folder.has("out/b-card.pdf"));
  const Outcome timed = run_drill(folder, "times sessions/a.md --messages short");
  CHECK(timed.exit_code != 0);
}

TEST_CASE("a drill whose title is lost keeps from print every plan that may mean it") {
  const TemporaryFolder folder("drill-run-lost");
  fill(folder, "---\ntitle: Dish hold\nalso: jog, sway\n---\n");
  folder.put("drills/walk.md", "---\ntilte: Walk on beam 2\nspotter: yes\n---\n");
  std::string plan = folder.read("sessions/a.md");
  plan.replace(plan.find("- Dish hold"), 11, "- Beam 2");
  folder.put("sessions/b.md", plan);
  const Outcome built = run_drill(folder, "build --messages short");
  CHECK(built.text ==
        "drills/walk.md:2:1: error: ‘tilte’ is not a key of a drill's front matter "
        "[unknown-key]; did you mean `title`?\n"
        "2 plans: 1 PDF in out\n"
        "1 plan was not printed because of errors: sessions/b.md\n");
}

TEST_CASE("check takes a drill's file, in a club and alone; build does not") {
  const TemporaryFolder folder("drill-run-check");
  fill(folder, "---\ntitle: Dish hold\nlevel: 99\n---\n");
  CHECK(run_drill(folder, "check --messages short drills/dish-hold.md").text ==
        kLevel + std::string("1 drill checked: 1 error, 0 warnings\n"));
  CHECK(run_drill(folder, "build drills/dish-hold.md").text ==
        "chalkleaf: ‘drills/dish-hold.md’ is a drill of the library, used by sessions: name one of "
        "those\n");
  std::filesystem::remove(folder / "club.yaml");
  CHECK(run_drill(folder, "check --messages short drills/dish-hold.md").text ==
        kLevel + std::string("1 drill checked: 1 error, 0 warnings\n"));
}

TEST_CASE("the club's checks hold for the library too") {
  const TemporaryFolder folder("drill-run-choices");
  fill(folder, kDish);
  folder.put("drills/dish.md", "---\ntitle: dish holds\n---\n");
  CHECK(run_drill(folder, "check --messages short").text ==
        "drills/dish.md:2:8: warning: two drills of the library go by the name ‘dish holds’ "
        "[duplicate-drill]; give one of them another name, or put both into one file\n"
        "2 plans checked: 0 errors, 1 warning\n");
  folder.put("club.yaml",
             "name: A\nshelf: off\nchecks:\n  unknown-drill: off\n  duplicate-drill: off\n");
  CHECK(run_drill(folder, "check --messages short").text ==
        "2 plans checked: 0 errors, 0 warnings\n");
}
