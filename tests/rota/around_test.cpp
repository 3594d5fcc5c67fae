// What is said around a grid: lengths, sizes, who comes and goes, who coaches what.
#include "rota/around.h"

#include <catch2/catch.hpp>

#include "grids.h"

using namespace chalkleaf;
using rota_test::Text;

namespace {

rota::Lengths lengths(std::string_view text) {
  return rota::lengths_in(rota_test::english(), text);
}

rota::Rotation with(const std::string& around) {
  static std::vector<Text> kept;
  kept.emplace_back(around +
                    "\n\n| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | Reds | Blues | Greens |\n"
                    "| 5.30 | Greens | Reds | Blues |\n| 6.00 | Blues | Greens | Reds |\n");
  return kept.back().one();
}

}  // namespace

TEST_CASE("rota around: lengths of turns and ways") {
  CHECK(lengths("Rotations (4 x 28 min, 2 min to move)").turns == 4);
  CHECK(lengths("Rotations (4 x 28 min, 2 min to move)").turn == 28);
  CHECK(lengths("Rotations (4 x 28 min, 2 min to move)").move == 2);
  CHECK(lengths("28 mins each, 2 to move").turn == 28);
  CHECK(lengths("28 mins each, 2 to move").move == 2);
  CHECK(lengths("events, 22 min ea").turn == 22);
  CHECK(lengths("(25, 25, 20 min)").list == std::vector<int>{25, 25, 20});
  CHECK(lengths("Turns are 30, 30, 20, 20.").list == std::vector<int>{30, 30, 20, 20});
  CHECK(lengths("ROTATIONS, 45 min").alone == 45);
  CHECK_FALSE(lengths("cast 3 x 8, kip x5").turn);
}

TEST_CASE("rota around: how many a group is, by number and not by age or clock") {
  const rota::Rotation all = with("Reds 5-6yrs (8), Blues 7 yrs, 6 kids, Greens 5 from 5.30");
  CHECK(all.groups[0].size == 8);
  CHECK(all.groups[2].size == 5);
  CHECK(all.groups[2].from == 17 * 60 + 30);
  CHECK(with("3 groups of 6").groups[1].size == 6);
  CHECK(with("Blues finish 6.00").groups[1].until == 18 * 60);
}

TEST_CASE("rota around: twice here, never there, and how many a station takes") {
  const rota::Rotation all = with("Blues get beam twice and no vault\nbars max 6");
  CHECK(all.groups[1].twice == std::vector<std::size_t>{2});
  CHECK(all.groups[1].skips == std::vector<std::size_t>{0});
  CHECK(all.stations[1].takes == 6);
}

TEST_CASE("rota around: a coach and a station, said in the ways there are") {
  for (const char* line :
       {"Jo vault / Sam bars / me on beam", "Jo = vault, Sam = bars, me = beam",
        "Jo vault all night, Sam bars, me beam", "- coaches: Jo vault, Sam bars, me beam"}) {
    CAPTURE(line);
    const rota::Rotation all = with(line);
    REQUIRE(all.coaches.size() == 3);
    CHECK(all.coaches[0].name.text == "Jo");
    CHECK(all.coaches[1].stations == std::vector<std::size_t>{1});
    CHECK(all.coaches[2].name.text == "me");
  }
}
