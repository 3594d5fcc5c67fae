// Lines that move kit between drills.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

std::string moved(const std::string& line) { return read_body_text("## P\n\n- " + line + "\n"); }

TEST_CASE("a verb and a colon move kit, with how and how long") {
  CHECK(moved("Pick up: hoops, two each") == "pick up [hoops] (two each)\n");
  CHECK(moved("Put away: hoops: 1 min") == "put away [hoops] 1 min\n");
  CHECK(moved("Put away: hoops, in the blue bag: 1:30 min") ==
        "put away [hoops] (in the blue bag) 1 min 30 s\n");
  CHECK(moved("Set out: the hoops, cones and *long* mats, 90 s") ==
        "pick up [hoops] [cones] [long mats] 1 min 30 s\n");
  CHECK(moved("Fetch: 6 hoops, 4 cones") == "pick up [6 hoops] [4 cones]\n");
  CHECK(moved("Clear away: mats (the thin ones), then sit.") ==
        "put away [mats] ((the thin ones), then sit)\n");
  CHECK(moved("Set out kit: mats (thin ones)") == "pick up [mats] (thin ones)\n");
  CHECK(moved("**Tidy-up:** everything & the chalk") == "put away [everything] [chalk]\n");
  const ReadPlan plan = read_plan(plan_with("## P\n\n- Put away: hoops, in the bag: 1 min\n"));
  const auto& move = std::get<KitMove>(plan.session.parts.at(0).steps.at(0));
  CHECK(move.span.text() == "- Put away: hoops, in the bag: 1 min");
  CHECK(move.kit.at(0).span.text() == "hoops");
  CHECK(move.how.span.text() == "in the bag");
}

TEST_CASE("every verb goes one way") {
  for (const char* verb : {"Pick up", "Set out", "Set up", "Fetch", "Get", "Get out", "Collect",
                           "Bring", "Bring out", "Lay out", "Put out", "PICK UP", "Pick-up"}) {
    CHECK(moved(fmt::format("{}: mats", verb)) == "pick up [mats]\n");
  }
  for (const char* verb : {"Put away", "Put back", "Put down", "Clear away", "Clear up", "Tidy up",
                           "Tidy away", "Tidy", "Pack up", "Pack away", "Take down"}) {
    CHECK(moved(fmt::format("{}: mats", verb)) == "put away [mats]\n");
  }
}

TEST_CASE("a dose behind the verb makes a drill") {
  CHECK(moved("Pick up: 10") == "drill Pick up | 10 reps\n");
  CHECK(moved("Pick up: 3 x 10 s, rest 5 s") == "drill Pick up | 3 sets of 10 s, rest 5 s\n");
  CHECK(moved("Tidy up: 2 min") == "drill Tidy up | 2 min\n");
  CHECK(moved("Set out to sea: 2 min") == "drill Set out to sea | 2 min\n");
  CHECK(moved("Fetch") == "drill Fetch\n");
}

TEST_CASE("what stands below a kit move is kept") {
  CHECK(read_body_text("## P\n\n- Pick up:\n  - hoops\n  - the **cones**\n  - coach: count them\n"
                       "- Put away: hoops\n  - quickly\n\n  In the bag.\n") ==
        "pick up [hoops] [the cones]\nitem for coach count them\n"
        "put away [hoops]\nitem quickly\nparagraph In the bag.\n");
}

TEST_CASE("slips in a kit move are named") {
  CHECK(moved("Put away: mats: 1 mni") ==
        "put away [mats] (1 mni)\n"
        "plan.md:7:19: error: ‘1 mni’ is not a length of time [bad-value]; write it with its unit: "
        "`20 s`, `40 min`, `1 h` or `1:15 h`\n");
  CHECK(moved("Put away: mats, low: 0 s") ==
        "put away [mats] [low] (0 s)\n"
        "plan.md:7:24: error: ‘0 s’ is no time at all [bad-value]; write a time above zero\n");
  CHECK(moved("Clear away:") ==
        "item Clear away\n"
        "plan.md:7:3: error: ‘Clear away’ does not say what [bad-value]; name the kit behind the "
        "colon: `Clear away: hoops`\n");
}

TEST_CASE("a kit move may stand in a line of its own") {
  CHECK(read_body_text("## P\n\nPut away: hoops\n\n- Dish: 3\n") ==
        "put away [hoops]\ndrill Dish | 3 reps\n");
  CHECK(read_body_text("## P\n\nSet up: three beams in a row. Then stand.\n") ==
        "paragraph Set up: three beams in a row. Then stand.\n");
  CHECK(read_body_text("Set out: three beams\n\n- Bring: water\n\n## P\n") ==
        "before paragraph Set out: three beams\nbefore item Bring: water\n");
  CHECK(read_body_text("## P\n\n- Dish: 3\nPut away: balls\n") ==
        "drill Dish | 3 reps\nput away [balls]\n"
        "plan.md:8:1: error: this line has no dash before it, so it runs on from the line above "
        "[bad-value]; write `- Put away: balls`, with a dash and a space before it\n");
  CHECK(read_body_text("## P\n\n-Fetch: mats\n") ==
        "pick up [mats]\n"
        "plan.md:7:1: error: this line has no space behind its dash [bad-value]; write `- Fetch: "
        "mats`, with a dash and a plain space before it\n");
  CHECK(read_body_text("## P\n\n• Fetch: mats\n") ==
        "pick up [mats]\n"
        "plan.md:7:1: error: this line begins with • instead of a dash [bad-value]; write `- "
        "Fetch: mats`, with a dash and a plain space before it\n");
}

}  // namespace
}  // namespace chalkleaf::plan
