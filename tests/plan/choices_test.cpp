// Choices in a drill's name, and rows of moves that have no name. Which words join a pair rather
// than two drills is common practice, no source.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("drills to choose between are in the order written") {
  CHECK(read_body_text("## P\n\n- Donkey kick or wall walk-up OR wall **handstand**: 3 goes\n") ==
        "drill Donkey kick or wall walk-up OR wall handstand | 3 goes of 1 reps\n"
        "  choice Donkey kick\n  choice wall walk-up\n  choice wall handstand\n");
  CHECK(read_body_text("## P\n\n- Donkey kick, or wall walk-up: 3\n- Tag or line tag\n") ==
        "drill Donkey kick, or wall walk-up | 3 reps\n  choice Donkey kick\n  choice wall walk-up\n"
        "drill Tag or line tag\n  choice Tag\n  choice line tag\n");
  const ReadPlan plan = read_plan(plan_with("## P\n\n- Roll or  rock &amp; roll: 3\n"));
  const Drill& drill = *drills_of(plan.session.parts.at(0)).at(0);
  REQUIRE(drill.choices.size() == 2);
  CHECK(drill.choices[1].text == "rock & roll");
  CHECK(drill.choices[1].span.text() == "rock &amp; roll");
}

TEST_CASE("an or that joins no two drills parts nothing") {
  for (const char* name :
       {"Balance on one or two legs", "Walk forwards or backwards", "Roll (left or right)",
        "Jump 2 or 3 times", "or hold", "hold or", "Arms straight or bent", "Forum", "Orbit",
        "Hold it as long as you like or until the music stops for us all"}) {
    INFO(name);
    const ReadPlan plan = read_plan(plan_with(fmt::format("## P\n\n- {}: 3\n", name)));
    const Drill& drill = *drills_of(plan.session.parts.at(0)).at(0);
    CHECK(drill.name.text == name);
    CHECK(drill.choices.empty());
  }
  // Without a dose it may be a text of the coach's.
  CHECK(read_body_text("## P\n\n- Talk about what went well or badly\n") ==
        "drill Talk about what went well or badly\n");
}

TEST_CASE("several moves in a row need no name") {
  CHECK(read_body_text("## P\n\n"
                       "- 10 star jumps, 10 high knees\n"
                       "- 2 x (10 star jumps, 10 high knees), rest 30 s\n"
                       "- 10 star jumps, 10 lunges each leg, rest 30 s\n"
                       "- Jump mix: 2 x (10 star jumps, 10 high knees), rest 30 s\n"
                       "- 10 star jumps\n") ==
        "drill 10 star jumps, 10 high knees | [star jumps][high knees]\n"
        "drill 10 star jumps, 10 high knees | 2 sets of [star jumps][high knees], rest 30 s\n"
        "drill 10 star jumps, 10 lunges each leg | [star jumps][lunges], rest 30 s\n"
        "drill Jump mix | 2 sets of [star jumps][high knees], rest 30 s\n"
        "drill 10 star jumps\n");
}

}  // namespace
}  // namespace chalkleaf::plan
