// What a plan's line takes from the library, and what it keeps of its own.
#include <catch2/catch.hpp>

#include "plan/library_reading.h"

namespace chalkleaf::plan {
namespace {

constexpr const char* kDish = R"(---
title: Dish hold
needs: towel, held tight
at: floor strip
---

- cue: back down
- cue: look at your toes
- easier: knees bent
- harder: arms by the ears
- record: seconds
- without towel: Dish hold, palms together: 2 x 20 s

Most hold their breath.

> Stop when the back lifts.
)";

struct Inherited {
  ReadBook read;
  ReadPlan plan;
  std::string said;
  const Part& part(std::size_t i = 0) const { return plan.session.parts.at(i); }
  const Drill& drill(std::size_t i = 0) const { return *drills_of(part()).at(i); }
};
Inherited inherited(const std::vector<std::string>& files, const std::string& body) {
  Inherited out{book_of(files), read_plan(plan_with(body)), {}};
  inherit(out.plan.session, out.read.book, out.plan.diagnostics);
  out.said = messages(out.plan.diagnostics);
  return out;
}

std::string all(const std::vector<Words>& words) {
  std::string out;
  for (const Words& one : words) out += one.text + "; ";
  return out;
}

TEST_CASE("the figures of a ladder come with the drill's own figure, and with no other") {
  const char* const drill =
      "---\ntitle: Dish\nfigure: dish\nfigure-easier: tuck dish\nfigure-harder: long dish\n---\n\n"
      "- easier: knees bent\n- harder: arms up\n";
  const Inherited bare = inherited({drill}, "## S\n\n- Dish: 10\n");
  CHECK(bare.drill().figure_easier.text == "tuck dish");
  CHECK(bare.drill().figure_harder.text == "long dish");
  const Inherited own_rung = inherited({drill}, "## S\n\n- Dish: 10\n  - easier: one foot down\n");
  CHECK(own_rung.drill().figure_easier.empty());
  CHECK(own_rung.drill().figure_harder.text == "long dish");
  const Inherited own_figure = inherited({drill}, "## S\n\n- Dish: 10\n  - figure: ours\n");
  CHECK(own_figure.drill().figures.at(0).text == "ours");
  CHECK(own_figure.drill().figure_easier.empty());
  CHECK(own_figure.drill().figure_harder.empty());
}

TEST_CASE("a bare line takes everything") {
  const Inherited got = inherited({kDish}, "## S\n\n- Dish holds, slowly: 2 x 20 s\n");
  CHECK(got.said.empty());
  const Drill& drill = got.drill();
  CHECK(drill.known == &got.read.book.all()[0].get());
  CHECK(drill.name.text == "Dish holds, slowly");
  CHECK(all(drill.cues) == "back down; look at your toes; ");
  CHECK(all(drill.easier) == "knees bent; ");
  CHECK(all(drill.harder) == "arms by the ears; ");
  REQUIRE(drill.uses.size() == 1);
  CHECK(drill.uses[0].kit.text == "towel");
  CHECK(drill.at.text == "floor strip");
  CHECK(drill.record.text == "seconds");
  REQUIRE(drill.substitutes.size() == 1);
  CHECK(drill.substitutes[0].name.text == "Dish hold, palms together");
  REQUIRE(drill.notes.size() == 1);
  CHECK(drill.notes[0].words.text == "Most hold their breath.");
  REQUIRE(got.part().safety.size() == 1);
  CHECK(got.part().safety[0].words.text == "Stop when the back lifts.");
  CHECK(got.plan.session.sources.size() == 2);
}

TEST_CASE("of a long ladder a line takes the nearest rung each way, and two cues") {
  const Inherited got = inherited({R"(---
title: Dish hold
---

- cue: one
- cue: two
- cue: three
- easier: nearest
- easier: easiest
- harder: near
- harder: far
)"},
                                  "## S\n\n- Dish hold: 2 x 20 s\n");
  CHECK(all(got.drill().cues) == "one; two; ");
  CHECK(all(got.drill().easier) == "nearest; ");
  CHECK(all(got.drill().harder) == "near; ");
}

TEST_CASE("what a line says replaces what the library has, list by list") {
  const Inherited got = inherited({kDish}, R"(## S

- Dish hold: 2 x 20 s
  - cue: be a boat
  - uses: rope
  - at: beam
  - record: breaths
  - note: Ask who can talk.
)");
  const Drill& drill = got.drill();
  CHECK(all(drill.cues) == "be a boat; ");
  CHECK(all(drill.easier) == "knees bent; ");
  CHECK(drill.uses.size() == 1);
  CHECK(drill.uses[0].kit.text == "rope");
  CHECK(drill.at.text == "beam");
  CHECK(drill.record.text == "breaths");
  CHECK(drill.notes.size() == 1);
  CHECK(drill.substitutes.empty());  // there is no towel to be without
  CHECK(got.part().safety.size() == 1);
}

TEST_CASE("substitutes are taken one by one") {
  const std::string file =
      "---\ntitle: A\nneeds: [mat, towel]\n---\n- without mat: B: 3\n- without towel: C: 3\n";
  const Inherited got = inherited({file}, "## S\n\n- A: 3\n  - without Mat: D: 3\n");
  REQUIRE(got.drill().substitutes.size() == 2);
  CHECK(got.drill().substitutes[0].name.text == "D");
  CHECK(got.drill().substitutes[1].name.text == "C");
  const Inherited own = inherited({file}, "## S\n\n- A: 3\n  - uses: towel, wet\n");
  REQUIRE(own.drill().substitutes.size() == 1);
  CHECK(own.drill().substitutes[0].name.text == "C");
}

TEST_CASE("safety is said once in a part, and not where the session says it") {
  const std::string same = "---\ntitle: B\n---\n> Stop when the back lifts.\n";
  CHECK(inherited({kDish, same}, "## S\n\n- Dish hold: 3\n- B: 3\n- B: 4\n").part().safety.size() ==
        1);
  CHECK(inherited({kDish}, "> Stop when the back lifts.\n\n## S\n\n- Dish hold: 3\n")
            .part()
            .safety.empty());
  const Inherited two = inherited({kDish}, "## S\n\n- Dish hold: 3\n\n## T\n\n- Dish hold: 3\n");
  CHECK(two.part(0).safety.size() == 1);
  CHECK(two.part(1).safety.size() == 1);
}

TEST_CASE("the safety of choices, substitutes and moves reaches the sheet, their cues do not") {
  for (const char* line :
       {"- Dish hold or Rock: 3 goes\n", "- Rock or Dish hold on a mat: 3 goes\n",
        "- Rock: 3\n  - without mat: Dish hold: 3\n", "- Mix: 2 x (10 rocks, 10 dish holds)\n",
        "- Circle: 2 rounds, 30 s work, 10 s rest\n  - Dish hold\n  - Rock\n"}) {
    INFO(line);
    const Inherited got = inherited({kDish}, std::string("## S\n\n") + line);
    CHECK(got.said.empty());
    CHECK(got.part().safety.size() == 1);
    CHECK(got.drill().cues.empty());
  }
}

TEST_CASE("a station of a circuit inherits like any drill") {
  const Inherited got = inherited(
      {kDish}, "## S\n\n- Circle: 2 rounds, 30 s work, 10 s rest\n  - Rock\n  - Dish hold\n");
  REQUIRE(got.drill().stations.size() == 2);
  CHECK(all(got.drill().stations[1].cues) == "back down; look at your toes; ");
}

TEST_CASE("a plan is told what is wrong in the files of the drills it uses, and in no other") {
  const std::vector<std::string> files{"---\ntitle: A\nlevel: 99\n---\n", "---\ntitle: B\n---\n"};
  CHECK(inherited(files, "## S\n\n- B: 3\n- C: 3\n").said.empty());
  CHECK(inherited(files, "## S\n\n- B: 3\n- A: 3\n- A: 4\n").said ==
        "drills/0.md:3:8: error: ‘99’ is not a number that makes sense here [bad-value]; write a "
        "whole number from 1 to 10\n");
}

TEST_CASE("a drill nobody knows may be the one whose name cannot be read") {
  const std::vector<std::string> files{"---\ntilte: Handstand\nspotter: yes\n---\n",
                                       "---\ntitle: B\n---\n"};
  CHECK(inherited(files, "## S\n\n- B: 3\n").said.empty());
  CHECK(inherited(files, "## S\n\n- Handstand: 3\n").said ==
        "drills/0.md:2:1: error: ‘tilte’ is not a key of a drill's front matter [unknown-key]; did "
        "you mean `title`?\n");
}

TEST_CASE("a plan cannot be blown up by what it inherits") {
  std::string file = "---\ntitle: A\n---\n";
  for (int i = 0; i < 90; ++i) file += "- note: a\n";
  std::string body = "## S\n\n";
  for (int i = 0; i < 40; ++i) body += "- A: 3\n";
  const Inherited got = inherited({file}, body);
  CHECK(got.said ==
        "plan.md:29:3: error: with what its drills take from the library this plan is too long "
        "[bad-value]; split it into several plans, or shorten the drills it uses\n");
  CHECK(got.drill(39).notes.empty());
}

}  // namespace
}  // namespace chalkleaf::plan
