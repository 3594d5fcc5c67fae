// YAML gone wrong: what the coach is told, and what is still read. The text under test stands
// between the `---` lines, so its first line is the file's second.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::source {
namespace {

struct Mistake {
  const char* written;
  const char* read;
  const char* messages;
};

TEST_CASE("each slip is named where it is, and the rest is read") {
  const Mistake cases[] = {
      {R"(title: T
b: c
equipment:
	towel: x
)",
       R"({title=T, b=c, equipment=?<	towel: x>})",
       R"(plan.md:5:1: error: this line is indented with a tab [bad-value]; YAML is indented with spaces: replace the tab with two spaces
)"},
      {R"(title:T
b: c
)",
       R"({title=?<T>, b=c})",
       R"(plan.md:2:1: error: there is no space after the colon [bad-value]; write `title: T`
)"},
      {R"(title: T
b:c
)",
       R"({title=T, b=?<c>})",
       R"(plan.md:3:1: error: there is no space after the colon [bad-value]; write `b: c`
)"},
      {R"(title: Day 2: jumps
b: c
)",
       R"({title=?<Day 2: jumps>, b=c})",
       R"(plan.md:2:8: error: the value of ‘title’ has a colon in it [bad-value]; put the value in quotation marks: `title: "Day 2: jumps"`
)"},
      {R"(title: @home
b: c
)",
       R"({title=?<@home>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘@’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: %
b: c
)",
       R"({title=?<%>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘%’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: *x
b: c
)",
       R"({title=?<*x>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘*’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: &x y
b: c
)",
       R"({title=y<&x y>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘&’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: !t y
b: c
)",
       R"({title=y<!t y>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘!’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: `x`
b: c
)",
       R"({title=?<`x`>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘`’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: [a
b: c
)",
       R"({title=?<[a>, b=c})",
       R"(plan.md:2:8: error: the bracket ‘[’ is not closed [bad-value]; close it with ‘]’, or put the value in quotation marks
)"},
      {R"(title: {a: 1
b: c
)",
       R"({title=?<{a: 1>, b=c})",
       R"(plan.md:2:8: error: the bracket ‘{’ is not closed [bad-value]; close it with ‘}’, or put the value in quotation marks
)"},
      {R"(title: "a
b: c
)",
       R"({title=?<"a>, b=c})",
       R"(plan.md:2:8: error: this quotation mark is not closed [bad-value]; put another ‘"’ at the end of the value
)"},
      {R"(title: 'a
b: c
slot: 'x'
)",
       R"({title=?<'a>, b=c, slot=x<'x'>})",
       R"(plan.md:2:8: error: this quotation mark is not closed [bad-value]; put another ‘'’ at the end of the value
)"},
      {R"(title: 'it's'
b: c
)",
       R"({title=?<'it's'>, b=c})",
       R"(plan.md:2:8: error: there is text behind the closing quotation mark [bad-value]; put the whole value between two quotation marks of a kind that does not occur in it
)"},
      {R"(title: "a" b
b: c
)",
       R"({title=?<"a" b>, b=c})",
       R"(plan.md:2:8: error: there is text behind the closing quotation mark [bad-value]; put the whole value between two quotation marks of a kind that does not occur in it
)"},
      {R"(title: a
  b: c
)",
       R"({title=a})",
       R"(plan.md:3:3: error: this line is indented as if it belonged to ‘title’ above [bad-value]; begin it in the same column as the line above
)"},
      {R"(title: T
b c
)",
       R"({title=T})",
       R"(plan.md:3:1: error: this line has no colon [bad-value]; write it as `key: value`, or indent it if it belongs to the line above
)"},
      {R"(title: T
b: c
foo
slot: 40 min
)",
       R"({title=T, b=c, slot=40 min})",
       R"(plan.md:4:1: error: this line has no colon [bad-value]; write it as `key: value`, or indent it if it belongs to the line above
)"},
      {R"(title: - a
b: c
)",
       R"({title=?<- a>, b=c})",
       R"(plan.md:2:8: error: a list cannot begin behind its key [bad-value]; put each item on a line of its own, indented by two spaces: `- item`
)"},
      {R"(title: a
b: c
equipment:
  towel:a
  line: b
)",
       R"({title=a, b=c, equipment={towel=?<a>, line=b}})",
       R"(plan.md:5:3: error: there is no space after the colon [bad-value]; write `towel: a`
)"},
      {R"(title: T
b: c
equipment:
    towel: a
  line: b
)",
       R"({title=T, b=c, equipment={towel=a}})",
       R"(plan.md:6:3: error: this line does not fit the lines above it [bad-value]; begin every entry in the same column, as `key: value`
)"},
      {R"(  title: T
b: c
)",
       R"({title=T})",
       R"(plan.md:3:1: error: this line does not fit the lines above it [bad-value]; begin every entry in the same column, as `key: value`
)"},
      {R"(- a
- b
)",
       R"(nothing)",
       R"(plan.md:2:1: error: the front matter is a list [bad-value]; write each entry on a line of its own, as `key: value`
)"},
      {R"(just words
)",
       R"({})",
       R"(plan.md:2:1: error: this line has no colon [bad-value]; write it as `key: value`, or indent it if it belongs to the line above
)"},
      {R"(title: "a\q"
b: c
)",
       R"({title=?<"a\q">, b=c})",
       R"(plan.md:2:1: error: a backslash in double quotation marks has a meaning of its own [bad-value]; put the value in single quotation marks
)"},
      {R"(title: T
b: c
slot: @1
start: %
date: ]
)",
       R"({title=T, b=c, slot=?<@1>, start=?<%>, date=?<]>})",
       R"(plan.md:4:7: error: a value cannot begin with ‘@’ [bad-value]; put the whole value in quotation marks
plan.md:5:8: error: a value cannot begin with ‘%’ [bad-value]; put the whole value in quotation marks
plan.md:6:7: error: a value cannot begin with ‘]’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: T
b: c
timings: {rep: 3 s changeover: 2 s}
)",
       R"({title=T, b=c, timings=?<{rep: 3 s changeover: 2 s}>})",
       R"(plan.md:4:10: error: what is in these brackets cannot be read [bad-value]; separate the entries with commas: `{Warm-up: 8 min, Jumps: 10 min}`
)"},
      {R"(title: T
b: c
? [a]
: b
)",
       R"({title=T, b=c})",
       R"(plan.md:4:3: error: a key must be a word or a few [bad-value]; write the entry as `key: value`
)"},
      {R"(title: T
b: c
<<: {a: b}
)",
       R"({title=T, b=c, <<={a=b}})",
       R"(plan.md:4:1: error: entries cannot be merged in with ‘<<’ [bad-value]; write the entries out
)"},
      {R"(title: T
b: c
equipment: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[a]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
)",
       R"({title=T, b=c, equipment=[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[?<[>]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]})",
       R"(plan.md:4:43: error: this is nested too deeply; what is inside is not read [bad-value]; write it with fewer levels
)"},
      {R"(title: >x
b: c
)",
       R"({title=?<>x>, b=c})",
       R"(plan.md:2:8: error: a value cannot begin with ‘>’ [bad-value]; put the whole value in quotation marks
)"},
      {R"(title: T
b: c
  - x
)",
       R"({title=T, b=c - x<c
  - x>})",
       R"()"},
      {R"(title: T
b: c
equipment:
  towel: a bath towel: rolled
)",
       R"({title=T, b=c, equipment={towel=?<a bath towel: rolled>}})",
       R"(plan.md:5:10: error: the value of ‘towel’ has a colon in it [bad-value]; put the value in quotation marks: `towel: "a bath towel: rolled"`
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    const ReadFile file = read_text("---\n" + std::string(c.written) + "---\n");
    CHECK((file.document.front ? described(*file.document.front) : "nothing") == c.read);
    CHECK(messages(file.diagnostics) == c.messages);
  }
}

TEST_CASE("slip upon slip ends after a few tries") {
  std::string yaml = "---\n";
  for (int i = 0; i < 50; ++i) yaml += fmt::format("k{}: @\n", i);
  const ReadFile file = read_text(yaml + "---\n");
  CHECK(file.diagnostics.error_count() == 8);
  CHECK(!file.document.front);
}

}  // namespace
}  // namespace chalkleaf::source
