// Drills as text: src/cli/drill_text.h.
#include "cli/drill_text.h"

#include <catch2/catch.hpp>

#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;
using namespace chalkleaf::cli;

namespace {

plan::LibraryDrill drill_of(const std::string& text) {
  Diagnostics found;
  const SourcePtr source = source::load_text("shelf/dish-hold.md", text, found);
  plan::LibraryDrill out = plan::read_drill(source::read_document(source, found), found);
  CHECK(found.all().empty());
  return out;
}

const char* const kDish =
    "---\ntitle: Dish hold\nalso: hollow hold, hollow\nkind: shape\nlevel: 2\ncurve: dish\n"
    "loads: {back: 1}\ntrains: trunk, hips\neffort: 5\nlongest: 20 s\nfigure: dish\n"
    "plain: A curved shape.\nneeds: towel, under the head\n---\n\n"
    "- cue: back flat\n- cue: chin in\n- cue: breathe\n- easier: knees bent\n- easier: one leg\n"
    "- harder: arms up\n- without towel: Dish hold\n  - easier: head down\n- coach: Look "
    "along.\n\n> **Safety.** Stop when the back lifts.\n";

}  // namespace

TEST_CASE("one drill: what a plan takes from it, the rest of it, and what is known of it") {
  CHECK(drill_text(drill_of(kDish)) ==
        "Dish hold\n"
        "A curved shape.\n"
        "\n"
        "A plan that names it gets:\n"
        "  - cue: back flat\n"
        "  - cue: chin in\n"
        "  - easier: knees bent\n"
        "  - harder: arms up\n"
        "  - uses: towel, under the head\n"
        "  - without towel: Dish hold\n"
        "    - easier: head down\n"
        "  - figure: dish\n"
        "  - coach: Look along.\n"
        "> Safety. Stop when the back lifts.\n"
        "\n"
        "And there are:\n"
        "  - cue: breathe\n"
        "  - easier: one leg\n"
        "\n"
        "About it:\n"
        "  also called hollow hold, hollow\n"
        "  kind        shape, dish\n"
        "  level       2\n"
        "  place       gym and home\n"
        "  trains      trunk, hips\n"
        "  loads       back light\n"
        "  effort      5 of 10\n"
        "  time        held for 20 s at most\n"
        "  stands in   shelf/dish-hold.md\n");
}

TEST_CASE("a list of drills stands in columns") {
  const plan::LibraryDrill dish = drill_of(kDish);
  const plan::LibraryDrill handstand =
      drill_of("---\ntitle: Handstand\nkind: support\nlevel: 5\nspotter: yes\n---\n");
  const plan::LibraryDrill bare = drill_of("---\ntitle: Crab\nhome: no\n---\n");
  CHECK(drill_list({&bare, &dish, &handstand}) ==
        "Crab                -         gym\n"
        "Dish hold  shape    level 2   gym and home\n"
        "Handstand  support  level 5   gym, with a spotter\n");
}
