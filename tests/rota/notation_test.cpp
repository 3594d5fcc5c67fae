// A rotation in the taught notation is read back as the same rotation.
#include "rota/notation.h"

#include <catch2/catch.hpp>

#include "grids.h"

using namespace chalkleaf;
using rota_test::grid_of;
using rota_test::Text;

namespace {

std::string written(const rota::Rotation& all) {
  std::string out = "## Rotations " + rota::turns_text(all) + "\n\n";
  bool head = true;
  for (const auto& row : rota::table_of(all)) {
    out += "|";
    for (const rota::Piece& piece : row) out += " " + piece.text + " |";
    out += "\n";
    if (head) {
      out += "|";
      for (std::size_t i = 0; i < row.size(); ++i) out += "---|";
      out += "\n";
    }
    head = false;
  }
  return out;
}

}  // namespace

TEST_CASE("rota notation: what is written is read as it was") {
  for (const char* words :
       {"Rotations 28 mins each, 2 to move\n\n9.25   A   B   C\n9.55   C   A   B\n",
        "ROTATIONS, 45 min\n     4:25   5:10   6:05\nA   bars   beam   floor\nB   floor   bars   "
        "beam\nC   beam   floor   bars\n"
        "5:55-6:05 SNACK\n",
        "6.30 Reds floor, Blues bars, Greens rest\n7.10 Reds rest, Blues floor, Greens bars\n7.50 "
        "Reds bars, Blues rest, Greens floor\n"}) {
    CAPTURE(words);
    const Text first(words);
    const rota::Rotation one = first.one();
    const Text second(written(one));
    CHECK(grid_of(second.one()) == grid_of(one));
  }
}

TEST_CASE("rota notation: the heading's turns, and clocks as the coach writes them") {
  const Text text(
      "Rotations, 45 min\n     4:25   5:10   6:05\nA   bars   beam   floor\nB   floor   bars   "
      "beam\nC   beam   floor   bars\n5:55-6:05 SNACK\n");
  const rota::Rotation all = text.one();
  CHECK(rota::turns_text(all) == "(3 x 45 min)");
  CHECK(rota::written_clock(all, 17 * 60 + 55) == "5:55");
}
