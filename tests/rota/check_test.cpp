// What is said of a rotation: whole messages.
#include "rota/check.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "grids.h"

using namespace chalkleaf;
using rota_test::Text;

namespace {

std::string said_of(const std::string& words) {
  const Text text(words);
  Diagnostics found;
  for (const rota::Rotation& one : text.all()) rota::check(one, found);
  std::string out;
  for (const Diagnostic& one : found.sorted())
    out += render(one, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

const char* const kHead = "## Rotations (3 x 28 min, 2 min to move)\n\n";
const char* const kGrid =
    "| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | A | B | C |\n| 5.30 | C | A | B |\n| 6.00 | B "
    "| C | A |\n";

}  // namespace

TEST_CASE("rota check: a sound grid is left alone") {
  CHECK(said_of(std::string(kHead) + kGrid).empty());
}

TEST_CASE("rota check: one cell, with what it does and what belongs there") {
  CHECK(said_of(std::string(kHead) + "| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | A | B | C "
                                     "|\n| 5.30 | C | A | A |\n| 6.00 | B | C | A |\n") ==
        "plan.md:6:18: warning: A is in two places at once at 17:30, B is nowhere at 17:30 and A "
        "is at beam a second "
        "time at 18:00 [rota-slip]; write ‘B’ here, if that is what was meant\n");
}

TEST_CASE("rota check: the clock") {
  CHECK(said_of(std::string(kHead) + "| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | A | B | C "
                                     "|\n| 5.30 | C | A | B |\n| 5.20 | B | C | A |\n") ==
        "plan.md:7:3: warning: the turn at 17:20 stands below the one at 17:30 [rota-clock]; write "
        "the time at which "
        "this turn begins\n");
  CHECK(said_of("## Rotations (4 x 28 min, 2 min to move)\n\n" + std::string(kGrid)) ==
        "plan.md:1:1: warning: the heading says 4 turns, and the grid has 3 [rota-clock]; add the "
        "turns that are "
        "missing, or correct the heading\n");
  CHECK(said_of("## Rotations, 40 min each\n\n" + std::string(kGrid)) ==
        "plan.md:5:3: warning: the turn at 17:00 has 30 minutes, not 40 [rota-clock]; correct the "
        "clock of the grid, or "
        "the minutes of the heading\n");
}

TEST_CASE("rota check: musts that the grid does not keep, and words nobody can read") {
  CHECK(said_of(std::string(kHead) + "- must: A not first on vault\n\n" + kGrid) ==
        "plan.md:3:9: warning: the grid does not keep this: A is first on vault [rota-rule]; "
        "change the grid, or take "
        "the line out\n");
  const std::string unread =
      said_of(std::string(kHead) + "- must: no grips before tea\n\n" + kGrid);
  CHECK(unread.starts_with(
      "plan.md:3:9: warning: this cannot be read, so nothing looks after it; it is printed as it "
      "stands [rota-rule]; write it as ‘D not first on vault’"));
}

TEST_CASE("rota check: a coach in two places") {
  CHECK(said_of(std::string(kHead) + "- coaches: Jo A, Sam B, Jo with C\n\n" + kGrid).empty());
  const std::string two = said_of(std::string(kHead) + "- coaches: Jo A / B, Sam C\n\n" + kGrid);
  CHECK(two ==
        "plan.md:3:12: warning: Jo would be at vault and at bars at 17:00 [rota-full]; give one of "
        "the two to another "
        "coach, or put both groups at one station\n");
}
