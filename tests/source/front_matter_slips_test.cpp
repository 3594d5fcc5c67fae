// What word processors and hurried fingers make of the lines round front matter: common practice,
// no source.
#include <catch2/catch.hpp>

#include "reading.h"
#include "source/front_matter.h"

namespace chalkleaf::source {
namespace {

/// Front matter and body as text, and what was said.
TEST_CASE("empty lines, spaces and long dashes are understood where entries follow") {
  const std::string wanted = "front [a: b\n] [c\n] ";
  for (const char* text :
       {"\n\n---\na: b\n---\nc\n", " \t\n---\na: b\n---\nc\n", "\xEF\xBB\xBF\n---\na: b\n---\nc\n",
        " ---\na: b\n ---\nc\n", "\t---\na: b\n---\nc\n", "———\na: b\n———\nc\n", "—\na: b\n—\nc\n",
        "–––\na: b\n---\nc\n", "–-\na: b\n—-\nc\n", "-----\na: b\n----\nc\n",
        "---\na: b\n———\nc\n"}) {
    INFO(text);
    CHECK(parted(text) == wanted);
  }
}

TEST_CASE("dashes are a rule of the body where no entry follows") {
  for (const char* text : {"-----\nWelcome.\n", "\n---\n\nWelcome.\n", "—\n", "–––\n# Bars: now\n",
                           "\n---\n", "--\na: b\n--\n"}) {
    INFO(text);
    CHECK(parted(text) == fmt::format("[] [{}] ", text));
  }
}

TEST_CASE("entries without the lines round them are read, and the lines asked for") {
  CHECK(parted("title: T\nplace: gym\n---\nc\n") ==
        "front [title: T\nplace: gym\n] [c\n] p.md:1:1: error: the front matter has no line `---` "
        "before it [bad-value]; put a line of three hyphens, `---`, above this line\n");
  CHECK(parted("\nplace: gym\nequipment:\n  mat: thick\n\nc\n") ==
        "front [place: gym\nequipment:\n  mat: thick\n] [\nc\n] p.md:2:1: error: the front matter "
        "has no lines `---` round it [bad-value]; put a line of three hyphens, `---`, above this "
        "line, and another one after the last entry\n");
  CHECK(parted("Today: bars\n\nc\n") == "[] [Today: bars\n\nc\n] ");
  CHECK(parted("place: gym\nand so on\n") == "[] [place: gym\nand so on\n] ");
  CHECK(parted("# T\nplace: gym\n---\n") == "[] [# T\nplace: gym\n---\n] ");
}

}  // namespace
}  // namespace chalkleaf::source
