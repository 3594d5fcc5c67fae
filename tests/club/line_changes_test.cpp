// The changes of a text, taken by `patch` and compared with `diff -u`.
#include "club/line_changes.h"

#include <catch2/catch.hpp>

#include "club/folders.h"
#include "support/random.h"
#include "support/shell.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

TEST_CASE("line changes: nothing, a line, two places, an end without a line break") {
  CHECK(line_changes("a.md", "x\n", "x\n").empty());
  CHECK(line_changes("a.md", "", "x\n") == "--- a.md\n+++ a.md\n@@ -0,0 +1 @@\n+x\n");
  CHECK(line_changes("a.md", "x\ny\n", "x\nz\n") ==
        "--- a.md\n+++ a.md\n@@ -1,2 +1,2 @@\n x\n-y\n+z\n");
  CHECK(line_changes("a.md", "x", "x\n") ==
        "--- a.md\n+++ a.md\n@@ -1 +1 @@\n-x\n\\ No newline at end of file\n+x\n");
  const std::string far =
      line_changes("a.md", "1\n2\n3\n4\n5\n6\n7\n8\n9\n0\n", "a\n2\n3\n4\n5\n6\n7\n8\n9\nb\n");
  CHECK(far ==
        "--- a.md\n+++ a.md\n@@ -1,4 +1,4 @@\n-1\n+a\n 2\n 3\n 4\n@@ -7,4 +7,4 @@\n 7\n 8\n "
        "9\n-0\n+b\n");
}

TEST_CASE("line changes: patch makes the new text of the old one, with no more lines than diff") {
  const TemporaryFolder folder("line-changes");
  const auto changed_lines = [](const std::string& text) {
    std::size_t out = 0;
    for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1)
      out += (text[at] == '+' || text[at] == '-') && text.compare(at, 3, "+++") != 0 &&
                     text.compare(at, 3, "---") != 0
                 ? 1
                 : 0;
    return out;
  };
  for (unsigned seed = 1; seed <= 40; ++seed) {
    support::Random random(seed);
    const auto text = [&] {
      std::string out;
      for (std::size_t n = random.below(40); n > 0; --n)
        out += std::string(1, static_cast<char>('a' + random.below(5))) + "\n";
      if (!out.empty() && random.below(4) == 0) out.pop_back();
      return out;
    };
    const std::string before = text();
    const std::string after = text();
    INFO(seed << "\n" << before << "--\n" << after);
    folder.put("old", before);
    folder.put("new", after);
    const std::string changes = line_changes("old", before, after);
    folder.put("changes", changes);
    const std::string there = folder.str();
    if (before == after) continue;
    CHECK(changed_lines(changes) <=
          changed_lines(support::run("cd " + there + " && diff -u --minimal old new").output));
    REQUIRE(support::run("cd " + there + " && patch -s old changes 2>&1").status == 0);
    CHECK((folder.has("old") ? folder.read("old") : std::string()) == after);
  }
}
