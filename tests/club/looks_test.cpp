// Which look is taken, from where, and what is said of one that cannot be.
#include "club/looks.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "support/memory_files.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;

namespace {

std::string shipped(const char* name) {
  const RealFileSystem files;
  return files.read(support::repository() + "/themes/" + name, 1 << 20).value();
}

std::unique_ptr<support::MemoryFileSystem> files_with(std::map<std::string, std::string> more) {
  for (const char* name : {"classic.yaml", "large-print.yaml"})
    more[std::string("/data/themes/") + name] = shipped(name);
  auto files = std::make_unique<support::MemoryFileSystem>();
  for (const auto& [path, text] : more) files->put(path, text);
  return files;
}

std::string said_of_looks(const Diagnostics& found) {
  std::string out;
  for (const Diagnostic& one : found.sorted())
    out += render(one, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("a club's own look goes before a shipped one of its name, and may be like it") {
  const auto files =
      files_with({{"/club/looks/ours.yaml",
                   "name: ours\nabout: ours\nlike: classic\ncolours: {main: '#402010'}\n"},
                  {"/club/looks/large-print.yaml", "name: own\nabout: own\nlike: classic\n"},
                  {"/club/looks/notes.txt", "no look"}});
  const Looks looks(*files, {{"/data"}, "/club", "/club"}, {});
  CHECK(looks.names() == std::vector<std::string>{"classic", "large-print", "ours"});
  Diagnostics found;
  CHECK(looks.find("ours", found)->colour(sheet::Use::kMain) == Colour{0x40, 0x20, 0x10});
  CHECK(looks.find("large-print", found)->name == "own");
  CHECK(looks.find("classic", found)->name == "classic");
  CHECK(looks.find("classic", found) == looks.find("Classic", found));  // read once
  CHECK(said_of_looks(found).empty());
}

TEST_CASE("a name is forgiven its capitals and spaces, and a slip is met with what was meant") {
  const auto files = files_with({});
  const Looks looks(*files, {{"/data"}, "", "/"}, {});
  CHECK(looks.known("Large Print") == "large-print");
  CHECK(looks.known("large_print") == "large-print");
  CHECK(looks.known("largeprint").empty());
  CHECK(looks.hint("largeprint") == "did you mean ‘large-print’?");
  CHECK(looks.hint("zebra") == "there are classic and large-print");
  Diagnostics found;
  CHECK(looks.find("../themes/classic", found) == nullptr);
}

TEST_CASE("a broken look is said to be so at its place, each time it is asked for") {
  const auto files =
      files_with({{"/club/looks/pale.yaml",
                   "name: pale\nabout: pale\nlike: classic\ncolours:\n  ink: '#999999'\n"}});
  const Looks looks(*files, {{"/data"}, "/club", "/club"}, {});
  for (int i = 0; i < 2; ++i) {
    Diagnostics found;
    CHECK(looks.find("pale", found) == nullptr);
    CHECK_THAT(said_of_looks(found),
               Catch::Contains("looks/pale.yaml:5:8: error: ‘ink’ on the paper is "));
  }
}

TEST_CASE("a club's colours are in every look of it") {
  const auto files = files_with({});
  const Looks looks(*files, {{"/data"}, "", "/"}, {{"#5a1f1f", {}}, {}});
  Diagnostics found;
  for (const char* name : {"classic", "large-print"})
    CHECK(looks.find(name, found)->colour(sheet::Use::kMain) == Colour{0x5a, 0x1f, 0x1f});
  CHECK(said_of_looks(found).empty());
}
