// Amounts as people speak and type them.
#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft_test::drills;

namespace {

// The pieces, each between bars.
std::string pieces(const std::string& line) {
  std::string out;
  for (const draft::Piece& piece : draft::spoken_pieces(draft_test::english(), line)) {
    out += (out.empty() ? "" : "|") + (piece.is(draft::Piece::Kind::kNumber)
                                           ? std::to_string(static_cast<int>(piece.value))
                                           : piece.text);
  }
  return out;
}

}  // namespace

TEST_CASE("spoken amounts become numbers and units") {
  CHECK(pieces("half a minute") == "30|s");
  CHECK(pieces("hold :40") == "hold|40|s");
  CHECK(pieces("3x:30") == "3|x|30|s");
  CHECK(pieces("2 x 1:30") == "2|x|90|s");
  CHECK(pieces("0:45") == "45|s");
  CHECK(pieces("twenty five") == "25");
  CHECK(pieces("from 5 to 8") == "5|-|8");
  CHECK(pieces("between 3 and 5") == "3|-|5");
  CHECK(pieces("a dozen") == "12");
}

TEST_CASE("what only looks like a spoken amount stays") {
  CHECK(pieces("swap 6:15") == "swap|6:15");
  CHECK(pieces("11.00 to 12.00") == "11|to|12");
  CHECK(pieces("8 to 3") == "8|to|3");
  CHECK(pieces("Day 1: 10 hops").find("10|s") == std::string::npos);
}

TEST_CASE("their bytes are those that were typed") {
  const std::string line = "plank half a minute each";
  const draft::Pieces found = draft::spoken_pieces(draft_test::english(), line);
  REQUIRE(found.size() == 4);
  CHECK(line.substr(found[1].begin, found[1].end - found[1].begin) == "half a minute");
  CHECK(found[2].begin == found[1].end);
  CHECK(drills("plank half a minute") == "plank: 30 s");
}

TEST_CASE("a fraction before a unit is one number") {
  const auto first = [](const std::string& line) {
    const draft::Pieces pieces = draft::spoken_pieces(draft_test::english(), line);
    return pieces.empty() ? -1 : pieces[0].value;
  };
  CHECK(first("1/2 min") == 0.5);
  CHECK(first("1 1/2 mins") == 1.5);
  CHECK(first("3/4 hr") == 0.75);
  CHECK(first("1/2 a minute") == 30);  // seconds
  CHECK(first("1/2 turns") == 1);      // a skill's name
  CHECK(first("3/4") == 3);            // nothing behind it: years, or groups
}

TEST_CASE("a minute and some seconds without a blank") {
  CHECK(pieces("splits 1min30 each leg").find("90|s") != std::string::npos);
  CHECK(pieces("1m30s") == "90|s");
  CHECK(pieces("jog 1min 30 hops").find("90|s") == std::string::npos);
}
