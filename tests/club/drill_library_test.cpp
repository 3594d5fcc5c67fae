// A club's drills: which files are read, what is said about them and to whom.
#include "club/drill_library.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/folders.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;
using chalkleaf::support::MemoryFileSystem;

namespace {

std::string said_of_drills(const Diagnostics& all) {
  std::string out;
  for (const Diagnostic& found : all.sorted()) {
    out += render(found, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

/// Names in the order of the book, and what is said.
std::string read(const FileSystem& files, const std::string& root, std::size_t jobs = 1) {
  const DrillLibrary library = load_drills({files, root, root, jobs}, nullptr);
  std::string out;
  for (const plan::LibraryDrill& drill : library.book->all()) out += drill.name.text + "\n";
  return out + said_of_drills(library.folder) + said_of_drills(library.drills);
}

std::string titled(const std::string& title) { return "---\ntitle: " + title + "\n---\n"; }

}  // namespace

TEST_CASE("all Markdown files below drills are read, in the order of their paths") {
  const MemoryFileSystem files{
      {"/quay/drills/b.md", titled("B")},         {"/quay/drills/README.md", "x"},
      {"/quay/drills/.hidden.md", titled("H")},   {"/quay/drills/.git/x.md", titled("G")},
      {"/quay/drills/private/x.md", titled("P")}, {"/quay/drills/a/z.markdown", titled("A Z")},
      {"/quay/drills/a-b.md", titled("A B")},     {"/quay/drills/dish.md.txt", titled("T")},
      {"/quay/parts/c.md", titled("C")}};
  CHECK(read(files, "/quay") ==
        "A B\nA Z\nB\n"
        "warning: drills/dish.md.txt looks like a drill, but is not read as one "
        "[unreadable-file]; rename it to dish.md\n");
  CHECK(read(MemoryFileSystem{{"/quay/club.yaml", ""}}, "/quay").empty());
}

TEST_CASE("the library is the same from one worker and from several", "[threads]") {
  MemoryFileSystem files;
  for (int i = 0; i < 100; ++i) {
    files.put("/quay/drills/" + std::to_string(i) + ".md",
              titled("Drill " + std::to_string(i % 70)) + "- esier: x\n");
  }
  const std::string alone = read(files, "/quay", 1);
  CHECK(alone.find("[duplicate-drill]") != std::string::npos);
  CHECK(read(files, "/quay", 4) == alone);
}

TEST_CASE("a file that cannot be read is a drill all the same, of a name nobody knows") {
  const MemoryFileSystem files{{"/quay/drills/a.md", "\xFF"},
                               {"/quay/drills/b.md", titled("B") + std::string(70'000, 'x')}};
  const DrillLibrary library = load_drills({files, "/quay", "/quay", 1}, nullptr);
  REQUIRE(library.book->all().size() == 2);
  CHECK_FALSE(library.book->all()[0].get().name_known);
  CHECK_FALSE(library.book->all()[1].get().name_known);
  CHECK_FALSE(library.folder.has_errors());
  CHECK(said_of_drills(library.drills) ==
        "drills/a.md:1:1: error: this file cannot be read: the byte 0xFF here is not UTF-8 "
        "[unreadable-file]; open the file in your text editor and save it as UTF-8\n"
        "drills/b.md:1:1: error: this drill is larger than 64 KB [unreadable-file]; a drill is a "
        "dozen lines of text; check that this is the right file\n");
}

TEST_CASE("number, size and depth are bounded, and then the club is not printed") {
  MemoryFileSystem many;
  for (int i = 0; i < 2'001; ++i) many.put("/quay/drills/" + std::to_string(i) + ".md", "");
  const DrillLibrary library = load_drills({many, "/quay", "/quay", 1}, nullptr);
  CHECK(library.book->all().size() == 2'000);
  CHECK(said_of_drills(library.folder) ==
        "error: drills has more than 2000 drills [unreadable-file]; keep those the club uses\n");

  MemoryFileSystem large;
  for (int i = 0; i < 200; ++i) {
    large.put("/quay/drills/" + std::to_string(i) + ".md", std::string(60'000, 'x'));
  }
  CHECK(said_of_drills(load_drills({large, "/quay", "/quay", 1}, nullptr).folder) ==
        "error: the drills of the club are more than 8 MB of text [unreadable-file]; keep those "
        "the club uses\n");

  std::string deep = "/quay/drills";
  for (int i = 0; i < 12; ++i) deep += "/a";
  CHECK(load_drills({MemoryFileSystem{{deep + "/x.md", ""}}, "/quay", "/quay", 1}, nullptr)
            .folder.has_errors());
}

TEST_CASE("links that lead out of the club are not followed") {
  const TemporaryFolder folder("drill-links");
  const RealFileSystem files;
  folder.put("elsewhere/x.md", titled("X"));
  folder.put("quay/parts/y.md", titled("Y"));
  folder.put("quay/drills/a.md", titled("A"));
  folder.link("quay/drills/x.md", folder / "elsewhere/x.md");
  folder.link("quay/drills/y.md", folder / "quay/parts/y.md");
  folder.link("quay/drills/more", folder / "elsewhere");
  CHECK(read(files, folder / "quay") ==
        "A\nY\n"
        "error: drills/x.md is a link that leads out of the club's folder [outside-folder]; put "
        "the drill itself there\n");
  folder.link("linked/drills", folder / "elsewhere");
  CHECK(read(files, folder / "linked") ==
        "error: drills is a link, and links to folders are not followed [outside-folder]; keep "
        "the club's drills in a folder ‘drills’, one file a drill\n");
  folder.put("flat/drills", "x");
  CHECK(read(files, folder / "flat") ==
        "error: drills is not a folder [unreadable-file]; keep the club's drills in a folder "
        "‘drills’, one file a drill\n");
}
