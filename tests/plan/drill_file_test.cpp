// One file of the drill library: front matter, body, and what is said about both. Codes of the
// Adult Compendium of Physical Activities are five digits (Ainsworth et al., 2011); the rest is the
// language's own.
#include <catch2/catch.hpp>

#include "plan/library_reading.h"
#include "plan/mistake.h"

namespace chalkleaf::plan {
namespace {

std::string said_of_drill_file(const std::string& text,
                               const std::string& path = "drills/dish-hold.md") {
  return messages(read_drill_text(text, path).found);
}

constexpr const char* kWhole = R"(---
title: Dish hold
also: hollow hold, dish
kind: shape
curve: dish
sides: each
level: 2
loads: {wrists: 2, back: 1}
stretches: [hamstrings, calves]
needs: towel, held tight
at: beam
spotter: yes
home: no
pace: 3 s
mets: "02024"
figure: dish
plain: Lie on your back and lift shoulders and legs.
---

# Dish hold

- cue: lower back pressed into the floor
- easier: knees bent, hands on thighs
- easier: one foot on the floor
- harder: arms by the ears
- uses: line
- without towel: Dish hold, palms pressed together: 2 x 20 s
  - easier: knees bent

Most children hold their breath here.

> **Safety.** Stop when the back lifts.
)";

TEST_CASE("a drill file gives every value, each with its place") {
  const LibraryDrill drill = read_drill_text(kWhole);
  CHECK(messages(drill.found).empty());
  CHECK(drill.name.text == "Dish hold");
  CHECK(drill.name.span.text() == "Dish hold");
  CHECK(drill.name_known);
  REQUIRE(drill.also.size() == 2);
  CHECK(drill.also[0].text == "hollow hold");
  CHECK(drill.also[1].span.text() == "dish");
  CHECK(drill.kind.value == DrillKind::kShape);
  CHECK(drill.kind.span.text() == "shape");
  CHECK(drill.curve.text == "dish");
  CHECK(drill.one_sided.value().value);
  CHECK(drill.level.value().value == 2);
  REQUIRE(drill.loads.size() == 2);
  CHECK(drill.loads[0].first.text == "wrists");
  CHECK(drill.loads[0].second.value == 2);
  CHECK(drill.loads[1].first.text == "back");
  REQUIRE(drill.stretches.size() == 2);
  CHECK(drill.stretches[1].text == "calves");
  REQUIRE(drill.needs.size() == 2);
  CHECK(drill.needs[0].kit.text == "towel");
  CHECK(drill.needs[0].kit.span.text() == "towel");
  CHECK(drill.needs[0].how.text == "held tight");
  CHECK(drill.needs[0].how.span.text() == "held tight");
  CHECK(drill.needs[1].kit.text == "line");
  CHECK(drill.at.text == "beam");
  CHECK(drill.spotter.value().value);
  CHECK_FALSE(drill.home.value().value);
  CHECK(drill.pace.value().value == Duration::seconds(3));
  CHECK(drill.mets.text == "02024");
  CHECK(drill.figure.text == "dish");
  CHECK(drill.plain.text == "Lie on your back and lift shoulders and legs.");
  REQUIRE(drill.cues.size() == 1);
  CHECK(drill.cues[0].text == "lower back pressed into the floor");
  REQUIRE(drill.easier.size() == 2);
  CHECK(drill.easier[1].text == "one foot on the floor");
  REQUIRE(drill.harder.size() == 1);
  REQUIRE(drill.substitutes.size() == 1);
  CHECK(drill.substitutes[0].kit.text == "towel");
  CHECK(drill.substitutes[0].easier.at(0).text == "knees bent");
  REQUIRE(drill.notes.size() == 1);
  CHECK(drill.notes[0].words.text == "Most children hold their breath here.");
  REQUIRE(drill.safety.size() == 1);
  CHECK(drill.safety[0].words.text == "Stop when the back lifts.");
}

TEST_CASE("a drill without a title is called by its heading or its file") {
  CHECK(read_drill_text("# Dish hold\n\n- cue: a\n", "drills/x.md").name.text == "Dish hold");
  CHECK(read_drill_text("- cue: a\n", "drills/two-foot_landing.md").name.text ==
        "Two foot landing");
  CHECK(said_of_drill_file("").empty());
  CHECK(said_of_drill_file("---\nkind: game\n---\n").empty());
}

TEST_CASE("every kind has its name, and back") {
  CHECK(kind_names().size() == 17);
  for (const std::string& name : kind_names()) {
    INFO(name);
    const auto kind = kind_of_name(name);
    REQUIRE(kind);
    CHECK(kind_name(*kind) == name);
    CHECK(read_drill_text("---\nkind: " + name + "\n---\n").kind.value == *kind);
  }
  CHECK(kind_name(DrillKind::kUnknown).empty());
  CHECK_FALSE(kind_of_name("").has_value());
}

TEST_CASE("what is wrong in a drill's front matter is said with what to write") {
  const Mistake cases[] = {
      {"kynd: shape\nlevel: 11\nlevel: 2\n",
       "d.md:2:1: error: ‘kynd’ is not a key of a drill's front matter [unknown-key]; did you mean "
       "`kind`?\n"
       "d.md:3:8: error: ‘11’ is not a number that makes sense here [bad-value]; write a whole "
       "number from 1 to 10\n"
       "d.md:4:1: error: ‘level’ is written twice [duplicate-key]; keep one of the two lines\n"},
      {"kind: strenght\n",
       "d.md:2:7: error: ‘strenght’ is not a kind of drill [bad-value]; did you mean "
       "`strength`?\n"},
      {"kind: tumbling\n",
       "d.md:2:7: error: ‘tumbling’ is not a kind of drill [bad-value]; write `raise`, `mobilise`, "
       "`activate`, `strength`, `shape`, `balance`, `support`, `hang`, `swing`, `jump`, "
       "`landing`, `roll`, `turn`, `skill`, `stretch`, `game` or `rest`\n"},
      {"curve: round\n",
       "d.md:2:8: error: ‘round’ is not a curve of the body [bad-value]; write `dish` or `arch`\n"},
      {"sides: left\n",
       "d.md:2:8: error: ‘left’ is not how a drill takes its sides [bad-value]; write `each` or "
       "`both`\n"},
      {"loads: {wrist: 1, knees: 4}\n",
       "d.md:2:9: error: ‘wrist’ is not a key of the loads [unknown-key]; did you mean `wrists`?\n"
       "d.md:2:26: error: ‘4’ is not a number that makes sense here [bad-value]; write a whole "
       "number from 1 to 3\n"},
      {"loads: wrists\n",
       "d.md:2:8: error: ‘loads’ must be regions of the body, each with its load [bad-value]; "
       "write "
       "it as `loads: {wrists: 2, shoulders: 1}`; 1 is light, 3 heavy; or `loads: none`\n"},
      {"spotter: sometimes\n",
       "d.md:2:10: error: ‘sometimes’ is neither yes nor no [bad-value]; write `yes` or `no`\n"},
      {"spotter: yes\nhome: yes\n",
       "d.md:3:7: error: a drill with a spotter is never for home [bad-value]; take one of the two "
       "lines out\n"},
      {"pace: 3\n",
       "d.md:2:7: error: ‘3’ has no unit [bad-value]; say what it is: `3 s` or `3 min`\n"},
      {"mets: 3.8\n",
       "d.md:2:7: error: ‘3.8’ is not a code of the compendium [bad-value]; write its five digits "
       "in quotation marks: `\"02024\"`\n"},
      {"place: gym\n",
       "d.md:2:1: error: this is a session, not a drill of the library [bad-value]; move the file "
       "to the folder ‘sessions’\n"},
      {"needs: {towel: 1}\n",
       "d.md:2:8: error: ‘needs’ must be one value [bad-value]; write it on one line: `needs: "
       "…`\n"},
  };
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(said_of_drill_file(std::string("---\n") + c.written + "---\n", "d.md") == c.messages);
  }
}

TEST_CASE("a spotter and `home: yes` is read as never at home") {
  CHECK_FALSE(read_drill_text("---\nspotter: yes\nhome: yes\n---\n").home.value().value);
}

TEST_CASE("what is wrong in a drill's body is said") {
  CHECK(said_of_drill_file("cue: push tall\nand stay\n\nSome words.\n", "d.md") ==
        "d.md:1:1: error: ‘cue’ has no dash before it [bad-value]; write `- cue: …`\n");
  const LibraryDrill drill = read_drill_text("cue: push tall\n\nSome words.\n");
  CHECK(drill.cues.at(0).text == "push tall");
  CHECK(drill.notes.at(0).words.text == "Some words.");
  CHECK(said_of_drill_file("- esier: knees bent\n", "d.md") ==
        "d.md:1:3: error: ‘esier’ is not something a drill has [unknown-key]; did you mean "
        "`easier`?\n");
  CHECK(said_of_drill_file("---\nat: beam\n---\n- at: bar\n", "d.md") ==
        "d.md:4:7: error: this drill says twice where it is done [bad-value]; keep one of the two: "
        "`at` in the front matter, or the line here\n");
  std::string many;
  for (int i = 0; i < 101; ++i) many += "- cue: a\n";
  CHECK(said_of_drill_file(many, "d.md") ==
        "d.md:1:1: error: this drill has more than 100 lines [bad-value]; keep what fits a sheet, "
        "and put the rest into drills of their own\n");
  CHECK(read_drill_text(many).cues.empty());
}

TEST_CASE("a drill whose names may be lost says so") {
  CHECK(read_drill_text("---\ntitle: A\nlevle: 2\n---\n").name_known);
  CHECK(read_drill_text("---\ntitle: A\nlevel: 99\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\ntilte: A\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\ntitle: A\nallso: b\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\nname: A\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\ntitle: [A]\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\ntitle: A\nalso: {b: c}\n---\n").name_known);
  CHECK_FALSE(read_drill_text("---\ntitle: \"A\n---\n").name_known);
}

}  // namespace
}  // namespace chalkleaf::plan
