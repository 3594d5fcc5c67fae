// A folder that gives no plans: what is said about what is there instead.
#include "club/no_plans.h"

#include <catch2/catch.hpp>

#include "club/folders.h"
#include "club/select.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;
using chalkleaf::support::MemoryFileSystem;

namespace {

const std::string kNone =
    "this club has no plans: its plans are the .md files in its folder ‘sessions’; ";

/// The one problem of building the club without arguments.
std::string problem(MemoryFileSystem files) {
  files.put("/quay/club.yaml", "");
  const Selection selection = select_plans(files, {"/quay", {}, {}});
  CHECK(selection.plans.empty());
  REQUIRE(selection.problems.size() == 1);
  return selection.problems[0];
}

}  // namespace

TEST_CASE("a club without plans: a folder with nearly the right name is to be renamed") {
  for (const std::string name :
       {"Sessions", "my sessions", "session", "SESIONS", "Training plans"}) {
    CHECK(problem({{"/quay/" + name + "/a.md", ""}}) ==
          kNone + "rename ‘" + name + "’ to ‘sessions’");
  }
}

TEST_CASE("a club without plans: plans elsewhere, nothing in sessions, nothing at all") {
  CHECK(problem({{"/quay/README.md", ""}, {"/quay/tuesday.md", ""}}) ==
        kNone + "make a folder ‘sessions’ and move ‘tuesday.md’ into it");
  CHECK(problem({{"/quay/parts/warm-up.md", ""}, {"/quay/winter/tuesday.md", ""}}) ==
        kNone + "if those in ‘winter’ are plans, rename it to ‘sessions’");
  CHECK(problem({{"/quay/sessions/notes.txt", "chalk"}}) ==
        kNone + "there is none in ‘sessions’; put one there, such as ‘tuesday.md’");
  CHECK(problem({{"/quay/sessions", "a file"}}) == kNone + "‘sessions’ is not a folder");
  CHECK(problem({{"/quay/parts/warm-up.md", ""}, {"/quay/out/a.md", ""}}) ==
        kNone + "make the folder, and put a plan in it, such as ‘tuesday.md’");
}

TEST_CASE("a club without plans: a link for a folder, and the club named as an argument") {
  const TemporaryFolder folder("no-plans-link");
  folder.put("club/club.yaml", "");
  folder.put("elsewhere/a.md", "");
  folder.link("club/sessions", "../elsewhere");
  const Selection selection = select_plans(RealFileSystem(), {folder.str(), {"club"}, {}});
  CHECK(selection.problems ==
        std::vector<std::string>{"‘club’: " + kNone +
                                 "‘sessions’ is a link, and links to folders are not followed"});
}

TEST_CASE("outside any club: its file with another ending is to be renamed") {
  const MemoryFileSystem files{{"/quay/Club.yml", ""}, {"/quay/sessions/a.md", ""}};
  CHECK(why_no_club(files, "/quay") ==
        "no plan is named, and this folder is not in a club folder (one with a club.yaml); rename "
        "‘Club.yml’ to ‘club.yaml’");
}
