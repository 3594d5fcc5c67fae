// Parts by themselves: their language and their links, no more.
#include "club/shared_files.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/part_library.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

std::string checked(const MemoryFileSystem& files, const std::string& name) {
  const PartLibrary library(files, "/quay", "/quay");
  std::string out;
  const Diagnostics all = check_part(files, "/quay/" + name, name, library);
  for (const Diagnostic& found : all.sorted()) {
    out += render(found, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

}  // namespace

TEST_CASE("a part needs no title and no place, and its links are followed") {
  const MemoryFileSystem files{{"/quay/parts/a.md", "- Jog: 2 min\n\n[More](b.md)\n"},
                               {"/quay/parts/b.md", "- Reach: 2 x 8\n"}};
  CHECK(checked(files, "parts/a.md").empty());
}

TEST_CASE("a part's own mistakes, those of a part it links to, and a link to nothing") {
  const MemoryFileSystem files{
      {"/quay/parts/a.md", "- Jog: 2 mins at most\n\n[More](b.md)\n\n[Gone](no-such-file.md)\n"},
      {"/quay/parts/b.md", "- Reach: lots\n"}};
  const std::string found = checked(files, "parts/a.md");
  INFO(found);
  CHECK(found.starts_with("parts/a.md:1:8: error: "));
  CHECK(found.find("parts/a.md:5:1: error: there is no part at ‘no-such-file.md’") !=
        std::string::npos);
  CHECK(found.find("parts/b.md:1:10: error: ") != std::string::npos);
}

TEST_CASE("a part that links to itself, and one that is not there") {
  const MemoryFileSystem files{{"/quay/parts/a.md", "[Again](a.md)\n"}};
  CHECK(checked(files, "parts/a.md").find("[part-cycle]") != std::string::npos);
  CHECK(checked(files, "parts/b.md") ==
        "parts/b.md:1:1: error: this file cannot be read: there is no such file [unreadable-file]; "
        "check the name and the folder\n");
}
