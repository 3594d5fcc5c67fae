// Drafts through whole runs: they print, what is found points into the coach's file, and tidy's
// plan is the one that was read.
#include "club/drafts.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/begin.h"
#include "club/folders.h"
#include "club/tidy.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

constexpr const char* kDraft =
    "Rec Thurs 5:00-5:50\n12 kids, just me\n\nWARM UP 10 min\n- jog 2 laps\n- star jumps x20\n\n"
    "Bars 20 min\n- casts 5-4-3-2-1\n- splits L/R/middle 30 secs each\n\nGirl 7 – heel\n";

class Ear final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& diagnostic) override {
    CHECK(diagnostic.severity != Severity::kError);
    text += render(diagnostic, MessageStyle::kShort, Colouring::kPlain);
  }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

struct Run {
  explicit Run(const TemporaryFolder& folder)
      : environment(std::map<std::string, std::string>{{"CHALKLEAF_DATA", support::repository()}}),
        around{files, environment, "/nowhere/chalkleaf"} {
    request.standing = folder.str();
    request.arguments = {"plan.md"};
  }
  RealFileSystem files;
  FixedEnvironment environment;
  Surroundings around;
  Request request;
  Ear ear;
};

}  // namespace

TEST_CASE("a draft prints, and no finding about it is an error") {
  const TemporaryFolder folder("draft-prints");
  folder.put("plan.md", kDraft);
  Run run(folder);
  const Summary summary = build(run.request, run.around, run.ear);
  CHECK(summary.exit_code() == 0);
  CHECK(summary.sheets == 1);
  CHECK(run.ear.text.find("plan.md:") != std::string::npos);
}

TEST_CASE("times reads the draft's model, and its lines are the coach's") {
  const TemporaryFolder folder("draft-times");
  folder.put("plan.md", kDraft);
  Run run(folder);
  const Timed timed = times(run.request, run.around, run.ear);
  REQUIRE(timed.plan);
  const plan::Session& session = timed.plan->session;
  REQUIRE(session.parts.size() == 2);
  CHECK(session.title.text == "Rec Thurs 5:00-5:50");
  CHECK(session.gymnasts->value == 12);
  CHECK(session.parts[1].budget->value == Duration::minutes(20));
  const plan::Drill& casts = *plan::drills_of(session.parts[1])[0];
  CHECK(casts.dose->amount.ladder == std::vector<std::int64_t>{5, 4, 3, 2, 1});
  CHECK(timed.plan->line_of(casts.name.span) == 9);
  CHECK(timed.plan->typed(casts.name.span) == "casts 5-4-3-2-1");
  CHECK(session.typed.size() == 4);
}

TEST_CASE("tidy shows, writes, and has nothing to do the second time") {
  const TemporaryFolder folder("draft-tidy");
  folder.put("plan.md", kDraft);
  Run run(folder);
  const TidyRun shown = tidy(run.request, TidyWay::kShow, run.around, run.ear);
  REQUIRE(shown.plans.size() == 1);
  CHECK(change_text(shown.plans[0]).starts_with("--- plan.md\n+++ plan.md\n@@ -1,"));
  CHECK(folder.read("plan.md") == std::string(kDraft));
  const TidyRun written = tidy(run.request, TidyWay::kWrite, run.around, run.ear);
  CHECK(folder.read("plan.md") == written.plans[0].after);
  const TidyRun again = tidy(run.request, TidyWay::kShow, run.around, run.ear);
  CHECK(change_text(again.plans[0]).empty());
}

TEST_CASE("a plan begun from a draft stands beside it, and overwrites nothing") {
  const TemporaryFolder folder("draft-begin");
  folder.put("plan.md", kDraft);
  Run run(folder);
  const auto made = begin_plan(run.request, run.around, run.ear);
  REQUIRE(made);
  CHECK(*made == "plan-plan.md");
  CHECK(folder.read("plan.md") == std::string(kDraft));
  CHECK(folder.read("plan-plan.md").starts_with("---\ntitle: \"Rec Thurs 5:00-5:50\"\n"));
  const auto again = begin_plan(run.request, run.around, run.ear);
  REQUIRE_FALSE(again);
  CHECK(again.error().starts_with("‘plan-plan.md’ is there already"));
  run.request.arguments = {"none.md"};
  CHECK_FALSE(begin_plan(run.request, run.around, run.ear));
  CHECK(names_draft("monday.txt"));
  CHECK_FALSE(names_draft("our-club"));
}

TEST_CASE("front matter in a hurry prints, and its plan is told as it was read") {
  const TemporaryFolder folder("hurried-front");
  folder.put("plan.md",
             "---\ntitle: Shapes: one\nkit: mats\ndate: 3/12/2026\n---\n\n## Warm-up\n\n- Jog: 2 "
             "min\n\n## Cool-down\n\n- Slow walk: 1 min\n");
  Run run(folder);
  CHECK(build(run.request, run.around, run.ear).sheets == 1);
  CHECK(run.ear.text.find("was read as one for the hall") != std::string::npos);
  CHECK(run.ear.text.find("read-as") != std::string::npos);
  (void)tidy(run.request, TidyWay::kWrite, run.around, run.ear);
  CHECK(folder.read("plan.md").starts_with(
      "---\ntitle: 'Shapes: one'\nequipment: mats\ndate: 2026-12-03\nplace: gym\n---\n"));
}
