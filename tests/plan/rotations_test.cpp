// Which titles and lines are a rotation's.
#include "plan/rotations.h"

#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;

TEST_CASE("rotations: titles and lines of the notation") {
  CHECK(plan::is_rotation("Rotations (4 x 28 min)"));
  CHECK(plan::is_rotation("Stations (5 x 35 min, 5 min to move)"));
  CHECK(plan::is_rotation("Bases (3 \u00D7 10 min, 1 min to change)"));
  CHECK(plan::is_rotation("Carousel"));
  CHECK_FALSE(plan::is_rotation("Bars"));
  CHECK_FALSE(plan::is_rotation("Strength (2 x 10 min)"));
  CHECK_FALSE(plan::is_rotation("Stations (20 min)"));
  for (const char* line : {"groups: A 4, B 4", "coaches: Jo vault", "break after 2: 10 min, water",
                           "must: D not first on vault", "wish: bars before floor", "rest: 1",
                           "hall 1: vault, bars"}) {
    CAPTURE(line);
    CHECK(plan::is_rotation_line(line));
  }
  for (const char* line : {"Musty mats: 3", "Groups of 4: 10", "Handstand: 3 x 10 s", "rest"}) {
    CAPTURE(line);
    CHECK_FALSE(plan::is_rotation_line(line));
  }
}

TEST_CASE("rotations: the lines are kept as they stand, and stations are parts beside each other") {
  Diagnostics found;
  const SourcePtr source =
      source::load_text("plan.md",
                        "---\ntitle: T\nplace: gym\n---\n\n## Rotations (2 x 10 min)\n\n"
                        "- groups: A 4, B 4\n\n### Vault\n\n- Squat on: 5 goes\n\n### Bars\n\n"
                        "- Casts: 3 x 5\n\n## Cool-down\n\n- Walk: 2 min\n\n### Lie down\n\n"
                        "- groups: 4\n",
                        found);
  const plan::Session session = plan::read_session(source::read_document(source, found), {}, found);
  REQUIRE(session.parts.size() == 4);
  CHECK(plan::drills_of(session.parts[0]).empty());
  REQUIRE(session.parts[0].steps.size() == 1);
  CHECK(std::get<plan::Note>(session.parts[0].steps[0]).words.text == "groups: A 4, B 4");
  CHECK(session.parts[1].title.text == "Vault");
  CHECK(session.parts[1].station_of == 0);
  CHECK(session.parts[2].station_of == 0);
  CHECK_FALSE(session.parts[3].station_of);
  CHECK(plan::drills_of(session.parts[3]).size() == 2);  // outside of a rotation it is a drill
}
