// Where front matter ends and the body begins.
#include "source/front_matter.h"

#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::source {
namespace {

/// Front matter and body as text, and what was said.
TEST_CASE("front matter stands between lines of three hyphens, with any line end") {
  CHECK(parted("---\na: b\n---\nc") == "front [a: b\n] [c] ");
  CHECK(parted("---  \na: b\n...\nc\n") == "front [a: b\n] [c\n] ");
  CHECK(parted("\xEF\xBB\xBF---\r\na: b\r\n---\r\nc\r\n") == "front [a: b\r\n] [c\r\n] ");
  CHECK(parted("---\ra: b\r---\rc\r") == "front [a: b\r] [c\r] ");
  CHECK(parted("---\n---\n") == "front [] [] ");
  CHECK(parted("---\na: b\n---") == "front [a: b\n] [] ");
}

TEST_CASE("a file may have none") {
  CHECK(parted("") == "[] [] ");
  CHECK(parted("a\n---\nb\n---\n") == "[] [a\n---\nb\n---\n] ");
  CHECK(parted("----\na\n---\n") == "[] [----\na\n---\n] ");
  CHECK(parted("...\na\n---\n") == "[] [...\na\n---\n] ");
  CHECK(parted("\xEF\xBB\xBF# a\n") == "[] [# a\n] ");
}

TEST_CASE("front matter that is not closed ends where the text seems to begin") {
  const std::string said =
      "p.md:1:1: error: the front matter that begins here is not closed [bad-value]; put a line of "
      "three hyphens, `---`, after its last entry\n";
  CHECK(parted("---\na: b\n\nc\n") == "front [a: b\n] [\nc\n] " + said);
  CHECK(parted("---\na: b\n# c\n") == "front [a: b\n] [# c\n] " + said);
  CHECK(parted("---\na: b") == "front [a: b] [] " + said);
  CHECK(parted("---") == "front [] [] " + said);
}

}  // namespace
}  // namespace chalkleaf::source
