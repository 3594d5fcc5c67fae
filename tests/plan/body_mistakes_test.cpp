// Slips in the body: each message whole. The body begins on line 5, behind four lines of front
// matter.
#include <catch2/catch.hpp>

#include "plan/mistake.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("the slips coaches make in a body are named, with what to change") {
  const Mistake cases[] = {
      {R"(# Other

## P
)",
       R"()"},
      {R"(##

- A: 3
)",
       R"(plan.md:5:1: error: this heading has no words [bad-value]; write the part's title, such as `## Warm-up`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
- easier: knees bent
)",
       R"(plan.md:8:3: error: ‘easier’ stands beside the drill, not below it [bad-value]; indent this line by two spaces so that it belongs to ‘Dish hold’
)"},
      {R"(## P

- easier: knees bent
)",
       R"(plan.md:7:3: error: ‘easier’ stands below no drill [bad-value]; put this line below the drill it belongs to, indented by two spaces
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - easier:
)",
       R"(plan.md:8:5: error: ‘easier’ says nothing [bad-value]; write what to do instead behind the colon, or leave the line out
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - easeir: x
)",
       R"(plan.md:8:5: error: ‘easeir’ is not something a drill has [unknown-key]; did you mean `easier`?
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - remember: x
)",
       R"(plan.md:8:5: error: ‘remember’ is not something a drill has [unknown-key]; the keys are `cue`, `easier`, `harder`, `uses`, `without`, `note`, `coach`, `family`, `record`, `at` and `figure`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - easier: a
    - harder: b
)",
       R"(plan.md:9:7: error: ‘harder’ is indented too far [bad-value]; indent this line like the one above, so that it belongs to ‘Dish hold’
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  cue: low back
)",
       R"(plan.md:8:3: error: ‘cue’ has no dash before it, so it runs on from the line above [bad-value]; write `- cue: low back`, indented by two spaces below ‘Dish hold’
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - without towel:
)",
       R"(plan.md:8:5: error: ‘without towel’ does not say what to do [bad-value]; write the drill that stands in: `without towel: Dish hold: 2 x 20 s`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - without : x
  - without towel: Dish: 3 y
    - uses: mat
)",
       R"(plan.md:8:5: error: ‘without’ does not say what is missing [bad-value]; name the kit: `without towel: Dish hold: 2 x 20 s`
plan.md:9:26: error: ‘3 y’ cannot be read as a dose [unreadable-dose]; put a comma before ‘y’ if it is a remark; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
plan.md:10:7: error: ‘uses’ cannot stand below a substitute [bad-value]; indent it like the line of the substitute, so that it belongs to the drill
)"},
      {R"(## P

- : 2 x 20 s
)",
       R"(plan.md:7:3: error: this drill has no name [bad-value]; write its name before the colon: `Dish hold: 2 x 20 s`
)"},
      {R"(## P

- 2 x 20 s
)",
       R"(plan.md:7:3: error: this dose has no drill [bad-value]; write the drill's name and a colon before it: `Dish hold: 2 x 20 s`
)"},
      {R"(## P

- Dish hold 2 x 20 s
)",
       R"(plan.md:7:13: error: there is no colon before this dose [unreadable-dose]; put a colon between the drill and its dose: `Dish hold: 2 x 20 s`
)"},
      {R"(## P

- Dish hold - 2 x 20 s
)",
       R"(plan.md:7:15: error: there is no colon before this dose [unreadable-dose]; put a colon between the drill and its dose: `Dish hold: 2 x 20 s`
)"},
      {R"(## P

- Dish hold – max hold, up to 15 s
)",
       R"(plan.md:7:15: error: there is no colon before this dose [unreadable-dose]; put a colon between the drill and its dose: `Dish hold: max hold, up to 15 s`
)"},
      {R"(## P

- Line tag, teams of 4
)",
       R"()"},
      {R"(## P

- Tag: everyone against the coach
)",
       R"(plan.md:7:8: error: ‘everyone against the coach’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`; if these words are not a dose, write a dash instead of the colon
)"},
      {R"(## P

- Dish hold: 3x20sec
- “Dish” hold: 2 × 20 s
-Dish hold: 2 x 20 s
)",
       R"(plan.md:9:1: error: this line has no space behind its dash [bad-value]; write `- Dish hold: 2 x 20 s`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20
  - uses:
  - cue:
  - note:
)",
       R"(plan.md:8:5: error: ‘uses’ says nothing [bad-value]; write the kit behind the colon, or leave the line out
plan.md:9:5: error: ‘cue’ says nothing [bad-value]; write the words behind the colon, or leave the line out
plan.md:10:5: error: ‘note’ says nothing [bad-value]; write the words behind the colon, or leave the line out
)"},
      {R"(## P

Dish hold: 2 x 20 s
)",
       R"(plan.md:7:1: error: this reads like a drill, but is not a list item [bad-value]; write `- Dish hold: 2 x 20 s`, with a dash and a space before it; if it is only text, write it without the colon
)"},
      {R"(## P

- Dish hold: 2 x 20 s
-Arch: 3
)",
       R"(plan.md:8:1: error: this line has no space behind its dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

Stations: 4
)",
       R"()"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue push tall
)",
       R"(plan.md:8:5: error: put a colon after ‘cue’ [bad-value]; write `- cue: push tall`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - easier lie down
)",
       R"(plan.md:8:5: error: put a colon after ‘easier’ [bad-value]; write `- easier: lie down`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - easier
)",
       R"(plan.md:8:5: error: put a colon after ‘easier’ [bad-value]; write `- easier: …`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue - dash
)",
       R"(plan.md:8:5: error: put a colon after ‘cue’ [bad-value]; write `- cue: dash`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - Cue – dash
)",
       R"(plan.md:8:5: error: put a colon after ‘Cue’ [bad-value]; write `- Cue: dash`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - uses a towel
)",
       R"(plan.md:8:5: error: put a colon after ‘uses’ [bad-value]; write `- uses: a towel`; if it is a note, `- note: uses a towel`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - without towel lie
)",
       R"(plan.md:8:5: error: put a colon after ‘without’ and the kit [bad-value]; write `- without towel: Dish hold: 2 x 20 s`; if it is a note, `- note: without towel lie`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue push: tall
)",
       R"(plan.md:8:5: error: put a colon after ‘cue’ [bad-value]; write `- cue: push: tall`
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(body_messages(c.written) == c.messages);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
