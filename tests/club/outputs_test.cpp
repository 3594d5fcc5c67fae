// What stands on the disk after a plan was printed, or could not be.
#include "club/outputs.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/folders.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;
using sheet::Kind;

namespace {

const PlanPaths kPlan{"/c/sessions/a.md", "sessions/a.md", "/c/out/a", "out/a",
                      "/c/out",           "/c/out/earlier"};

const std::string kOld = "%PDF-old (Chalkleaf)";
const std::string kOther = "%PDF-other (Chalkleaf)";

std::string all(const MemoryFileSystem& files) {
  std::string out;
  for (const auto& [path, text] : files.all()) out += path + "=" + text + " ";
  return out;
}

MemoryFileSystem printed_before() {
  return MemoryFileSystem{{"/c/out/a-card.pdf", kOld}, {"/c/out/a-sheet.pdf", kOld}};
}

Placed save(FileSystem& files, const std::vector<Sheet>& sheets, Older older, Diagnostics& found,
            Only only = Only::kBoth) {
  std::vector<StagedSheet> staged;
  REQUIRE(stage(files, kPlan, sheets, staged, found));
  return put_in_place(files, kPlan, only, staged, older, found);
}

std::string said(const Diagnostics& found) {
  std::string out;
  for (const Diagnostic& one : found.all())
    out += render(one, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("which sheets a plan has") {
  using plan::Place;
  CHECK(kinds_to_print(Place::kGym, Rotations::kNone, Only::kBoth) ==
        std::vector{Kind::kCoachCard});
  CHECK(kinds_to_print(Place::kHome, Rotations::kNone, Only::kBoth) ==
        std::vector{Kind::kCoachCard, Kind::kHomeSheet});
  CHECK(kinds_to_print(Place::kGym, Rotations::kStations, Only::kCards) ==
        std::vector{Kind::kCoachCard, Kind::kStationCards, Kind::kHallPoster});
  CHECK(sheet_path("out/a", Kind::kStationCards) == "out/a-stations.pdf");
  CHECK(kinds_to_print(Place::kGym, Rotations::kGrid, Only::kBoth) ==
        std::vector{Kind::kCoachCard, Kind::kHallPoster});
  CHECK(kinds_to_print(Place::kGym, Rotations::kStations, Only::kSheets).empty());
  CHECK(kinds_to_print(Place::kGym, Rotations::kNone, Only::kSheets).empty());
  CHECK(kinds_to_print(Place::kHome, Rotations::kNone, Only::kSheets) ==
        std::vector{Kind::kHomeSheet});
  CHECK(kinds_to_print(Place::kHome, Rotations::kNone, Only::kCards) ==
        std::vector{Kind::kCoachCard});
}

TEST_CASE(
    "a new sheet takes the place of an old one; a kind there is no more goes to the earlier") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  const Placed placed = save(files, {{Kind::kCoachCard, "new"}}, Older::kMoveAway, found);
  CHECK(all(files) == "/c/out/a-card.pdf=new /c/out/earlier/a-sheet.pdf=" + kOld + " ");
  CHECK(placed.written == 1);
  CHECK(placed.moved == std::vector<std::string>{"out/a-sheet.pdf"});
  CHECK(placed.stayed.empty());
  CHECK(found.all().empty());
}

TEST_CASE("after a fault the old sheets stay, and are named") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  const Placed placed = save(files, {}, Older::kStay, found);
  CHECK(all(files) == all(printed_before()));
  CHECK(placed.stayed == std::vector<std::string>{"out/a-card.pdf", "out/a-sheet.pdf"});
  CHECK(placed.well);
}

TEST_CASE("what is among the earlier sheets is never lost: it gets a number, once") {
  Diagnostics found;
  MemoryFileSystem files{{"/c/out/a-card.pdf", kOld},
                         {"/c/out/earlier/a-card.pdf", "first"},
                         {"/c/out/earlier/a-card-1.pdf", "second"}};
  save(files, {}, Older::kMoveAway, found);
  CHECK(all(files) ==
        "/c/out/earlier/a-card-1.pdf=second /c/out/earlier/a-card-2.pdf=first "
        "/c/out/earlier/a-card.pdf=" +
            kOld + " ");
  files.put("/c/out/a-card.pdf", kOld);
  save(files, {}, Older::kMoveAway, found);
  CHECK(files.all().size() == 3);
  CHECK(found.all().empty());
}

TEST_CASE("a file that is not of ours is not moved") {
  Diagnostics found;
  MemoryFileSystem files{{"/c/out/a-card.pdf", "%PDF-of someone"}, {"/c/out/a-sheet.pdf", "text"}};
  const Placed placed = save(files, {}, Older::kMoveAway, found);
  CHECK(all(files) == "/c/out/a-card.pdf=%PDF-of someone /c/out/a-sheet.pdf=text ");
  CHECK(placed.stayed.size() == 2);
}

TEST_CASE("the option --only touches its own kind") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  save(files, {}, Older::kMoveAway, found, Only::kCards);
  CHECK(all(files) == "/c/out/a-sheet.pdf=" + kOld + " /c/out/earlier/a-card.pdf=" + kOld + " ");
}

TEST_CASE("nothing is written, and nothing removed, where a link leads out of the club") {
  const tests::TemporaryFolder folder("outputs-link");
  folder.put("papers/a-card.pdf", kOld);
  folder.put("papers/a-sheet.pdf", kOld);
  folder.link("club/out", folder / "papers");
  RealFileSystem files;
  const PlanPaths plan{folder / "club/sessions/a.md", "sessions/a.md",
                       folder / "club/out/a",         "out/a",
                       folder / "club/out",           folder / "club/out/earlier"};
  Diagnostics found;
  std::vector<StagedSheet> staged;
  CHECK_FALSE(stage(files, plan, {{Kind::kCoachCard, "new"}}, staged, found));
  put_in_place(files, plan, Only::kBoth, staged, Older::kMoveAway, found);
  CHECK_FALSE(save_pictures(files, plan, Only::kBoth, {{Kind::kCoachCard, "new", {"p"}}},
                            Older::kMoveAway, found));
  CHECK(folder.read("papers/a-card.pdf") == kOld);
  CHECK(folder.read("papers/a-sheet.pdf") == kOld);
  CHECK_FALSE(folder.has("papers/a-card-1.png"));
  REQUIRE(found.all().size() == 2);
  CHECK(render(found.all()[0], MessageStyle::kShort, Colouring::kPlain) ==
        "error: out leads through a link to another folder, so nothing is written there "
        "[outside-folder]; remove the link, or name the folder you mean with ‘--out’\n");
}

TEST_CASE("on a full disk the old sheets stay") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  files.fill_up();
  const Placed placed =
      save(files, {{Kind::kCoachCard, "new"}, {Kind::kHomeSheet, "new"}}, Older::kMoveAway, found);
  CHECK(all(files) == all(printed_before()));
  CHECK_FALSE(placed.well);
  CHECK(placed.stayed == std::vector<std::string>{"out/a-card.pdf", "out/a-sheet.pdf"});
  CHECK(said(found) ==
        "error: out/a-card.pdf could not be written: the disk is full [not-written]; make room on "
        "the disk, or choose another folder with ‘--out’\n");
}

TEST_CASE("the plan's own mistakes move its sheets; one from elsewhere keeps them") {
  const auto plan = std::make_shared<const Source>("a.md", "text");
  const auto part = std::make_shared<const Source>("part.md", "text");
  Diagnostics found;
  found.warning("over-slot", {part.get(), 0, 1}, "a warning decides nothing");
  CHECK(fate_of_older(found, plan.get()) == Older::kMoveAway);
  CHECK(fate_of_older(found, nullptr) == Older::kStay);
  found.error("no-dose", {plan.get(), 0, 1}, "of its own");
  CHECK(fate_of_older(found, plan.get()) == Older::kMoveAway);
  Diagnostics unreadable = found;
  unreadable.error("unreadable-file", {plan.get(), 0, 1}, "a picture the plan names");
  CHECK(fate_of_older(unreadable, plan.get()) == Older::kStay);
  found.error("no-dose", {part.get(), 0, 1}, "of a part");
  CHECK(fate_of_older(found, plan.get()) == Older::kStay);
}
