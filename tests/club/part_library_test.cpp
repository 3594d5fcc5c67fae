// Shared parts: found, read once, and never from outside the club.
#include "club/part_library.h"

#include <catch2/catch.hpp>
#include <thread>

#include "club/folders.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;
using chalkleaf::support::MemoryFileSystem;
using plan::LinkProblem;

namespace {

std::string found_part(const PartLibrary& parts, const std::string& target) {
  const auto part = parts.find("/c/sessions/a.md", target);
  if (part) return (*part)->path + " shown as " + (*part)->file.source->path();
  switch (part.error().kind) {
    case LinkProblem::Kind::kMissing:
      return "missing " + part.error().suggestion;
    case LinkProblem::Kind::kOutside:
      return "outside";
    case LinkProblem::Kind::kUnreadable:
      return "unreadable: " + part.error().diagnostics.all().at(0).name;
  }
  return {};
}

MemoryFileSystem disk_with_parts() {
  return MemoryFileSystem{{"/c/parts/warm-up.md", "- Jog: 1 min\n"},
                          {"/c/parts/cool down.md", "- Sway: 1 min\n"},
                          {"/c/parts/binary.md", std::string("a\0b", 3)},
                          {"/c/sessions/a.md", ""},
                          {"/elsewhere/x.md", ""}};
}

}  // namespace

TEST_CASE("a link is followed from the file it stands in") {
  const MemoryFileSystem files = disk_with_parts();
  const PartLibrary parts(files, "/c", "/c/sessions");
  CHECK(found_part(parts, "../parts/warm-up.md") ==
        "/c/parts/warm-up.md shown as ../parts/warm-up.md");
  CHECK(found_part(parts, "../parts/cool down.md") ==
        "/c/parts/cool down.md shown as ../parts/cool down.md");
}

TEST_CASE("a link out of the club is refused, whether or not something is there") {
  const MemoryFileSystem files = disk_with_parts();
  const PartLibrary parts(files, "/c", "/c");
  for (const char* target :
       {"/elsewhere/x.md", "../../elsewhere/x.md", "../../nothing.md", "/c/parts/warm-up.md"}) {
    INFO(target);
    CHECK(found_part(parts, target) == "outside");
  }
  CHECK(files.reads().empty());
}

TEST_CASE("a link to nothing suggests what is close") {
  const MemoryFileSystem files = disk_with_parts();
  const PartLibrary parts(files, "/c", "/c");
  CHECK(found_part(parts, "../parts/warmup.md") == "missing ../parts/warm-up.md");
  CHECK(found_part(parts, "warm-up.md") == "missing ../parts/warm-up.md");
  CHECK(found_part(parts, "../parts/handstands.md") == "missing ");
  CHECK(found_part(parts, "") == "missing ");
  CHECK(found_part(parts, "../parts") == "missing ");
  CHECK(found_part(parts, "a%00b.md") == "missing ");
}

TEST_CASE("a part that is not text is said to be unreadable") {
  const MemoryFileSystem files = disk_with_parts();
  const PartLibrary parts(files, "/c", "/c");
  CHECK(found_part(parts, "../parts/binary.md") == "unreadable: unreadable-file");
}

TEST_CASE("a part is read once, by however many workers") {
  const MemoryFileSystem files = disk_with_parts();
  const PartLibrary parts(files, "/c", "/c");
  std::vector<const plan::FoundPart*> seen(8);
  {
    std::vector<std::jthread> threads;
    for (auto& place : seen) {
      threads.emplace_back([&parts, &place] {
        place = parts.find("/c/sessions/a.md", "../parts/warm-up.md")->get();
      });
    }
  }
  for (const plan::FoundPart* part : seen) CHECK(part == seen.front());
}

TEST_CASE("a symbolic link does not lead out of the club either") {
  const TemporaryFolder folder("part-links");
  folder.put("club/parts/warm-up.md", "- Jog: 1 min\n");
  folder.put("secret.md", "- Secret: 1 min\n");
  folder.link("club/parts/out.md", "../../secret.md");
  folder.link("club/parts/folder", "../..");
  folder.link("club/parts/in.md", "warm-up.md");
  const RealFileSystem files;
  const PartLibrary parts(files, folder / "club", folder.str());
  const std::string from = folder / "club/sessions/a.md";
  CHECK(parts.find(from, "../parts/out.md").error().kind == LinkProblem::Kind::kOutside);
  CHECK(parts.find(from, "../parts/folder/secret.md").error().kind == LinkProblem::Kind::kOutside);
  CHECK(parts.find(from, "../parts/in.md").value()->path == folder / "club/parts/warm-up.md");
}
