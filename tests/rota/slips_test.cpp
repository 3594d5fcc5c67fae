// Slips of a written grid are found, and the one cell that mends each is named.
#include "rota/slips.h"

#include <catch2/catch.hpp>

#include "grids.h"

using namespace chalkleaf;
using rota_test::Text;

namespace {

std::string draft_with(const std::string& name, std::string_view from, std::string_view to) {
  const RealFileSystem files;
  const auto bytes = files.read(support::repository() + "/tests/drafts/" + name, 100'000);
  REQUIRE(bytes);
  std::string text = *bytes;
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

std::string changes(const Text& text) {
  const rota::Rotation all = text.one();
  std::vector<rota::Slip> left;
  std::string out;
  for (const rota::Mend& mend : rota::mends_of(all, left)) {
    for (const rota::Mend::Change& change : mend.changes) {
      const LineColumn at = text.source->line_column(change.cell.begin);
      out += std::to_string(at.line) + ":" + std::to_string(at.column) + " " +
             std::string(change.cell.text()) + " -> " + change.name + "; ";
    }
  }
  return out + std::to_string(left.size()) + " left";
}

}  // namespace

TEST_CASE("rota slips: the drafts' grids are sound") {
  for (const char* name : {"03.md", "11.md", "13.md", "20.md"}) {
    CAPTURE(name);
    CHECK(changes(Text(draft_with(name, " ", " "))) == "0 left");
  }
}

TEST_CASE("rota slips: three seeded ones are named with the cell and what belongs there") {
  CHECK(changes(Text(draft_with("03.md", "| 10.35 | C | D | A | B |",
                                "| 10.35 | C | D | A | C |"))) == "19:23 C -> B; 0 left");
  CHECK(changes(Text(draft_with("13.md", "| 11.10 | Greens | Blues | Reds | Yellows |",
                                "| 11.10 | Greens | Blues | Yellows | Reds |"))) ==
        "13:28 Yellows -> Reds; 13:38 Reds -> Yellows; 0 left");
  CHECK(changes(Text(draft_with("20.md", "B (L4)    V/FX      bars      beam",
                                "B (L4)    V/FX      bars      bars"))) ==
        "18:33 bars -> beam; 0 left");
}

TEST_CASE("rota slips: a name that is no group, and one that is nearly a group's") {
  const std::string head =
      "| | vault | bars | beam | floor |\n|-|-|-|-|-|\n| 5.00 | A | B | C | D |\n| 5.30 | D | A | "
      "B | C |\n";
  CHECK(changes(Text(head + "| 6.00 | C | D | E | B |\n| 6.30 | B | C | D | A |\n")) ==
        "5:18 E -> A; 0 left");
  const Text near(
      "| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | Red | Blue | Green |\n| 5.30 | Green | Red | "
      "Blue |\n"
      "| 6.00 | Bleu | Green | Red |\n");
  CHECK(changes(near) == "0 left");
}

TEST_CASE("rota slips: what is meant is no slip") {
  // Two groups rest by turns; one comes late; one is at the beam twice and never at the vault.
  const Text rests(
      "| | 5.00 | 5.30 | 6.00 |\n|-|-|-|-|\n| Reds | floor | bars | rest |\n| Blues | rest | floor "
      "| bars |\n"
      "| Greens | bars | rest | floor |\n");
  CHECK(changes(rests) == "0 left");
  const Text late(
      "C comes 5.30\n\n| | 5.00 | 5.30 | 6.00 |\n|-|-|-|-|\n| A | floor | bars | beam |\n"
      "| B | bars | beam | floor |\n| C | | floor | bars |\n");
  CHECK(changes(late) == "0 left");
  const std::string grid =
      "| | 5.00 | 5.30 | 6.00 |\n|-|-|-|-|\n| A | vault | bars | beam |\n| B | bars | beam | vault "
      "|\n"
      "| C | beam | floor | beam |\n| D | floor | vault | bars |\n";
  CHECK(changes(Text("C gets beam twice and no vault\n\n" + grid)) == "0 left");
  CHECK(changes(Text(grid)) != "0 left");
}

TEST_CASE("rota slips: more gymnasts than a station takes") {
  const Text text(
      "Reds 8, Blues 5, Greens 6\nbars max 6\n\n| | vault | bars | beam |\n|-|-|-|-|\n| 5.00 | "
      "Reds | Blues | Greens |\n"
      "| 5.30 | Greens | Reds | Blues |\n| 6.00 | Blues | Greens | Reds |\n");
  const auto slips = rota::slips_of(text.one());
  REQUIRE(slips.size() == 1);
  CHECK(slips[0].kind == rota::Slip::Kind::kFull);
  CHECK(slips[0].turn == 1);
}
