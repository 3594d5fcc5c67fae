// Pictures in a line of their own.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("an image in a line of its own is a picture, within a text it is its text") {
  CHECK(read_body_text(R"(![the *hall*](hall.png)

> ![a sign](sign.png) Mind the step.

## P

- Dish hold: 3
  ![two children](two.png)
  - cue: low
  - ![three](<a b.png>)

  ![](four.png)
- ![five](five.png)

![six](six.png)
text ![seven](seven.png) here
![eight](8.png) ![nine][n]

[![ten](ten.png)](https://example.org)

[n]: 9.png
)") == R"(before picture the hall <hall.png>
safety a sign Mind the step.
drill Dish hold | 3 reps
  cue low
  picture two children <two.png>
  picture three <a b.png>
  picture  <four.png>
picture five <five.png>
picture six <six.png>
paragraph text seven here
picture eight <8.png>
picture nine <9.png>
paragraph ten (https://example.org)
)");
}

TEST_CASE("a picture's place is the whole image") {
  const ReadPlan plan = read_plan(plan_with("## P\n\n![](a.png) ![b](b.png \"title\")\n"));
  const auto& steps = plan.session.parts.at(0).steps;
  REQUIRE(steps.size() == 2);
  CHECK(std::get<Note>(steps[0]).words.span.text() == "![](a.png)");
  CHECK(std::get<Note>(steps[1]).words.span.text() == "![b](b.png \"title\")");
}

TEST_CASE("a picture right below a list runs on without a message") {
  CHECK(read_body_text("## P\n\n- Dish hold: 3\n![two](two.png)\n") ==
        "drill Dish hold | 3 reps\n  picture two <two.png>\n");
  CHECK(read_body_text("## P\n\n- Dish hold: 3\n  - cue: low\n    ![two](two.png)\n") ==
        "drill Dish hold | 3 reps\n  cue low\n  picture two <two.png>\n");
}

}  // namespace
}  // namespace chalkleaf::plan
