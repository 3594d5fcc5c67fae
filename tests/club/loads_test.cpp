// `loads` over a club's folder, and what `check` says of a group's week.
#include "club/loads.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

class LoadsEar final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& diagnostic) override {
    text += render(diagnostic, MessageStyle::kShort, Colouring::kPlain);
  }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

std::string six_days(const std::string& checks) {
  return "name: Alder Quay Gymnastics\n" + checks +
         "groups:\n  Swifts: {ages: 13-15, size: 8, adults: 2}\n";
}

std::string plan_on(const std::string& days) {
  return "---\ntitle: Jumps\nplace: gym\ngroup: Swifts\ndate: 2026-11-30\nrepeat: " + days +
         "\n---\n\n## Warm-up\n\n- Jog on the spot: 3 min\n\n## Jumps\n\n- Tuck jumps: 3 x 5\n"
         "\n## Cool-down\n\n- Slow walk: 1 min\n";
}

struct LoadsRunner {
  explicit LoadsRunner(const TemporaryFolder& folder)
      : environment(std::map<std::string, std::string>{{"CHALKLEAF_DATA", support::repository()}}),
        around{files, environment, "/nowhere/chalkleaf"} {
    request.standing = folder.str();
    request.purpose = Purpose::kCheck;
  }
  RealFileSystem files;
  FixedEnvironment environment;
  Surroundings around;
  Request request;
  LoadsEar ear;
};

}  // namespace

TEST_CASE("loads: each plan, and the week of its group") {
  const TemporaryFolder folder("loads-club");
  folder.put("club.yaml", six_days(""));
  folder.put("sessions/a.md", plan_on("tuesday, thursday"));
  LoadsRunner runner(folder);
  const LoadsRun made = loads(runner.request, runner.around, runner.ear);
  CHECK(runner.ear.text.empty());
  CHECK(made.summary.exit_code() == 0);
  REQUIRE(made.plans.size() == 1);
  CHECK(made.plans[0]->path == "sessions/a.md");
  CHECK(made.plans[0]->loads.sum.of(reason::Load::kLandings) == 15);
  REQUIRE(made.weeks.size() == 1);
  CHECK(made.weeks[0].gym_days.size() == 3);
  CHECK(made.weeks[0].sum.of(reason::Load::kLandings) == 45);
}

TEST_CASE("check: a group's week without days off is told once, unless the club does not want it") {
  const std::string days = "tuesday, wednesday, thursday, friday, saturday";
  const auto said = [&](const std::string& checks) {
    const TemporaryFolder folder("loads-check");
    folder.put("club.yaml", six_days(checks));
    folder.put("sessions/a.md", plan_on(days));
    folder.put("sessions/b.md", plan_on(days));
    LoadsRunner runner(folder);
    CHECK(build(runner.request, runner.around, runner.ear).exit_code() == 0);
    return runner.ear.text;
  };
  CHECK(said("") ==
        "sessions/b.md:4:8: warning: Swifts are in the gym on 6 days of the week from 2026-11-30 "
        "[too-few-rest-days]; leave two days of the week free of the gym\n");
  CHECK(said("checks: {too-few-rest-days: off}\n").empty());
}
