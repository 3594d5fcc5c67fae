// club.yaml. Ages of the groups are the demo club's.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

struct Mistake {
  const char* written;
  const char* messages;
};

struct ReadClub {
  SourcePtr source;
  Club club;
  Diagnostics diagnostics;
};
ReadClub read(const std::string& text) {
  ReadClub out;
  out.source = source::load_text("club.yaml", text, out.diagnostics);
  const auto root = source::read_yaml(out.source, out.diagnostics);
  if (root) out.club = read_club(out.source, *root, out.diagnostics);
  return out;
}

TEST_CASE("a club file gives names, groups, paper and timings with their places") {
  const ReadClub read_it = read(R"(name: Alder Quay Gymnastics
paper: A5
contact: "your coach, at the desk"
language: en-GB
groups:
  Wrens: {ages: 6–8, size: 10}
  Kestrels:
    ages: 9 to 11
  Swifts:
timings:
  rep: 3 s
  rest: 0 s
)");
  CHECK(messages(read_it.diagnostics).empty());
  const Club& club = read_it.club;
  CHECK(club.name.text == "Alder Quay Gymnastics");
  CHECK(club.name.span.text() == "Alder Quay Gymnastics");
  CHECK(club.paper.value().value == Paper::kA5);
  CHECK(club.contact.text == "your coach, at the desk");
  CHECK(club.contact.span.text() == "\"your coach, at the desk\"");
  CHECK(club.language == "en-GB");
  REQUIRE(club.groups.size() == 3);
  CHECK(club.groups[0].youngest.value().value == 6);
  CHECK(club.groups[0].oldest.value().value == 8);
  CHECK(club.groups[0].oldest.value().span.text() == "6–8");
  CHECK(club.groups[0].size.value().value == 10);
  CHECK(club.groups[1].oldest.value().value == 11);
  CHECK(!club.groups[1].size);
  CHECK(club.groups[2].name.text == "Swifts");
  CHECK(club.group("kestrels") == &club.groups[1]);
  CHECK(club.group("robins") == nullptr);
  CHECK(club.timings.repetition.value == Duration::seconds(3));
  CHECK(club.timings.repetition.origin == Timing::Origin::kClub);
  CHECK(club.timings.repetition.span.text() == "3 s");
  CHECK(club.timings.step.origin == Timing::Origin::kDefault);
  CHECK(club.timings.rest.origin == Timing::Origin::kClub);
}

TEST_CASE("what is wrong in a club file is said with what to write") {
  const Mistake cases[] = {
      {R"(name: A
)",
       R"()"},
      {R"(paper: a4
)",
       R"(club.yaml:1:1: error: the club has no name [missing-key]; add a line `name: ` with the club's name
)"},
      {R"(name: A
paper: a3
grups: x
)",
       R"(club.yaml:2:8: error: ‘a3’ is not a paper size we print on [bad-value]; write `a4` or `a5`
club.yaml:3:1: error: ‘grups’ is not a key of the club file [unknown-key]; did you mean `groups`?
)"},
      {R"(name: A
groups: [Wrens]
)",
       R"(club.yaml:2:9: error: ‘groups’ must be entries, one for each group [bad-value]; write each on a line of its own: `Kestrels: {ages: 9–11, size: 8}`
)"},
      {R"(name: A
groups:
  Wrens: {ages: 6–8, size: 70}
  wrens: x
  Kestrels: 9
  Swifts: {ages: 15-12}
)",
       R"(club.yaml:3:28: error: ‘70’ is not a number that makes sense here [bad-value]; write a whole number from 1 to 60
club.yaml:4:3: error: ‘wrens’ is written twice [duplicate-key]; keep one of the two lines
club.yaml:5:13: error: ‘Kestrels’ must have entries [bad-value]; write it as `Kestrels: {ages: 9–11, size: 8}`
club.yaml:6:18: error: ‘15-12’ is not a range of ages [bad-value]; write the youngest and the oldest in years: `9–11`
)"},
      {R"(name: A
timings: {parts: {a: 1 min}}
language: englishlanguage
)",
       R"(club.yaml:2:11: error: ‘parts’ is not a key of the timings [unknown-key]; the keys are `rep`, `step`, `length`, `changeover`, `max-hold` and `rest`
club.yaml:3:11: error: ‘englishlanguage’ is not a language tag [bad-value]; write a tag such as `en`, `en-GB` or `nl`
)"},
      {R"(- a
)",
       R"(club.yaml:1:1: error: the club file must have entries [bad-value]; begin it with `name: ` and the club's name
)"},
      {R"()",
       R"(club.yaml:1:1: error: the club has no name [missing-key]; add a line `name: ` with the club's name
)"},
      {R"(name:
)",
       R"(club.yaml:1:6: error: ‘name’ has no value [bad-value]; write a value behind the colon, or leave the line out
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(messages(read(c.written).diagnostics) == c.messages);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
