// Which line is what, in small drafts of different habits.
#include "draft/document.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using Reading = draft::DraftLine::Reading;

namespace {

// A letter a line: t title, r remark, h heading, d drills, g grid, - blank, . said elsewhere.
std::string readings(const std::string& text) {
  const Source source("d.md", text);
  std::string out;
  for (const draft::DraftLine& one : draft::read_document(draft_test::english(), source).lines) {
    switch (one.reading) {
      case Reading::kBlank:
        out += '-';
        break;
      case Reading::kTitle:
        out += 't';
        break;
      case Reading::kRemark:
        out += 'r';
        break;
      case Reading::kHeading:
        out += 'h';
        break;
      case Reading::kDrills:
        out += 'd';
        break;
      case Reading::kTable:
        out += 'g';
        break;
      case Reading::kKept:
        out += 'k';
        break;
      case Reading::kTyped:
        out += '.';
        break;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("clocks at the margin open parts") {
  CHECK(readings("Rec Tues 9.30-10.15\n9.30 hello\n9.35 Warm up - run on toes x2\n  shell x5\n9.50 "
                 "drink\n") == "thhdh");
}

TEST_CASE("capitals, minutes and lists") {
  CHECK(readings("Squad\nWARM UP\n- jog 2 laps\n- wrists\nBars (15)\n- casts 3x5\nBring water\n") ==
        "thddhdr");
}

TEST_CASE("where nothing else says so, a word that opens parts does") {
  CHECK(readings("wed 4.30 rec\nwarm up tag 4 mins\nbeam hop x4\nbar swing x5\n") == "thhh");
}

TEST_CASE("a remark about one child is never a drill") {
  const Source source("d.md", "Squad\nBARS\n- casts x5\n\nGirl 7 – heel, no landings 5\n");
  const auto lines = draft::read_document(draft_test::english(), source).lines;
  CHECK(lines.back().reading == Reading::kRemark);
  CHECK(lines.back().about_child);
}

TEST_CASE("a grid stays a table, doses in a table are drills") {
  CHECK(readings("Squad\n## Rotations\n| | bars | beam |\n|---|---|---|\n| 9.25 | A | B |\n") ==
        "thggg");
  CHECK(readings("Squad\n## Warm-up\n| Drill | Dose |\n|---|---|\n| Jog | 2 laps |\n| Dish | 3 x "
                 "10 s |\n") == "th..dd");
}

TEST_CASE("a circuit's list need not look like one") {
  CHECK(readings("Camp\n16h45 Physical - circuit 40 sec on / 20 off - 3 "
                 "rounds\nplank\nsuperman\n17h05 Stretch\n") == "thddh");
}
