// Lines that Markdown lets run on from the line above: what is said of each, and what it becomes.
// The body begins on line 5, behind four lines of front matter.
#include <catch2/catch.hpp>

#include "plan/mistake.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a line that runs on from another is reported where it stands") {
  const Mistake cases[] = {
      {R"(## P

- Dish hold: 2 x 20 s
##Main
)",
       R"(plan.md:8:1: error: a heading needs a space after ## [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
## Main
)",
       R"(plan.md:8:1: error: the space behind ## is a no-break space [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
#warm-up
)",
       R"(plan.md:8:1: error: a heading needs a space after # [bad-value]; write `# warm-up`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
**Rings**
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## Rings`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
**Rings:**
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## Rings`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
VAULT
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## VAULT`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
Bars:
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## Bars`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
Cool-down
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## Cool-down`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
now the bars
)",
       R"(plan.md:8:1: error: this line runs on from the list line above [bad-value]; put an empty line before it; if it goes on with the line above, indent it further than the dash there; if it is a drill, begin it with a dash and a space
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue: low back
VAULT
)",
       R"(plan.md:9:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## VAULT`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue: low back
and chin in
)",
       R"(plan.md:9:1: error: this line runs on from the list line above [bad-value]; put an empty line before it; if it goes on with the line above, indent it further than the dash there; if it is a drill, begin it with a dash and a space
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - Keep smiling
##Main
)",
       R"(plan.md:9:1: error: a heading needs a space after ## [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  - cue:
    - low back
##Main
)",
       R"(plan.md:10:1: error: a heading needs a space after ## [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
• Arch: 3 x 10
)",
       R"(plan.md:8:1: error: this line begins with • instead of a dash [bad-value]; write `- Arch: 3 x 10`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
• breathe
)",
       R"(plan.md:8:1: error: this line begins with • instead of a dash [bad-value]; write `- breathe`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
– Arch: 10 s
)",
       R"(plan.md:8:1: error: this line begins with – instead of a dash [bad-value]; write `- Arch: 10 s`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
· Arch: 3
)",
       R"(plan.md:8:1: error: this line begins with · instead of a dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
- Arch: 3
)",
       R"(plan.md:8:1: error: the space behind this dash is a no-break space [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
 - cue: low back
)",
       R"(plan.md:8:1: error: a no-break space stands before this dash [bad-value]; write `- cue: low back`, indented by two spaces below its drill
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  • cue: low back
)",
       R"(plan.md:8:1: error: this line begins with • instead of a dash [bad-value]; write `- cue: low back`, indented by two spaces below its drill
)"},
      {R"(## P

- Dish hold: 2 x 20 s
-Arch: 3
)",
       R"(plan.md:8:1: error: this line has no space behind its dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
Arch: 3 each side
)",
       R"(plan.md:8:1: error: this drill has no dash before it, so it runs on from the line above [bad-value]; write `- Arch: 3 each side`, with a dash and a space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
Arch: 3 x 10
Rock: 20 s
)",
       R"(plan.md:8:1: error: this drill has no dash before it, so it runs on from the line above [bad-value]; write `- Arch: 3 x 10`, with a dash and a space before it
plan.md:9:1: error: this drill has no dash before it, so it runs on from the line above [bad-value]; write `- Rock: 20 s`, with a dash and a space before it
)"},
      {R"(## P

- Dish hold: 2 x 20 s
      - cue: low back
)",
       R"(plan.md:8:7: error: this line is indented too far to belong to the list [bad-value]; indent it by two spaces more than the line it belongs to
)"},
      {R"(## P

- Dish hold: 2 x 20 s

        - cue: low back
)",
       R"(plan.md:9:9: error: this list is indented too far, which makes it a block of code [bad-value]; indent it by two spaces more than the line it belongs to
)"},
      {R"(## P

- Dish hold: 2 x 20 s
(../parts/warm-up)
)",
       R"(plan.md:8:1: error: this is not yet a link to a part [bad-value]; write `[warm up](../parts/warm-up.md)`
)"},
      {R"(## P

- Dish hold: 2 x 20 s
  > Mind the neck.
VAULT
)",
       R"(plan.md:9:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## VAULT`, with an empty line before it
)"},
      {R"(## P

> Clear the floor.
VAULT
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## VAULT`, with an empty line before it
)"},
      {R"(## P

> Clear the floor.
##Main
)",
       R"(plan.md:8:1: error: a heading needs a space after ## [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

> Clear the floor.
Arch: 3 x 10
)",
       R"(plan.md:8:1: error: this drill has no dash before it, so it runs on from the line above [bad-value]; write `- Arch: 3 x 10`, with a dash and a space before it
)"},
      {R"(## P

> Clear the floor.
[[warm-up]]
)",
       R"(plan.md:8:1: error: this is not yet a link to a part [bad-value]; write `[warm up](../parts/warm-up.md)`
)"},
      {R"(## P

Dish hold: 2 x 20 s
Arch: 3 each side
Rock: 20 s
)",
       R"(plan.md:7:1: error: this reads like a drill, but is not a list item [bad-value]; write `- Dish hold: 2 x 20 s`, with a dash and a space before it; if it is only text, write it without the colon
plan.md:8:1: error: this reads like a drill, but is not a list item [bad-value]; write `- Arch: 3 each side`, with a dash and a space before it; if it is only text, write it without the colon
plan.md:9:1: error: this reads like a drill, but is not a list item [bad-value]; write `- Rock: 20 s`, with a dash and a space before it; if it is only text, write it without the colon
)"},
      {R"(## P

##Main
)",
       R"(plan.md:7:1: error: a heading needs a space after ## [bad-value]; write `## Main`, with an empty line before it
)"},
      {R"(## P

• Arch: 3
)",
       R"(plan.md:7:1: error: this line begins with • instead of a dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

– Arch: 3 x 10
)",
       R"(plan.md:7:1: error: this line begins with – instead of a dash [bad-value]; write `- Arch: 3 x 10`, with a dash and a plain space before it
)"},
      {R"(## P

 - Arch: 3
)",
       R"(plan.md:7:1: error: a no-break space stands before this dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

-Arch: 3
)",
       R"(plan.md:7:1: error: this line has no space behind its dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"},
      {R"(## P

    - Arch: 3
    - Rock: 3
)",
       R"(plan.md:7:5: error: this list is indented by four spaces, which makes it a block of code [bad-value]; move it to the left
)"},
      {R"(## P

	- Arch: 3
)",
       R"(plan.md:7:2: error: this list is indented by four spaces, which makes it a block of code [bad-value]; move it to the left
)"},
      {R"(## P

    Arch: 3 x 10
)",
       R"(plan.md:7:5: error: this list is indented by four spaces, which makes it a block of code [bad-value]; move it to the left
)"},
      {R"(## P

easier: knees bent
)",
       R"(plan.md:7:1: error: ‘easier’ has no dash before it, so it belongs to no drill [bad-value]; write `- easier: knees bent`, indented by two spaces below its drill
)"},
      {R"(## P

1. Arch: 3
VAULT
)",
       R"(plan.md:8:1: error: this looks like a heading, but it runs on from the line above [bad-value]; write `## VAULT`, with an empty line before it
)"},
      {R"(## P

Here we go:
• Arch: 3
)",
       R"(plan.md:8:1: error: this line begins with • instead of a dash [bad-value]; write `- Arch: 3`, with a dash and a plain space before it
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(body_messages(c.written) == c.messages);
  }
}

TEST_CASE("text that is wrapped is text, and code is code") {
  for (const char* good :
       {"## P\n\n- Dish hold: 2 x 20 s, slow,\n  chin in\n",
        "## P\n\n- Dish hold: 10\n  slow and tall\n",
        "## P\n\n- Dish hold: 10\n  - cue: low back\n    and CHIN in:\n    VAULT\n",
        "## P\n\n- Dish hold: 10\n  - cue: low back\n  and chin in\n",
        "## P\n\nToday we work on\nthe hold: 20 s each.\nAll of it.\n",
        "## P\n\nNote: bring water.\n", "## P\n\n**Rings**\n\n- Dish hold: 10\n", "## P\n\nVAULT\n",
        "## P\n\n> Clear the floor\nand keep it so.\n", "## P\n\n– said the coach.\n",
        "## P\n\n*Dish* hold.\n", "## P\n\n-5 degrees.\n", "Time: 60 min\n\n## P\n",
        "## P\n\n```\n- a\n```\n", "## P\n\n    as it stands\n",
        "## P\n\n- Dish hold: 10 <!-- a\nb -->\n"}) {
    INFO(good);
    CHECK(body_messages(good).empty());
  }
}

/// The parts of a body with their steps, in words.
std::string outline(const std::string& body) {
  const ReadPlan plan = read_plan(plan_with(body));
  std::string out;
  for (const Part& part : plan.session.parts) {
    out += fmt::format("[{}]", part.title.text);
    for (const Step& step : part.steps) {
      if (const auto* n = std::get_if<Note>(&step)) out += fmt::format(" ({})", n->words.text);
      if (const auto* l = std::get_if<PartLink>(&step)) out += fmt::format(" ->{}", l->target);
      if (const auto* d = std::get_if<Drill>(&step)) {
        out += fmt::format(" {}", d->name.text);
        if (d->dose) out += fmt::format("={}", described(*d->dose));
        for (const Words& cue : d->cues) out += fmt::format(" cue<{}>", cue.text);
        for (const Note& n : d->notes) out += fmt::format(" note<{}>", n.words.text);
      }
    }
  }
  return out;
}

TEST_CASE("what ran on becomes what it was meant to be") {
  CHECK(outline("## P\n\n- A: 3\n[w](w.md)\n- B: 3\n") == "[P] A=3 reps ->w.md B=3 reps");
  CHECK(outline("## P\n\n- A: 3\n  - cue: x\n  [w](w.md)\n") == "[P] A=3 reps cue<x> ->w.md");
  CHECK(outline("## P\n\n- A: 3\n  - cue: x\n\n  [w](w.md)\n") == "[P] A=3 reps cue<x> ->w.md");
  CHECK(outline("## P\n\n- A: 3\n  - [w](w.md)\n  - cue: x\n") == "[P] A=3 reps cue<x> ->w.md");
  CHECK(outline("## P\n\n> Mind.\n[w](w.md)\n") == "[P] ->w.md");
  CHECK(outline("## P\n\n- A: 3\n##Main (5 min)\n- B: 4\n") == "[P] A=3 reps[Main] B=4 reps");
  CHECK(outline("## P\n\n- A: 3\n  - cue: x\n    y\nBars:\nmore\n- B: 4\n") ==
        "[P] A=3 reps cue<x y>[Bars] (more) B=4 reps");
  CHECK(outline("## P\n\nB: 20 s\nC: 3 each side\nand so on\n") ==
        "[P] B=20 s C=3 reps each side (and so on)");
  CHECK(outline("B: 2 x 20 s\n\n## P\n") == "[T] B=2 sets of 20 s[P]");
  CHECK(outline("## P\n\nb: 20 s\nc: 3 x 10\n") == "[P] b=20 s c=3 sets of 10 reps");
  CHECK(outline("## P\n\n    - B: 20 s\n    - C\n") == "[P] B=20 s (- C)");
  CHECK(outline("## P\n\n- A: 10\n  slow and tall\n") == "[P] A=10 reps, ‘slow and tall’");
  CHECK(outline("## P\n\n- A: 2 x 20 s\n  rest 10 s\n") == "[P] A=2 sets of 20 s, rest 10 s");
}

TEST_CASE("a key without its colon still reaches its drill") {
  CHECK(outline("## P\n\n- A: 3\n  - cue push tall\n  - Cue – chin in\n  - cue\n") ==
        "[P] A=3 reps cue<push tall> cue<chin in> note<cue>");
}

}  // namespace
}  // namespace chalkleaf::plan
