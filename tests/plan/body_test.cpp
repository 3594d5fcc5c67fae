// Parts, safety, notes and links of a body.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

/// A session's outline, one line a thing.
std::string outline_of_session(const Session& session) {
  constexpr const char* kKinds[] = {"paragraph", "subheading", "item",
                                    "row",       "verbatim",   "picture"};
  constexpr const char* kRoles[] = {"warm-up", "main", "cool-down"};
  std::string out = fmt::format("title {}\n", session.title.text);
  const auto note = [&](const Note& n) {
    return fmt::format("{} {}\n", kKinds[static_cast<int>(n.kind)], n.words.text);
  };
  const auto safety = [&](const std::vector<Safety>& all) {
    for (const Safety& s : all) {
      out += fmt::format("  safety {}\n", s.words.text);
      for (const Words& sentence : s.sentences) out += fmt::format("    - {}\n", sentence.text);
    }
  };
  for (const Note& n : session.introduction) out += "  " + note(n);
  safety(session.safety);
  for (const Part& part : session.parts) {
    out += fmt::format("{} {}\n", kRoles[static_cast<int>(part.role)], part.title.text);
    safety(part.safety);
    for (const Step& step : part.steps) {
      if (const auto* n = std::get_if<Note>(&step)) out += "  " + note(*n);
      if (const auto* l = std::get_if<PartLink>(&step)) {
        out += fmt::format("  link {} -> {}\n", l->text.text, l->target);
      }
      if (const auto* d = std::get_if<Drill>(&step))
        out += fmt::format("  drill {}\n", d->name.text);
    }
  }
  return out;
}

TEST_CASE("a body's outline") {
  const ReadPlan plan = read_plan(plan_with(R"(# T

Intro *text* with [a site](https://example.org/x) and
a second line. <!-- mine -->

<!-- a remark
over lines -->

> **Safety.** Clear the floor. An adult stays e.g. in the room! "Bare feet." They help.
> - no socks
> - **Shoes** off. Now.

## Warming up

[The warm-up](../parts/w.md)

- [Another](<../parts/a b.md>)

See [this part](x.md) twice.

## Shapes

### On the floor

Some text.

- Dish hold: 3
  > safety: Watch the neck.

| a | b |
|---|---|
| 1 | 2 \| 3 |

```
 code
  more
```

---

![](figures/dish.png)

![a dish](figures/dish.png)

<b>bold</b>

## cool down
)"));
  CHECK(messages(plan.diagnostics).empty());
  CHECK(outline_of_session(plan.session) == R"(title T
  paragraph Intro text with a site (https://example.org/x) and a second line.
  safety Clear the floor. An adult stays e.g. in the room! "Bare feet." They help. no socks Shoes off. Now.
    - Clear the floor.
    - An adult stays e.g. in the room!
    - "Bare feet."
    - They help.
    - no socks
    - Shoes off.
    - Now.
warm-up Warming up
  link The warm-up -> ../parts/w.md
  link Another -> ../parts/a b.md
  paragraph See this part twice.
  link this part -> x.md
main Shapes
  safety Watch the neck.
    - Watch the neck.
  subheading On the floor
  paragraph Some text.
  drill Dish hold
  row a · b
  row 1 · 2 | 3
  verbatim  code
  more
  picture 
  picture a dish
  paragraph <b>bold</b>
cool-down cool down
)");
}

TEST_CASE("steps before the first heading make a part") {
  CHECK(
      outline_of_session(
          read_plan(plan_with("Hello.\n\n- a towel\n\n[Warm-up](w.md)\n\n- Dish: 3\n")).session) ==
      "title T\n  paragraph Hello.\n  item a towel\nwarm-up Warm-up\n  link Warm-up -> w.md\n"
      "  drill Dish\n");
  CHECK(outline_of_session(
            read_plan("---\nplace: gym\n---\n# Mine\n\nSee [x](y.md) later.\n\n- Dish: 3\n")
                .session) == "title Mine\n  paragraph See x later.\nmain Mine\n  drill Dish\n");
}

TEST_CASE("a level-1 heading is a part when the title is another") {
  CHECK(outline_of_session(read_plan(plan_with("# Warm-up\n\n# t\n\n- a\n")).session) ==
        "title T\nwarm-up Warm-up\n  drill a\n");
}

TEST_CASE("a shared part has steps and safety, and headings only inside") {
  Diagnostics diagnostics;
  const auto source = source::load_text(
      "w.md",
      "# Home warm-up\n\n> Safety: Clear space.\n\n## Raise\n\n- Jog: 1 min\n\n[next](n.md)\n",
      diagnostics);
  const PartFile part = read_part(source::read_document(source, diagnostics), diagnostics);
  CHECK(messages(diagnostics).empty());
  CHECK(part.title.text == "Home warm-up");
  REQUIRE(part.steps.size() == 3);
  CHECK(std::get<Note>(part.steps[0]).kind == Note::Kind::kSubheading);
  CHECK(std::get<Drill>(part.steps[1]).name.text == "Jog");
  CHECK(std::get<PartLink>(part.steps[2]).target == "n.md");
  REQUIRE(part.safety.size() == 1);
  CHECK(part.safety[0].words.text == "Clear space.");
}

TEST_CASE("a shared part's front matter may have a title and nothing else") {
  Diagnostics diagnostics;
  const auto source =
      source::load_text("w.md", "---\ntitle: A\nslot: 5 min\n---\n- Jog: 1 min\n", diagnostics);
  const PartFile part = read_part(source::read_document(source, diagnostics), diagnostics);
  CHECK(part.title.text == "A");
  CHECK(messages(diagnostics) ==
        "w.md:3:1: error: ‘slot’ is not a key of a shared part's front matter [unknown-key]; "
        "there is only `title`\n");
}

TEST_CASE("an unused link definition is text of the coach's") {
  CHECK(outline_of_session(
            read_plan(plan_with("## P\n\n[Wrens]: hop\n\n- See [x]: 3\n\n[x]: y.txt\n")).session) ==
        "title T\nmain P\n  paragraph [Wrens]: hop\n  drill See x\n");
}

}  // namespace
}  // namespace chalkleaf::plan
