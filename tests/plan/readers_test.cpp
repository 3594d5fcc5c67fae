// Notes for one reader: on the coach's card alone, or on the home sheet alone.
#include <catch2/catch.hpp>

#include "outline.h"
#include "plan/readers.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("every label says who a text is for") {
  for (const char* label : {"Coach",
                            "coach",
                            "Coaches",
                            "For coaches",
                            "For the coach",
                            "For the coaches",
                            "To coaches",
                            "Note for coaches",
                            "Notes for the coach",
                            "Coaches only",
                            "Coach’s note",
                            "COACH",
                            "All coaches",
                            " Coach ",
                            "Coaching note",
                            "Coaches’ note",
                            "Lead coach",
                            "Note (coach)",
                            "**Coach**",
                            "Not for families"}) {
    INFO(label);
    const auto found = reader_label(fmt::format("{}: x", label));
    REQUIRE(found);
    CHECK(found->reader == Note::For::kCoach);
  }
  for (const char* label :
       {"Family", "Families", "For families", "For the family", "Parents", "For parents", "Parent",
        "Parents and carers", "For all parents and carers", "Carers", "Parents only",
        "Note to parents", "At home", "Mums and dads", "Parents, please"}) {
    INFO(label);
    const auto found = reader_label(fmt::format("{}: x", label));
    if (std::string_view(label).find(',') != std::string_view::npos) {
      CHECK(!found);
      continue;
    }
    REQUIRE(found);
    CHECK(found->reader == Note::For::kFamily);
  }
  for (const char* text : {"Coach stands by the beam", "Coach-led: x", "Coaching: x",
                           "The coach says: x", "Coach and gymnast: x", "Family game: 5 min",
                           "x: Coach: y", "", ":", "Coaching", "For: x", "Everybody: x"}) {
    INFO(text);
    CHECK(!reader_label(text));
  }
}

TEST_CASE("a text with a label is for one reader, its label taken off") {
  CHECK(read_body_text(R"(Coach: stand by the *beam*.
Family: clear the floor.
All smile.

**Parents:** thank you.

- Coach: chalk
- water

> Coach: never alone.

## P

**For families: this** is play.

Ask the
coach: she knows.

- Coach: watch
  Family: look
- Coach: 5 min
- Dish hold: 3
  - coach: stand *by*
  - Family: clear
  - For the coach: count
  - **Parents:** well done
  - family:
    - one
    - two
  - Coach stands by the beam

  Coach: last.

| Coach: a | b |
|---|---|
)") == R"(before paragraph for coach stand by the *beam*.
before paragraph for family clear the floor. All smile.
before paragraph for family thank you.
before item for coach chalk
before item water
before paragraph for coach never alone.
paragraph for family **this** is play.
paragraph Ask the coach: she knows.
item for coach watch
item for family look
drill Coach | 5 min
drill Dish hold | 3 reps
  paragraph for coach stand *by*
  paragraph for family clear
  paragraph for coach count
  paragraph for family well done
  paragraph for family one
  paragraph for family two
  item Coach stands by the beam
  paragraph for coach last.
row head [Coach: a] [b]
)");
}

TEST_CASE("a label counts however it is set off") {
  for (const char* text :
       {"coach - x", "Coach – x", "Coach—x", "(coach) x", "[Coach] x", "(Coach): x", "(coach) – x",
        "Coach only: x", "Coaches only - x", "Coach. x", "Note for coach: x", "note (coach): x",
        "Coach = x", "For the coach - x"}) {
    INFO(text);
    const auto found = reader_label(text);
    REQUIRE(found);
    CHECK(found->reader == Note::For::kCoach);
    CHECK(std::string_view(text).substr(found->words) == "x");
  }
  for (const char* text : {"(parents) x", "Family – x", "At home - x", "Parents only. x"}) {
    INFO(text);
    const auto found = reader_label(text);
    REQUIRE(found);
    CHECK(found->reader == Note::For::kFamily);
    CHECK(std::string_view(text).substr(found->words) == "x");
  }
}

TEST_CASE("what stands below or behind a note for one reader is for that reader") {
  CHECK(read_body_text("## P\n\n- Coach:\n  - one\n    - two\n- Dish hold: 3\n"
                       "  - (coach) stand by\n    - left side\n  - cue: (coach) hand low\n"
                       "  - note: coach only: count\n  - note (coach): smile\n") ==
        "item for coach Coach:\nitem for coach one\nitem for coach two\n"
        "drill Dish hold | 3 reps\n  paragraph for coach stand by\n"
        "  item for coach left side\n  paragraph for coach hand low\n"
        "  paragraph for coach count\n  paragraph for coach smile\n");
}

TEST_CASE("a heading that is a label is for the text below it, and no part") {
  CHECK(read_body_text("## P\n\n- Hop: 3\n\n## Coach's notes\n\nOne.\n\n- two\n\n"
                       "### For parents\n\nThree.\n\n## Q\n\nFour.\n") ==
        "# P\ndrill Hop | 3 reps\nsubheading for coach Coach's notes\nparagraph for coach One.\n"
        "item for coach two\nsubheading for family For parents\nparagraph for family Three.\n"
        "# Q\nparagraph Four.\n");
}

TEST_CASE("a label in a line of its own is for what stands below it") {
  CHECK(read_body_text("Coach:\n\n- chalk\n- water\n\nEverybody smiles.\n\n## P\n\n**Parents:**\n\n"
                       "Come in.\n\nCoach:\n\n- Dish hold: 3\n") ==
        "before paragraph for coach Coach:\nbefore item for coach chalk\n"
        "before item for coach water\nbefore paragraph Everybody smiles.\n"
        "paragraph for family **Parents:**\nparagraph for family Come in.\n"
        "paragraph for coach Coach:\ndrill Dish hold | 3 reps\n");
}

TEST_CASE("a label whose mark is forgotten or wrong is named") {
  CHECK(read_body_text("## P\n\n- Dish hold: 3\n  - Coach – stand by\n  - family:\n"
                       "Coach: below\n") ==
        "drill Dish hold | 3 reps\n  paragraph for coach stand by\n  paragraph for coach below\n"
        "plan.md:9:5: error: ‘family’ says nothing [bad-value]; write the words behind the colon, "
        "or leave the line out\n"
        "plan.md:10:1: error: ‘Coach’ has no dash before it, so it runs on from the line above "
        "[bad-value]; write `- Coach: below`, indented by two spaces below ‘Dish hold’\n");
}

}  // namespace
}  // namespace chalkleaf::plan
