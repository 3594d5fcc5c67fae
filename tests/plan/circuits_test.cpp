// Circuits and their stations. The forms of the circuit's own line are tested by
// dose_circuit_test.cpp.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("keys below a circuit are the circuit's, everything else is a station") {
  CHECK(read_body_text(R"(## P

- Strong circle: 3 rounds, 30 s work, 15 s rest, 1 min between rounds
  - cue: breathe
  - at: floor strip
  - note: music on
  - Star jumps
    - cue: soft knees
    - easier: step out
  - Plank or knee plank: 20 s
    - Count aloud
    - without mat: Wall plank: 20 s
  - Coach: watch the beat
  - ![the circle](circle.png)
  - Rest
  - uses: mat

  Keep the order.
- Dish hold: 3
)") == R"(drill Strong circle | circuit 3 rounds, work 30 s, rest 15 s, between 1 min
  at floor strip
  cue breathe
  uses mat ()
  paragraph music on
  paragraph for coach watch the beat
  picture the circle <circle.png>
  paragraph Keep the order.
  drill Star jumps
    cue soft knees
    easier step out
  drill Plank or knee plank | 20 s
    choice Plank
    choice knee plank
    without mat: Wall plank
    item Count aloud
  drill Rest
drill Dish hold | 3 reps
)");
}

TEST_CASE("rounds need no name and no time of work") {
  CHECK(read_body_text("## P\n\n- 3 rounds of:\n  - Star jumps: 10\n  1. Plank: 20 s\n") ==
        "drill 3 rounds | circuit 3 rounds\n  drill Star jumps | 10 reps\n  drill Plank | 20 s\n");
  CHECK(read_body_text("## P\n\n- Legs: 2 rounds, 1 min between rounds\n  - Squats: 10\n") ==
        "drill Legs | circuit 2 rounds, between 1 min\n  drill Squats | 10 reps\n");
}

TEST_CASE("what may be a dose is a circuit only above stations, or by its name") {
  CHECK(read_body_text("## P\n\n- Jog: 3 rounds of 30 s\n  - Keep smiling\n") ==
        "drill Jog | 3 sets of 30 s\n  item Keep smiling\n");
  CHECK(read_body_text("## P\n\n- Hall: 3 rounds of 30 s\n  - Star jumps\n  - Plank\n") ==
        "drill Hall | circuit 3 rounds, work 30 s\n  drill Star jumps\n  drill Plank\n");
  CHECK(read_body_text("## P\n\n- Hall: 3 rounds of 30 s\n  - Plank: 10 s\n") ==
        "drill Hall | circuit 3 rounds, work 30 s\n  drill Plank | 10 s\n");
  CHECK(read_body_text("## P\n\n- Leg circuit: 3 rounds of 30 s\n  - Plank\n") ==
        "drill Leg circuit | circuit 3 rounds, work 30 s\n  drill Plank\n");
}

TEST_CASE("a link among stations is kept") {
  CHECK(read_body_text("## P\n\n- Circuit: 3 rounds, 9 s work, 9 s rest\n  - Plank\n"
                       "  - [Dish hold](../drills/dish-hold.md)\n  - Last\n") ==
        "drill Circuit | circuit 3 rounds, work 9 s, rest 9 s\n"
        "  drill Plank\n  drill Dish hold\n  drill Last\n");
  CHECK(read_body_text("## P\n\n- Circuit: 3 rounds, 9 s work, 9 s rest\n  - Plank\n"
                       "  - [Cool-down](../parts/cool-down.md)\n") ==
        "drill Circuit | circuit 3 rounds, work 9 s, rest 9 s\n  drill Plank\n"
        "link ../parts/cool-down.md\n"
        "plan.md:9:5: error: a shared part cannot stand in a circuit [bad-value]; move the link to "
        "the left, so that it stands beside the circuit, or list the drills of the part here\n");
}

TEST_CASE("rounds need not be called rounds where the line is a circuit's") {
  for (const char* line : {"Circuit: 3", "Circuit: 3x", "Circuit: x3", "Circuit: 3 times",
                           "Circuit: three times", "Circuit: 3 sets", "Circuit: 3 goes",
                           "Circuit: repeat 3 times", "Circuit: 3 x", "Circuit 3x", "Circuit 3x:",
                           "Circuit, 3 times", "Circuit (3 rounds)", "Circuit – 3 goes"}) {
    INFO(line);
    CHECK(read_body_text(fmt::format("## P\n\n- {}\n  - Hops: 5\n  - Plank: 9 s\n", line)) ==
          "drill Circuit | circuit 3 rounds\n  drill Hops | 5 reps\n  drill Plank | 9 s\n");
  }
  for (const char* line :
       {"Circuit: 3, 30 s work, 15 s rest", "Circuit: 3x, 30 s on, 15 s off",
        "Circuit: 3 x 30 s, rest 15 s", "Circuit: 30 s work, 15 s rest, 3",
        "Circuit: 3 sets, 30 s work, 15 s rest", "Circuit: 3 x 30 s on / 15 s off"}) {
    INFO(line);
    CHECK(read_body_text(fmt::format("## P\n\n- {}\n  - Hops\n  - Plank\n", line)) ==
          "drill Circuit | circuit 3 rounds, work 30 s, rest 15 s\n  drill Hops\n"
          "  drill Plank\n");
  }
  // Rounds in the name: it stays as it is written.
  for (const char* name : {"Circuit x 3", "Circuit (3 rounds)", "3 round leg circuit"}) {
    INFO(name);
    CHECK(read_body_text(fmt::format("## P\n\n- {}: 30s/15s\n  - Hops\n  - Plank\n", name)) ==
          fmt::format("drill {} | circuit 3 rounds, work 30 s, rest 15 s\n  drill Hops\n"
                      "  drill Plank\n",
                      name));
  }
  CHECK(read_body_text("## P\n\n- Circuit 2: 3 rounds\n  - Hops: 5\n") ==
        "drill Circuit 2 | circuit 3 rounds\n  drill Hops | 5 reps\n");
  CHECK(read_body_text("## P\n\n- Circuit: 3 x 2 min\n") == "drill Circuit | 3 sets of 2 min\n");
  CHECK(read_body_text("## P\n\n- Beam walk: 3 times\n  - eyes up\n") ==
        "drill Beam walk | 3 reps\n  item eyes up\n");
}

struct Slip {
  const char* written;
  const char* read;
};

TEST_CASE("slips in a circuit are named, and its stations stay stations") {
  const Slip cases[] = {
      {"- Circuit: 3 rounds, 30 s work\n\nRest.\n\n- Star jumps\n",
       "drill Circuit | ?\n  item 3 rounds, 30 s work\nparagraph Rest.\ndrill Star jumps\n"
       "plan.md:7:3: error: this circuit has no stations [bad-value]; list them below it, each "
       "with a dash and indented by two spaces: `  - Star jumps`\n"},
      {"- Circuit: 3 rounds, 30 s work\n- Star jumps\n- Plank\n- Dish: 3\n",
       "drill Circuit | circuit 3 rounds, work 30 s\n  drill Star jumps\n  drill Plank\n"
       "drill Dish | 3 reps\n"
       "plan.md:7:3: error: the stations of this circuit stand beside it, not below it "
       "[bad-value]; indent the lines of its stations by two spaces\n"},
      {"- Outer circuit: 3 rounds, 9 s work, 5 s rest\n  - Hops\n  - Circuit: 2 rounds, 8 s work\n"
       "    - Plank\n    - cue: flat back\n    - Squats\n  - Rows\n",
       "drill Outer circuit | circuit 3 rounds, work 9 s, rest 5 s\n"
       "  item Circuit: 2 rounds, 8 s work\n  item flat back\n"
       "  drill Hops\n  drill Plank\n  drill Squats\n  drill Rows\n"
       "plan.md:9:5: error: a circuit cannot stand in a circuit [bad-value]; move it to the left, "
       "so that it stands beside this one, or list its stations here and take its line out\n"},
      {"- Circuit: 3 rounds, 30 s wrk\n  - Hops\n  - Plank\n",
       "drill Circuit | ? | circuit 1 rounds\n  item 3 rounds, 30 s wrk\n"
       "  drill Hops | ?\n  drill Plank | ?\n"
       "plan.md:7:27: error: ‘wrk’ cannot be read as a part of a circuit [unreadable-dose]; write "
       "the circuit as one of: `3 rounds, 30 s work, 15 s rest`, `3 rounds of 30 s on / 15 s off, "
       "1 min between rounds`, or `3 rounds` and a dose at each station\n"},
      {"- Circuit, 3 rounds, 30 s work\n  - Hops\n  - Plank\n",
       "drill Circuit | circuit 3 rounds, work 30 s\n  drill Hops\n  drill Plank\n"},
      {"- Leg circuit:\n  - Hops: 3\n  - Plank: 5 s\n",
       "drill Leg circuit | ? | circuit 1 rounds\n  drill Hops | 3 reps\n  drill Plank | 5 s\n"
       "plan.md:7:3: error: this circuit does not say how many rounds [unreadable-dose]; write "
       "`Leg circuit: 3 rounds`, or with one time for all stations `Leg circuit: 3 rounds, 30 s "
       "work, 15 s rest`\n"},
      {"- Circuit: 3 times\n\nRest.\n",
       "drill Circuit | ?\n  item 3 times\nparagraph Rest.\n"
       "plan.md:7:3: error: this circuit has no stations [bad-value]; list them below it, each "
       "with a dash and indented by two spaces: `  - Star jumps`\n"},
      {"- Circuit: 3 rounds, 30 s work\n  Hops\n  Plank: 20 s\n",
       "drill Circuit | circuit 3 rounds, work 30 s\n  drill Hops\n  drill Plank | 20 s\n"
       "plan.md:8:3: error: this station has no dash before it, so it runs on from the circuit "
       "[bad-value]; write `- Hops`, indented by two spaces below ‘Circuit’\n"
       "plan.md:9:3: error: this drill has no dash before it, so it runs on from the line above "
       "[bad-value]; write `- Plank: 20 s`, with a dash and a space before it\n"},
      {"- Circuit: 3 rounds, 30 s work\n  -Hops\n  -Plank: 20 s\n",
       "drill Circuit | circuit 3 rounds, work 30 s\n  drill Hops\n  drill Plank | 20 s\n"
       "plan.md:8:3: error: this line has no space behind its dash [bad-value]; write `- Hops`, "
       "with a dash and a plain space before it\n"
       "plan.md:9:3: error: this line has no space behind its dash [bad-value]; write `- Plank: "
       "20 s`, with a dash and a plain space before it\n"},
      {"Circuit: 3 rounds, 30 s work, 15 s rest\n\n- Hops\n- Plank\n",
       "drill Circuit | circuit 3 rounds, work 30 s, rest 15 s\n  drill Hops\n  drill Plank\n"
       "plan.md:7:1: error: this reads like a circuit, but is not a list item [bad-value]; write "
       "`- Circuit: 3 rounds, 30 s work, 15 s rest`, and its stations below it, indented by two "
       "spaces\n"},
      {"Circuit: 3 rounds, 30 s work, 15 s rest\n\nHops and more.\n",
       "drill Circuit | ?\nparagraph Hops and more.\n"
       "plan.md:7:1: error: this reads like a circuit, but is not a list item [bad-value]; write "
       "`- Circuit: 3 rounds, 30 s work, 15 s rest`, and its stations below it, indented by two "
       "spaces\n"},
      {"- Circuit: 3 rounds, 30 s work\n  - Hops\n  - esaier: step\n  - Put away: mats\n",
       "drill Circuit | circuit 3 rounds, work 30 s\n  item esaier: step\n  item Put away: mats\n"
       "  drill Hops\n"
       "plan.md:9:5: error: ‘esaier’ is not something a drill has [unknown-key]; did you mean "
       "`easier`?\n"
       "plan.md:10:5: error: a line that moves kit cannot stand among the stations of a circuit "
       "[bad-value]; move it to the left, so that it stands before or after the circuit\n"},
  };
  for (const Slip& slip : cases) {
    INFO(slip.written);
    CHECK(read_body_text(std::string("## P\n\n") + slip.written) == slip.read);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
