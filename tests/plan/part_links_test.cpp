// Lines that were meant as links to parts. The body begins on line 5.
#include <catch2/catch.hpp>

#include "plan/mistake.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a line that is nearly a link says how to write it") {
  const Mistake cases[] = {
      {R"(## P

(../parts/gym-warm-up)
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[gym warm up](../parts/gym-warm-up.md)`
)"},
      {R"(## P

[x] (../parts/a.md)
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[x](../parts/a.md)`
)"},
      {R"(## P

[[gym-warm-up]]
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[gym warm up](../parts/gym-warm-up.md)`
)"},
      {R"(## P

[[Gym Warm Up|warm]]
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[gym warm up](../parts/gym-warm-up.md)`
)"},
      {R"(## P

../parts/a.md
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[a](../parts/a.md)`
)"},
      {R"(## P

parts/a
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[a](parts/a.md)`
)"},
      {R"(## P

[x](../parts/gym warm up.md)
)",
       R"(plan.md:7:1: error: the address of a link cannot have a space as it is [bad-value]; write %20 for each space, `[x](../parts/gym%20warm%20up.md)`, or put the address in < >, `[x](<../parts/gym warm up.md>)`
)"},
      {R"(## P

[x](../parts/gym warm up)
)",
       R"(plan.md:7:1: error: the address of a link cannot have a space as it is [bad-value]; write %20 for each space, `[x](../parts/gym%20warm%20up.md)`, or put the address in < >, `[x](<../parts/gym warm up.md>)`
)"},
      {R"(## P

[x]../parts/a.md
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[x](../parts/a.md)`
)"},
      {R"(## P

[x](../parts/a.md
)",
       R"(plan.md:7:1: error: this is not yet a link to a part [bad-value]; write `[x](../parts/a.md)`
)"},
      {R"(## P

- [[gym-warm-up]]
)",
       R"(plan.md:7:3: error: this is not yet a link to a part [bad-value]; write `[gym warm up](../parts/gym-warm-up.md)`
)"},
      {R"(## P

- ../parts/a.md
)",
       R"(plan.md:7:3: error: this is not yet a link to a part [bad-value]; write `[a](../parts/a.md)`
)"},
      {R"(## P

[ ](../parts/a b.md)
)",
       R"(plan.md:7:1: error: the address of a link cannot have a space as it is [bad-value]; write %20 for each space, `[a b](../parts/a%20b.md)`, or put the address in < >, `[a b](<../parts/a b.md>)`
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(body_messages(c.written) == c.messages);
  }
}

TEST_CASE("text that only looks a little like a path is text") {
  for (const char* good :
       {"(and/or)", "[a] (see below)", "[[a]] and more", "[x](https://example.org/a b)", "e.g.",
        "(left)", "[Wrens]: hop", "https://example.org/a.md", "../", "either/or"}) {
    INFO(good);
    CHECK(body_messages(fmt::format("## P\n\n{}\n", good)).empty());
  }
}

std::string target_of(const std::string& line) {
  const ReadPlan plan = read_plan(plan_with("## P\n\n" + line + "\n"));
  const auto& steps = plan.session.parts.at(0).steps;
  const auto* link = steps.empty() ? nullptr : std::get_if<PartLink>(&steps.at(0));
  return link == nullptr ? "" : link->target;
}

TEST_CASE("a link alone in its paragraph leads to a part even without its ending") {
  CHECK(target_of("[x](../parts/warm-up)") == "../parts/warm-up");
  CHECK(target_of("- [x](../parts/warm-up)") == "../parts/warm-up");
  CHECK(target_of("[x](../parts/)") == "../parts/");
  CHECK(target_of("[x](<../parts/a b.md>)") == "../parts/a b.md");
  CHECK(target_of("See [x](../parts/warm-up).").empty());
  CHECK(target_of("[x](#top)").empty());
  CHECK(target_of("[x](picture.png)").empty());
  CHECK(target_of("[x](mailto:coach@example.org)").empty());
  CHECK(target_of("![x](warm-up.md)").empty());
}

}  // namespace
}  // namespace chalkleaf::plan
