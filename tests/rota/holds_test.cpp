// Whether a grid keeps each kind of rule, on one grid that can be checked by eye.
#include "rota/holds.h"

#include <catch2/catch.hpp>

#include "grids.h"
#include "rota/mentions.h"

using namespace chalkleaf;
using rota_test::Text;

TEST_CASE("rota rules: kept and not kept") {
  const Text text(
      "| | vault | bars | beam | floor |\n|-|-|-|-|-|\n| 5.00 | A | B | C | D |\n| 5.30 | D | A | "
      "B | C |\n"
      "| 6.00 | C | D | A | B |\n| 6.30 | B | C | D | A |\n");
  const rota::Rotation all = text.one();
  const auto kept = [&](std::string_view words) {
    const rota::Rule rule = rota::read_rule(rota_test::english(), all, words);
    REQUIRE(rule.kind != rota::Rule::Kind::kUnread);
    return !rota::breaks(all, rule).has_value();
  };
  CHECK(kept("D not first on vault"));
  CHECK_FALSE(kept("A not first on vault"));
  CHECK_FALSE(kept("B not last on vault"));
  CHECK(kept("B last on vault"));
  CHECK_FALSE(kept("bars before floor for C"));
  CHECK(kept("bars before floor for A"));
  CHECK_FALSE(kept("bars before floor"));
  CHECK(kept("floor not straight after vault"));
  CHECK_FALSE(kept("bars not straight after vault"));
  CHECK(kept("A on beam in the first 3"));
  CHECK_FALSE(kept("A on beam in the first 2"));
  CHECK(kept("beam before 6.30 for A"));
  CHECK_FALSE(kept("A and B not side by side"));
  CHECK(kept("A and C not side by side"));
  CHECK_FALSE(kept("one crash mat for vault and floor: A, D"));
  CHECK(kept("one crash mat for vault and floor: A, C"));
  CHECK(kept("all the same way round"));
  CHECK_FALSE(kept("balanced"));
  CHECK(kept("change hall once"));
}
