#include "draft/lines.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;
using draft::Line;

namespace {

Line only(const std::string& text) {
  const Source source("d.md", text);
  return draft::lines_of(source, 0).at(0);
}
std::string words(const std::string& text) {
  const Source source("d.md", text);
  return std::string(draft::lines_of(source, 0).at(0).words(source));
}

}  // namespace

TEST_CASE("marks at the margin are no words") {
  CHECK(words("- jog") == "jog");
  CHECK(words("-CASTS 3X6") == "CASTS 3X6");
  CHECK(words("•\tjog") == "jog");
  CHECK(words("⭐ jog") == "jog");
  CHECK(words(">> Warm up (12)") == "Warm up (12)");
  CHECK(words("iii. jog") == "jog");
  CHECK(words("  3) jog") == "jog");
  CHECK(words("## Warm-up") == "Warm-up");
  CHECK(words("#3 - wrist") == "#3 - wrist");
  CHECK(words("10 squats") == "10 squats");
  CHECK(only("  3) jog").mark == Line::Mark::kNumber);
}

TEST_CASE("a clock at the margin, in the forms people write") {
  const auto minutes = [](const std::string& text) {
    const Line line = only(text);
    return line.clock ? line.clock->minutes : -1;
  };
  CHECK(minutes("9.30 hello") == 570);
  CHECK(minutes("16h45 physical") == 1005);
  CHECK(minutes("1700 W/U") == 1020);
  CHECK(minutes("11.05 – Warm up") == 665);
  CHECK(minutes("1.15m high") == -1);
  CHECK(minutes("12 booked") == -1);
  CHECK(minutes("2000 reps") == 1200);
  CHECK(only("5:15-5:40 bars").clock->until == 340);
  CHECK(words("11.05 – Warm up") == "Warm up");
}

TEST_CASE("a line of cells is a grid") {
  CHECK(only("  A (L4)    bars      beam      V/FX").grid);
  CHECK(only("G1\tFX\tPH\tWATER").grid);
  CHECK_FALSE(only("4.42 stretch").grid);
}

TEST_CASE("every line end, and a file without one") {
  const Source source("d.md", "a\r\n\r\nb");
  const auto lines = draft::lines_of(source, 0);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].words(source) == "a");
  CHECK(lines[1].blank);
  CHECK(lines[2].words(source) == "b");
  CHECK(lines[2].number == 3);
}

TEST_CASE("a row of hash numbers is a list, and one alone is a gymnast's") {
  const Source source("d.md", "#1 vault\n#2: hang\n#3 jumps\n#9 - wrist sore\n");
  const auto lines = draft::lines_of(source, 0);
  REQUIRE(lines.size() == 4);
  CHECK(lines[0].mark == Line::Mark::kNumber);
  CHECK(lines[1].words(source) == "hang");
  CHECK(lines[2].words(source) == "jumps");
  CHECK(lines[3].words(source) == "#9 - wrist sore");
}

TEST_CASE("numbers that go on by one over many lines are a list's") {
  std::string text =
      "STRENGTH\n1  Press-ups, as many as possible\n2  V-sits\n3  Leg lifts\n\nPOWER\n";
  const auto marks = [](const std::string& draft) {
    const Source source("d.md", draft);
    std::size_t out = 0;
    for (const Line& line : draft::lines_of(source, 0))
      out += line.mark == Line::Mark::kNumber ? 1 : 0;
    return out;
  };
  CHECK(marks(text) == 0);  // three may be amounts
  CHECK(marks(text + "4 Long jump\n5 Skipping\n") == 5);
  CHECK(marks("10 squats\n8 dips\n6 lunges\n4 hops\n2 rolls\n") == 0);
}

TEST_CASE("a word and a number that go on by one are the labels of a list") {
  const Source source("d.md",
                      "rung 1 - bounces x20\nrung 2 - tucks x10\nrung 3: straddles\nrung 4 - seat\n"
                      "level 3 - alone\n");
  const auto lines = draft::lines_of(source, 0);
  CHECK(lines[0].words(source) == "bounces x20");
  CHECK(source.text().substr(lines[3].label_begin, lines[3].label_end - lines[3].label_begin) ==
        "rung 4");
  CHECK(lines[4].words(source) == "level 3 - alone");
}

TEST_CASE("a second list of bare numbers is a list, too") {
  std::string text;
  for (const char* part : {"STRENGTH\n", "SUPPLE\n"}) {
    text += part;
    for (int i = 1; i < 6; ++i) text += std::to_string(i) + " shapes\n";
  }
  const Source source("d.md", text);
  std::size_t numbered = 0;
  for (const Line& line : draft::lines_of(source, 0))
    numbered += line.mark == Line::Mark::kNumber ? 1 : 0;
  CHECK(numbered == 10);
}
