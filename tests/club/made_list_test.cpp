// The list of which plan each sheet was made from.
#include "club/made_list.h"

#include <catch2/catch.hpp>

#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

TEST_CASE("made list: written as seen from its folder, read back, written only when new") {
  MemoryFileSystem files;
  MadeList list(files, "/c/out");
  CHECK(list.plans().empty());
  list.add("/c/out/home/b", "/c/sessions/home/b.md");
  list.add("/c/out/a", "/c/sessions/a.md");
  list.add("/c/out/with\ttab", "/c/sessions/with\ttab.md");
  REQUIRE(list.save(files).has_value());
  const std::string text = files.all().at("/c/out/.chalkleaf-sheets");
  CHECK(text ==
        "# Which plan each sheet here was made from. Chalkleaf keeps this list.\n"
        "a\t../sessions/a.md\n"
        "home/b\t../sessions/home/b.md\n");
  MadeList again(files, "/c/out");
  CHECK(again.plans() == list.plans());
  files.fill_up();
  again.add("/c/out/a", "/c/sessions/a.md");
  CHECK(again.save(files).has_value());
  again.forget("/c/out/a");
  CHECK_FALSE(again.save(files).has_value());
}

TEST_CASE("made list: a plan is gone only when its folder was seen without it") {
  MemoryFileSystem files{{"/c/club.yaml", ""}, {"/c/sessions/home/b.md", ""}};
  Absentees absentees(files);
  CHECK(absentees.look_for("/c/sessions/home/b.md", "/c") == Presence::kThere);
  CHECK(absentees.look_for("/c/sessions/home/a.md", "/c") == Presence::kGone);
  CHECK(absentees.look_for("/c/sessions/other/a.md", "/c") == Presence::kGone);
  CHECK(absentees.look_for("/c/club.yaml/a.md", "/c") == Presence::kGone);
  CHECK(absentees.look_for("/d/a.md", "/d") == Presence::kUnknown);
}
