#include "source/cost.h"

#include <catch2/catch.hpp>

#include "source/read.h"

using namespace chalkleaf;
using source::costly_shape;

namespace {

std::string repeated(const std::string& piece, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += piece;
  return out;
}

}  // namespace

TEST_CASE("shapes that cost a parser more than their size are refused with a reason") {
  // Each took seconds or gigabytes before it was refused.
  CHECK(costly_shape("[a]: " + std::string(131'072, 'x') + "\n\n" + repeated("[a]", 43'690)));
  CHECK(costly_shape(repeated("- ", 65'536) + "a" + std::string(131'072, '\n')));
  CHECK(costly_shape("a " + repeated("<?", 131'072)));
  CHECK(costly_shape(repeated("<!A ", 3'000)));
  Diagnostics diagnostics;
  CHECK(source::load_text("p.md", repeated("<!A ", 3'000), diagnostics) == nullptr);
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(diagnostics.all()[0].message ==
        "this file cannot be read: it opens more HTML than a plan may");
}

TEST_CASE("a long honest plan is far from them") {
  const std::string drill =
      "- [Dish hold](#dish): 3 x 20 s\n  - cue: long\n    - > deep\n<!-- mine -->\n";
  CHECK_FALSE(costly_shape(repeated(drill, 500)));
  CHECK_FALSE(costly_shape("[a]: b.md\n" + repeated("[a] ", 5'000)));
  CHECK_FALSE(costly_shape(""));
}
