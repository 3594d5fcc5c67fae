// Which plans the arguments mean, on a disk made of strings; links on a real one.
#include "club/select.h"

#include <catch2/catch.hpp>

#include "club/folders.h"
#include "club/places.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;
using chalkleaf::support::MemoryFileSystem;

namespace {

MemoryFileSystem disk_with_plans() {
  return MemoryFileSystem{
      {"/disk/quay/club.yaml", ""},
      {"/disk/quay/README.md", ""},
      {"/disk/quay/sessions/b.md", ""},
      {"/disk/quay/sessions/a.md", ""},
      {"/disk/quay/sessions/README.md", ""},
      {"/disk/quay/sessions/notes.txt", ""},
      {"/disk/quay/sessions/wrens/c.md", ""},
      {"/disk/quay/sessions/out/d.md", ""},
      {"/disk/quay/sessions/private/e.md", ""},
      {"/disk/quay/sessions/.git/f.md", ""},
      {"/disk/quay/parts/warm-up.md", ""},
      {"/disk/quay/plans/swifts.md", ""},
      {"/disk/loose/one.md", ""},
      {"/disk/loose/two.md", ""},
      {"/disk/loose/README.md", ""},
      {"/disk/loose/below/three.md", ""},
  };
}

std::string selected(const FileSystem& files, const Wanted& wanted) {
  const Selection selection = select_plans(files, wanted);
  std::string out;
  for (const PlanFile& plan : selection.plans) {
    const Root& root = selection.roots[plan.root];
    out += plan.path + " -> " + plan.sheets + (root.is_club ? " in " : " alone in ") + root.path +
           "\n";
  }
  for (const std::string& problem : selection.problems) out += "! " + problem + "\n";
  for (const Diagnostic& found : selection.diagnostics.all()) {
    out += found.name + ": " + found.message + "\n";
  }
  return out;
}

const std::string kWholeClub =
    "/disk/quay/plans/swifts.md -> /disk/quay/out/swifts in /disk/quay\n"
    "/disk/quay/sessions/a.md -> /disk/quay/out/a in /disk/quay\n"
    "/disk/quay/sessions/b.md -> /disk/quay/out/b in /disk/quay\n"
    "/disk/quay/sessions/wrens/c.md -> /disk/quay/out/wrens/c in /disk/quay\n";

}  // namespace

TEST_CASE("without arguments: the whole club one stands in, from anywhere in it") {
  CHECK(selected(disk_with_plans(), {"/disk/quay", {}, {}}) == kWholeClub);
  CHECK(selected(disk_with_plans(), {"/disk/quay/sessions/wrens", {}, {}}) == kWholeClub);
}

TEST_CASE("without arguments and without a club: what to do about it") {
  CHECK(
      selected(disk_with_plans(), {"/disk/loose", {}, {}}) ==
      "! no plan is named, and this folder is not in a club folder (one with a club.yaml); name a "
      "plan, such as ‘tuesday.md’, or a folder of plans\n");
  CHECK(selected(disk_with_plans(), {"/disk", {}, {}}) ==
        "! no plan is named, and this folder is not in a club folder (one with a club.yaml); there "
        "is one in ‘quay’: name it, or go there first\n");
}

TEST_CASE("a folder in a club: the plans below it; a plan named twice counts once") {
  CHECK(selected(disk_with_plans(), {"/disk", {"quay"}, {}}) == kWholeClub);
  CHECK(selected(disk_with_plans(),
                 {"/disk", {"quay/sessions/wrens", "quay/sessions/wrens/c.md"}, {}}) ==
        "/disk/quay/sessions/wrens/c.md -> /disk/quay/out/wrens/c in /disk/quay\n");
  CHECK(selected(disk_with_plans(), {"/disk", {"quay/parts"}, {}}) ==
        "! there are no plans in ‘quay/parts’: a club's plans are *.md files below its ‘sessions’ "
        "or ‘plans’ folder\n");
}

TEST_CASE("plans outside any club stand alone in their folder") {
  CHECK(selected(disk_with_plans(), {"/disk/loose", {"."}, {}}) ==
        "/disk/loose/one.md -> /disk/loose/out/one alone in /disk/loose\n"
        "/disk/loose/two.md -> /disk/loose/out/two alone in /disk/loose\n");
  CHECK(selected(disk_with_plans(), {"/disk", {"loose/below/three.md"}, {}}) ==
        "/disk/loose/below/three.md -> /disk/loose/below/out/three alone in /disk/loose/below\n");
}

TEST_CASE("what is not there is said, and the rest is still selected") {
  CHECK(selected(disk_with_plans(), {"/disk", {"loose/nine.md", "loose/one.md"}, {}}) ==
        "/disk/loose/one.md -> /disk/loose/out/one alone in /disk/loose\n"
        "! there is no file or folder ‘loose/nine.md’\n");
}

TEST_CASE("--out takes the sheets of all, and two plans never share a name there") {
  MemoryFileSystem files = disk_with_plans();
  files.put("/disk/quay/plans/a.md", "");
  CHECK(selected(files, {"/disk", {"quay/plans/a.md", "quay/sessions/a.md"}, "prints"}) ==
        "/disk/quay/plans/a.md -> /disk/prints/a in /disk/quay\n"
        "! ‘quay/sessions/a.md’ would be printed over ‘quay/plans/a.md’, as prints/a-card.pdf; "
        "rename one of them\n");
}

TEST_CASE("a plan may end in .md or .markdown in any case; a README is none") {
  const MemoryFileSystem files{
      {"/q/club.yaml", ""},           {"/q/sessions/a.MD", ""},      {"/q/sessions/b.markdown", ""},
      {"/q/sessions/c.Markdown", ""}, {"/q/sessions/readme.md", ""}, {"/q/sessions/README.MD", ""},
      {"/q/sessions/.hidden.md", ""}, {"/q/sessions/d.mdx", ""},
  };
  CHECK(selected(files, {"/q", {}, {}}) ==
        "/q/sessions/a.MD -> /q/out/a in /q\n"
        "/q/sessions/b.markdown -> /q/out/b in /q\n"
        "/q/sessions/c.Markdown -> /q/out/c in /q\n");
}

TEST_CASE("a plan saved with another ending is mentioned, with the name it should have") {
  const MemoryFileSystem files{
      {"/q/club.yaml", ""},
      {"/q/sessions/a.md", ""},
      {"/q/sessions/tuesday.md.txt", "anything"},
      {"/q/sessions/friday.txt", "\xEF\xBB\xBF---\r\ntitle: Friday\r\n---\r\n"},
      {"/q/sessions/notes.txt", "buy chalk\n---\n"},
      {"/q/sessions/README.txt", "# Read me\n"},
  };
  CHECK(selected(files, {"/q", {}, {}}) ==
        "/q/sessions/a.md -> /q/out/a in /q\n"
        "unreadable-file: sessions/friday.txt looks like a plan, but is not read as one\n"
        "unreadable-file: sessions/tuesday.md.txt looks like a plan, but is not read as one\n");
  const Selection selection = select_plans(files, {"/q", {}, {}});
  CHECK(selection.diagnostics.warning_count() == 2);
  CHECK(selection.diagnostics.all()[0].hint == "rename it to friday.md");
  CHECK(selection.diagnostics.all()[1].hint == "rename it to tuesday.md");
}

TEST_CASE("a part, a drill or the club's file, named, is told apart from plans") {
  MemoryFileSystem files = disk_with_plans();
  files.put("/disk/loose/parts/warm-up.md", "");
  const auto kinds = [&](const std::vector<std::string>& arguments) {
    const Selection selection = select_plans(files, {"/disk", arguments, {}});
    CHECK(selection.plans.empty());
    CHECK(selection.problems.empty());
    constexpr std::string_view kNames[] = {"part ", "drill ", "club "};
    std::string out;
    for (const SharedFile& file : selection.shared) {
      out += std::string(kNames[static_cast<std::size_t>(file.kind)]) + file.path + " in " +
             selection.roots[file.root].path + "\n";
    }
    return out;
  };
  CHECK(kinds({"quay/parts/warm-up.md", "quay/club.yaml", "quay/parts/../parts/warm-up.md"}) ==
        "club /disk/quay/club.yaml in /disk/quay\n"
        "part /disk/quay/parts/warm-up.md in /disk/quay\n");
  files.put("/disk/quay/drills/beam/walk.md", "");
  files.put("/disk/loose/drills/walk.md", "");
  CHECK(kinds({"quay/drills/beam/walk.md", "loose/drills/walk.md"}) ==
        "drill /disk/loose/drills/walk.md in /disk/loose\n"
        "drill /disk/quay/drills/beam/walk.md in /disk/quay\n");
  CHECK(kinds({"loose/parts/warm-up.md"}) == "part /disk/loose/parts/warm-up.md in /disk/loose\n");
}

TEST_CASE("links: folders are not followed, files only inside the club") {
  const TemporaryFolder folder("select-links");
  folder.put("club/club.yaml", "");
  folder.put("club/sessions/a.md", "");
  folder.put("elsewhere/secret.md", "");
  folder.link("club/sessions/inside.md", "a.md");
  folder.link("club/sessions/out-of-it.md", "../../elsewhere/secret.md");
  folder.link("club/sessions/round", "..");
  folder.link("club/plans", "../elsewhere");
  const RealFileSystem files;
  const Selection selection = select_plans(files, {folder.str(), {"club"}, {}});
  std::string names;
  for (const PlanFile& plan : selection.plans) names += path_from(folder.str(), plan.path) + "\n";
  CHECK(names == "club/sessions/a.md\nclub/sessions/inside.md\n");
  REQUIRE(selection.diagnostics.all().size() == 1);
  CHECK(selection.diagnostics.all()[0].name == "outside-folder");
  CHECK(selection.diagnostics.all()[0].message ==
        "club/sessions/out-of-it.md is a link that leads out of the club's folder");
}

TEST_CASE("a link among loose plans is followed only inside their folder") {
  const TemporaryFolder folder("select-loose-links");
  folder.put("loose/a.md", "");
  folder.put("elsewhere/secret.md", "");
  folder.link("loose/inside.md", "a.md");
  folder.link("loose/out-of-it.md", "../elsewhere/secret.md");
  const RealFileSystem files;
  const Selection selection = select_plans(files, {folder.str(), {"loose"}, {}});
  std::string names;
  for (const PlanFile& plan : selection.plans) names += path_from(folder.str(), plan.path) + "\n";
  CHECK(names == "loose/a.md\nloose/inside.md\n");
  REQUIRE(selection.diagnostics.all().size() == 1);
  CHECK(selection.diagnostics.all()[0].message ==
        "loose/out-of-it.md is a link that leads out of the folder");
}

TEST_CASE("no plan's name leads its sheets out of the club, hides them or reaches a terminal") {
  MemoryFileSystem files = disk_with_plans();
  const auto sheets = [&](const std::string& name) {
    files.put("/disk/quay/sessions/" + name, "");
    const Selection selection = select_plans(files, {"/disk/quay", {"sessions/" + name}, {}});
    REQUIRE(selection.plans.size() == 1);
    return selection.plans[0].sheets;
  };
  CHECK(sheets("...md") == "/disk/quay/out/plan");
  CHECK(sheets("..md") == "/disk/quay/out/plan");
  CHECK(sheets("-.md") == "/disk/quay/out/plan");
  CHECK(sheets(".....md") == "/disk/quay/out/plan");
  CHECK(sheets("-rf.md") == "/disk/quay/out/rf");
  CHECK(sheets(".tuesday. .md") == "/disk/quay/out/tuesday");
  CHECK(sheets("a\x1b[2J\nb.md") == "/disk/quay/out/a_[2J_b");
  CHECK(sheets("week 1.5.md") == "/disk/quay/out/week 1.5");
  CHECK(sheets("Übung.md") == "/disk/quay/out/Übung");
  CHECK(sheets("a\x1b"
               "b/-c/d.md") == "/disk/quay/out/a_b/c/d");
}

TEST_CASE("a folder too deep to be looked into is named") {
  MemoryFileSystem files = disk_with_plans();
  std::string deep = "sessions";
  for (int i = 0; i < 33; ++i) deep += "/d";
  files.put("/disk/quay/" + deep + "/lost.md", "");
  CHECK(selected(files, {"/disk/quay", {}, {}}) ==
        kWholeClub + "unreadable-file: " + deep +
            " lies more than 32 folders deep; what is in it is not read\n");
}
