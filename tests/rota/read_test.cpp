// Grids as coaches draw them: the four of the drafts, and the forms of the notation.
#include "rota/read.h"

#include <catch2/catch.hpp>

#include "grids.h"

using namespace chalkleaf;
using rota_test::grid_of;
using rota_test::Text;

namespace {

std::string draft(const std::string& name) {
  const RealFileSystem files;
  const auto bytes = files.read(support::repository() + "/tests/drafts/" + name, 100'000);
  REQUIRE(bytes);
  return *bytes;
}

}  // namespace

TEST_CASE("rota: a Markdown table, turns with a way between them and a break of all (draft 03)") {
  const Text text(draft("03.md"));
  const rota::Rotation all = text.one();
  CHECK(grid_of(all) ==
        "9:25 28: A=vault B=bars C=beam D=floor\n"
        "9:55 28: A=bars B=beam C=floor D=vault\n"
        "break 10\n"
        "10:35 28: A=beam B=floor C=vault D=bars\n"
        "11:05 28: A=floor B=vault C=bars D=beam\n");
  CHECK(all.move == 2);
  CHECK(all.minutes() == 130);  // the way to what comes next with them
  CHECK(all.heading.text == "Rotations from 9.25 (28 mins each, 2 to move)");
  CHECK(all.groups[0].size == 4);
  REQUIRE(all.coaches.size() == 4);
  CHECK(all.coaches[2].name.text == "Mina");
  CHECK(all.coaches[2].stations == std::vector<std::size_t>{2});
}

TEST_CASE("rota: tabs, the clock across, coaches who go with their group (draft 11)") {
  const Text text(draft("11.md"));
  const rota::Rotation all = text.one();
  CHECK(grid_of(all) ==
        "16:20 22: G1=FX G2=SR\n"
        "16:42 22: G1=PH G2=HB\n"
        "break 6\n"
        "17:10 22: G1=SR G2=FX\n"
        "17:32 22: G1=HB G2=PH\n");
  CHECK(all.groups[1].size == 5);
  REQUIRE(all.coaches.size() == 2);
  CHECK(all.coaches[1].name.text == "Ray");
  CHECK(all.coaches[1].groups == std::vector<std::size_t>{1});
}

TEST_CASE("rota: colours, and lunch behind the last turn (draft 13)") {
  const Text text(draft("13.md"));
  const rota::Rotation all = text.one();
  CHECK(grid_of(all) ==
        "10:05 25: Reds=Floor Yellows=Bars Greens=Vault Blues=Beam + craft\n"
        "10:30 25: Reds=Bars Yellows=Vault Greens=Beam + craft Blues=Floor\n"
        "break 15\n"
        "11:10 25: Reds=Vault Yellows=Beam + craft Greens=Floor Blues=Bars\n"
        "11:35 25: Reds=Beam + craft Yellows=Floor Greens=Bars Blues=Vault\n");
  CHECK(all.groups[3].size == 8);
  REQUIRE(all.pauses.size() == 2);
  CHECK(all.pauses[1].before == 4);
}

TEST_CASE("rota: aligned columns, the snack in a line of its own below them (draft 20)") {
  const Text text(draft("20.md"));
  const rota::Rotation all = text.one();
  CHECK(grid_of(all) ==
        "16:25 45: A=bars B=V/FX C=beam\n"
        "17:10 45: A=beam B=bars C=V/FX\n"
        "break 10\n"
        "18:05 45: A=V/FX B=beam C=bars\n");
  CHECK(all.lines == std::vector<std::uint32_t>{16, 17, 18, 19, 20});
}

TEST_CASE("rota: one line and `then rotate`, water after the second turn") {
  const Text text(
      "6.25 start. A vault, B bars, C beam then rotate, 25 min each, 2 mins to move. Water after "
      "the second one, 5 mins\n");
  CHECK(grid_of(text.one()) ==
        "18:25 25: A=vault B=bars C=beam\n"
        "18:52 25: A=bars B=beam C=vault\n"
        "break 5\n"
        "19:24 25: A=beam B=vault C=bars\n");
}

TEST_CASE("rota: a line a turn, and a group that rests") {
  const Text text(
      "6.30 Reds on floor with Agda, Blues bars, Greens have their rest\n"
      "7.10 Reds rest, Blues go to floor, Greens bars\n"
      "7.50 Reds bars, Blues rest, Greens floor\n\n8.15 pack up\n");
  CHECK(grid_of(text.one()) ==
        "18:30 40: Reds=floor Blues=bars Greens=rest\n"
        "19:10 40: Reds=rest Blues=floor Greens=bars\n"
        "19:50 25: Reds=bars Blues=rest Greens=floor\n");
}

TEST_CASE("rota: the order of each group, one line each") {
  const Text text(
      "Rotate every 20 min\nA: vault, bars, beam\nB: bars, beam, vault\nC: beam, vault, bars\n");
  CHECK(grid_of(text.one()) ==
        "- 20: A=vault B=bars C=beam\n- 20: A=bars B=beam C=vault\n- 20: A=beam B=vault C=bars\n");
}

TEST_CASE("rota: two halls, one clock") {
  const Text text(
      "BIG HALL   Vault   Bars\n9.40   A   B\n10.10   B   A\n10.40   C   D\n11.10   D   C\n\n"
      "OLD GYM    Beam    Floor\n9.40   C   D\n10.10   D   C\n10.40   A   B\n11.10   B   A\n");
  const rota::Rotation all = text.one();
  CHECK(grid_of(all) ==
        "9:40 30: A=Vault B=Bars C=Beam D=Floor\n10:10 30: A=Bars B=Vault C=Floor D=Beam\n"
        "10:40 30: A=Beam B=Floor C=Vault D=Bars\n11:10 30: A=Floor B=Beam C=Bars D=Vault\n");
  CHECK(all.halls == std::vector<std::string>{"BIG HALL", "OLD GYM"});
  CHECK(all.stations[2].hall == 1);
}

TEST_CASE("rota: the taught notation without a grid") {
  const Text text(
      "## Rotations (3 x 28 min, 2 min to move)\n\n- groups: A 4, B 4, C 5\n- coaches: Jo vault\n"
      "- break after 2: 10 min, water and loo\n- must: C not first on vault\n"
      "- must: one crash mat for vault and floor: A, B\n- wish: bars before floor for C\n"
      "- wish: more music\n\n### Vault (Jo)\n\n- Squat on: 5 goes\n\n### Bars\n\n### Floor\n\n## "
      "Cool-down\n");
  const rota::Rotation all = text.one();
  CHECK(all.form == rota::Rotation::Form::kNone);
  REQUIRE(all.stations.size() == 3);
  CHECK(all.stations[0].name.text == "Vault");
  CHECK(all.groups[2].size == 5);
  REQUIRE(all.rules.size() == 4);
  using Kind = rota::Rule::Kind;
  CHECK(all.rules[0].kind == Kind::kNotFirst);
  CHECK(all.rules[1].kind == Kind::kOneKit);
  CHECK(all.rules[1].groups == std::vector<std::size_t>{0, 1});
  CHECK(all.rules[2].kind == Kind::kBefore);
  CHECK(all.rules[2].stations == std::vector<std::size_t>{1, 2});
  CHECK(all.rules[3].kind == Kind::kUnread);
  REQUIRE(all.pauses.size() == 1);
  CHECK(all.pauses[0].before == 2);
  CHECK(all.pauses[0].minutes == 10);
  CHECK(all.pauses[0].words == "water and loo");
  REQUIRE(all.titles.size() == 3);
  CHECK(all.titles[0].station == 0);
  CHECK(all.minutes() == 100);
}

TEST_CASE("rota: lists of drills and timetables of one group are no grids") {
  for (const char* text :
       {"Vault: run, jump, land\nBars: cast, swing, cast\nBeam: walk, turn, jump\n",
        "| drill | dose | cue |\n|---|---|---|\n| Jog | 2 laps | tall |\n| Skip | 2 laps | high "
        "|\n",
        "5.00 warm up\n5.10 vault, bars\n5.40 beam, floor\n5.55 stretch\n",
        "#3 - Severs, no vault today, double beam\n#6 - new kip!! let her do 3 then move on\n"}) {
    CAPTURE(text);
    CHECK(Text(text).all().empty());
  }
}

TEST_CASE(
    "rota: stations with their turns in the heading; a break has the clock it ends at; groups "
    "their colours") {
  const Text text(
      "## Stations (3 x 20 min, 2 min to move)\n\n- groups: Reds 6, Blues 5, Owls 4\n"
      "- break after 1: 10 min, snack\n\n| | vault | bars | beam |\n|---|---|---|---|\n"
      "| 10.00 | Reds | Blues | Owls |\n| 10.32 | Owls | Reds | Blues |\n| 10.54 | Blues | Owls | "
      "Reds |\n");
  const rota::Rotation all = text.one();
  REQUIRE(all.pauses.size() == 1);
  CHECK(all.pauses[0].clock == 10 * 60 + 22);
  REQUIRE(all.groups.size() == 3);
  CHECK(all.groups[0].colour == rota::NamedColour::kRed);
  CHECK(all.groups[1].colour == rota::NamedColour::kBlue);
  CHECK_FALSE(all.groups[2].colour);
  CHECK(Text("## Stations (3 x 20 min, 2 min to move)\n\n- groups: Reds 6, Blues 5\n- stations: "
             "vault, bars\n")
            .one()
            .turns.size() == 3);
}
