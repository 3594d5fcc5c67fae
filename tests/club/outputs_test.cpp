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

const PlanPaths kPlan{"/c/sessions/a.md", "sessions/a.md", "/c/out/a", "out/a"};

std::string all(const MemoryFileSystem& files) {
  std::string out;
  for (const auto& [path, text] : files.all()) out += path + "=" + text + " ";
  return out;
}

MemoryFileSystem printed_before() {
  return MemoryFileSystem{{"/c/out/a-card.pdf", "old"}, {"/c/out/a-sheet.pdf", "old"}};
}

}  // namespace

TEST_CASE("which sheets a plan has") {
  using plan::Place;
  CHECK(kinds_to_print(Place::kGym, Only::kBoth) == std::vector{Kind::kCoachCard});
  CHECK(kinds_to_print(Place::kHome, Only::kBoth) ==
        std::vector{Kind::kCoachCard, Kind::kHomeSheet});
  CHECK(kinds_to_print(Place::kGym, Only::kSheets).empty());
  CHECK(kinds_to_print(Place::kHome, Only::kSheets) == std::vector{Kind::kHomeSheet});
  CHECK(kinds_to_print(Place::kHome, Only::kCards) == std::vector{Kind::kCoachCard});
}

TEST_CASE("sheets of this run stay, those of an earlier one go") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  CHECK(save(files, kPlan, Only::kBoth, {{Kind::kCoachCard, "new"}}, found));
  CHECK(all(files) == "/c/out/a-card.pdf=new ");
  CHECK(found.all().empty());
}

TEST_CASE("a plan with errors leaves no sheet behind") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  CHECK(save(files, kPlan, Only::kBoth, {}, found));
  CHECK(all(files).empty());
}

TEST_CASE("the option --only touches its own kind") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  CHECK(save(files, kPlan, Only::kCards, {}, found));
  CHECK(all(files) == "/c/out/a-sheet.pdf=old ");
}

TEST_CASE("nothing is written, and nothing removed, where a link leads out of the club") {
  const tests::TemporaryFolder folder("outputs-link");
  folder.put("papers/a-card.pdf", "precious");
  folder.put("papers/a-sheet.pdf", "precious");
  folder.link("club/out", folder / "papers");
  RealFileSystem files;
  const PlanPaths plan{folder / "club/sessions/a.md", "sessions/a.md", folder / "club/out/a",
                       "out/a"};
  Diagnostics found;
  CHECK_FALSE(save(files, plan, Only::kBoth, {{Kind::kCoachCard, "new"}}, found));
  CHECK_FALSE(save(files, plan, Only::kBoth, {}, found));
  CHECK_FALSE(save_pictures(files, plan, Only::kBoth, {{Kind::kCoachCard, "new", {"p"}}}, found));
  CHECK(folder.read("papers/a-card.pdf") == "precious");
  CHECK(folder.read("papers/a-sheet.pdf") == "precious");
  CHECK_FALSE(folder.has("papers/a-card-1.png"));
  REQUIRE(found.all().size() == 3);
  CHECK(render(found.all()[0], MessageStyle::kShort, Colouring::kPlain) ==
        "error: out leads through a link to another folder, so nothing is written there "
        "[outside-folder]; remove the link, or name the folder you mean with ‘--out’\n");
}

TEST_CASE("on a full disk neither the new sheets nor the old ones are left") {
  Diagnostics found;
  MemoryFileSystem files = printed_before();
  files.fill_up();
  CHECK_FALSE(save(files, kPlan, Only::kBoth,
                   {{Kind::kCoachCard, "new"}, {Kind::kHomeSheet, "new"}}, found));
  CHECK(all(files).empty());
  REQUIRE(found.all().size() == 1);
  CHECK(render(found.all()[0], MessageStyle::kShort, Colouring::kPlain) ==
        "error: out/a-card.pdf could not be written: the disk is full [not-written]; make room on "
        "the disk, or choose another folder with ‘--out’\n");
}
