// Tables: GitHub Flavored Markdown, 4.10.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a table keeps its head, every cell and the emphasis in them") {
  CHECK(read_body_text(R"(## P

| **Beam** | who | |
|---|:-:|---|
| 1 | *Wrens* \| é | |
|  |  |  |
| 2 |
| 3 | a | b | more |

- Dish hold: 3

  | a |
  |---|
  | b |
)") == R"(row head [**Beam**] [who] []
row [1] [*Wrens* | é] []
row [] [] []
row [2] [] []
row [3] [a] [b] [more]
drill Dish hold | 3 reps
  row head [a]
  row [b]
)");
  const ReadPlan plan =
      read_plan(plan_with("## P\n\n| *a* | b |\n|---|---|\n|  | **c** |\n| d | **e** |\n"));
  const auto& steps = plan.session.parts.at(0).steps;
  REQUIRE(steps.size() == 3);
  const Note& row = std::get<Note>(steps[2]);
  CHECK(row.words.text == "d · e");
  CHECK(marked(row.words) == "d · **e**");
  CHECK(row.words.span.text() == "| d | **e** |");
  CHECK(row.cells.at(1).span.text() == "e");
}

TEST_CASE("a head without words is none") {
  CHECK(read_body_text("## P\n\n| | |\n|---|---|\n| a | b |\n") == "row [a] [b]\n");
}

}  // namespace
}  // namespace chalkleaf::plan
