// Drill lines and what stands below them.
#include <catch2/catch.hpp>

#include "plan/mended_line.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

std::string words(const std::vector<Words>& all) {
  std::string out;
  for (const Words& w : all) out += fmt::format("[{}]", w.text);
  return out;
}
std::string notes(const std::vector<Note>& all) {
  std::string out;
  for (const Note& n : all) out += fmt::format("[{}]", n.words.text);
  return out;
}

TEST_CASE("a drill has a name, a dose and everything below it") {
  const ReadPlan plan = read_plan(plan_with(R"(## Bar shapes

- **Dish** hold: 2 x 20 s, rest 20 s
  - Cue: lower back pressed into the floor
  - cue: chin in
  - easier: knees bent
  - harder: arms by the ears
  - uses: towel, held tight, between the hands
  - uses: mat
  - without towel: Dish hold, palms pressed together: 2 x 10 s
    - easier: one foot on the floor
    - cue: press
    - note: count aloud
  - without mat: lie on a rug
  - note: last one today
  - Keep smiling

  A last word.
- Line tag
)"));
  CHECK(messages(plan.diagnostics).empty());
  const auto drills = drills_of(plan.session.parts.at(0));
  REQUIRE(drills.size() == 2);
  const Drill& d = *drills[0];
  CHECK(d.name.text == "Dish hold");
  CHECK(d.name.span.text() == "Dish** hold");
  CHECK(described(d.dose.value()) == "2 sets of 20 s, rest 20 s");
  CHECK(words(d.cues) == "[lower back pressed into the floor][chin in]");
  CHECK(d.cues[0].span.text() == "lower back pressed into the floor");
  CHECK(words(d.easier) == "[knees bent]");
  CHECK(words(d.harder) == "[arms by the ears]");
  REQUIRE(d.uses.size() == 2);
  CHECK(d.uses[0].kit.text == "towel");
  CHECK(d.uses[0].how.text == "held tight, between the hands");
  CHECK(d.uses[1].how.empty());
  REQUIRE(d.substitutes.size() == 2);
  const Substitute& towel = d.substitutes[0];
  CHECK(towel.kit.text == "towel");
  CHECK(towel.kit.span.text() == "towel");
  CHECK(towel.name.text == "Dish hold, palms pressed together");
  CHECK(described(towel.dose.value()) == "2 sets of 10 s");
  CHECK(words(towel.easier) == "[one foot on the floor]");
  CHECK(words(towel.cues) == "[press]");
  CHECK(notes(towel.notes) == "[count aloud]");
  CHECK(d.substitutes[1].name.text == "lie on a rug");
  CHECK(!d.substitutes[1].dose);
  CHECK(notes(d.notes) == "[last one today][Keep smiling][A last word.]");
  CHECK(d.span.text().substr(0, 10) == "- **Dish**");
  CHECK(drills[1]->name.text == "Line tag");
  CHECK(!drills[1]->dose);
  CHECK(!drills[1]->dose_unreadable);
}

TEST_CASE("name and dose part at the right colon") {
  const auto parted = [](const std::string& line) {
    const ReadPlan plan = read_plan(plan_with("## P\n\n- " + line + "\n"));
    const Drill& d = *drills_of(plan.session.parts.at(0)).at(0);
    return fmt::format("{} | {}", d.name.text,
                       d.dose              ? described(*d.dose)
                       : d.dose_unreadable ? "?"
                                           : "-");
  };
  CHECK(parted("Game: tag: 5 min") == "Game: tag | 5 min");
  CHECK(parted("Beam walk: 12 steps each way: on, back") ==
        "Beam walk | 12 steps each way [on] [back]");
  CHECK(parted("Wall sit: 1:30") == "Wall sit | 1 min 30 s");
  CHECK(parted("Dish hold:") == "Dish hold | -");
  CHECK(parted("Dish hold:2x20s") == "Dish hold | 2 sets of 20 s");
  CHECK(parted("[ ] Dish hold: 3") == "Dish hold | 3 reps");
  CHECK(parted("[Dish hold](../drills/dish.md): 3") == "Dish hold | 3 reps");
  CHECK(parted("3 jumps on 2 feet") == "3 jumps on 2 feet | -");
  CHECK(parted("Count to 10") == "Count to 10 | -");
  CHECK(parted("Dish hold 2 x 20 s") == "Dish hold | ?");
  CHECK(parted("Dish hold — 20 s") == "Dish hold | ?");
  CHECK(parted("Dish hold: two sets of max hold") == "Dish hold | 2 sets of max hold");
  CHECK(parted("Say: ready: max hold") == "Say: ready | max hold");
  CHECK(parted("Watch http://e.org/a: 3") == "Watch http://e.org/a | 3 reps");
}

TEST_CASE("cues may stand in a list below an empty key") {
  const ReadPlan plan =
      read_plan(plan_with("## P\n\n- Dish hold: 3\n  - cue:\n    - belly in\n    - chin in\n"));
  CHECK(messages(plan.diagnostics).empty());
  CHECK(words(drills_of(plan.session.parts[0])[0]->cues) == "[belly in][chin in]");
}

TEST_CASE("what stands in the wrong place still reaches its drill") {
  const ReadPlan plan = read_plan(plan_with(
      "## P\n\n- Dish hold: 3\n- easier: knees bent\n- Arch: 3\n  cue: look down\n  - easier: a\n"
      "    - harder: b\n"));
  const auto drills = drills_of(plan.session.parts[0]);
  REQUIRE(drills.size() == 2);
  CHECK(words(drills[0]->easier) == "[knees bent]");
  CHECK(words(drills[1]->cues) == "[look down]");
  CHECK(words(drills[1]->easier) == "[a]");
  CHECK(words(drills[1]->harder) == "[b]");
  CHECK(plan.diagnostics.error_count() == 3);
}

TEST_CASE("a number that was meant as a dose is put behind a colon") {
  const auto mended = [](const char* name) { return mended_drill_line({name, {}}).value_or("-"); };
  for (const char* name : {"Rows - 10", "Rows – 10", "Rows 10", "Rows; 10", "Rows, 10", "Rows x 10",
                           "Rows ×10", "rows (10", "10 rows", "10 x rows"}) {
    INFO(name);
    CHECK(lower_ascii(mended(name)) == "rows: 10");
  }
  CHECK(mended("10 star jumps") == "Star jumps: 10");
  for (const char* name : {"Count to 10", "3 jumps on 2 feet", "Beam at 2", "Tag", "", "10",
                           "Teams of 4", "Three bears", "Rows 0"}) {
    INFO(name);
    CHECK(mended(name) == "-");
  }
  CHECK(body_messages("## P\n\n- Star jumps x 10\n- Rows ×10 each side\n- Tag x\n") ==
        "plan.md:7:16: error: there is no colon before this dose [unreadable-dose]; put a colon "
        "between the drill and its dose: `Star jumps: 10`\n"
        "plan.md:8:9: error: there is no colon before this dose [unreadable-dose]; put a colon "
        "between the drill and its dose: `Rows: 10 each side`\n");
}

}  // namespace
}  // namespace chalkleaf::plan
