// What a coach set off stays set off where it is printed as text, and nowhere else.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("text keeps its emphasis") {
  CHECK(read_body_text(R"(Hold *still*, **very ½ *still***. <!-- *mine* --> `co*de`

- a *b*

> **Safety.** Clear *the floor.* An **adult
> stays**. **One. Two.**

## P

### The *long* one

- Dish hold: 3
  - cue: push **tall** &amp; *high*
  - easier: **knees** bent
  - harder: *arms* up
  - note: see [*here*](https://example.org/x) **now**
  - say *it*
)") == R"(before paragraph Hold *still*, **very ½ still**.  co*de
before item a *b*
safety Clear *the floor.* An **adult stays**. **One.** **Two.**
subheading The *long* one
drill Dish hold | 3 reps
  cue push **tall** & *high*
  easier **knees** bent
  harder *arms* up
  paragraph see *here* (https://example.org/x) **now**
  item say *it*
)");
}

TEST_CASE("each sentence of a safety text has its own emphasis") {
  const ReadPlan plan = read_plan(plan_with("> **Safety: a b. C** d *e*.\n\n## P\n"));
  REQUIRE(plan.session.safety.size() == 1);
  const auto& sentences = plan.session.safety[0].sentences;
  REQUIRE(sentences.size() == 2);
  CHECK(marked(sentences[0]) == "**a b.**");
  CHECK(marked(sentences[1]) == "**C** d *e*.");
}

TEST_CASE("names have a type of their own") {
  const ReadPlan plan = read_plan(
      "---\nplace: gym\n---\n# *My* plan\n\n## **Bar** work\n\n- **Dish** hold or *arch*: 3\n"
      "  - uses: **towel**, held *tight*\n  - at: *beam*\n  - record: **seconds**\n"
      "  - without **towel**: *Dish*: 3\n- Put away: **hoops**, *all*\n\n[The *part*](p.md)\n");
  CHECK(plan.session.title.emphasis.empty());
  const Part& part = plan.session.parts.at(0);
  CHECK(part.title.text == "Bar work");
  CHECK(part.title.emphasis.empty());
  const Drill& drill = *drills_of(part).at(0);
  for (const Words& words :
       {drill.name, drill.choices.at(0), drill.choices.at(1), drill.uses.at(0).kit,
        drill.uses.at(0).how, drill.at, drill.record, drill.substitutes.at(0).kit,
        drill.substitutes.at(0).name, std::get<KitMove>(part.steps.at(1)).kit.at(0),
        std::get<PartLink>(part.steps.at(2)).text}) {
    INFO(words.text);
    CHECK(!words.text.empty());
    CHECK(words.emphasis.empty());
  }
}

}  // namespace
}  // namespace chalkleaf::plan
