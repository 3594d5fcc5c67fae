// club.yaml. Ages of the groups are the demo club's.
#include <catch2/catch.hpp>

#include "plan/club_reading.h"
#include "plan/mistake.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a club file gives names, groups, paper and timings with their places") {
  const ReadClub read_it = read_club_text(R"(name: Alder Quay Gymnastics
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
  CHECK(club.printing.card_paper.value().value == Paper::kA5);
  CHECK(club.printing.sheet_paper.value().value == Paper::kA5);
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

TEST_CASE("a club file gives hall, kit, staff and the rest with their places") {
  const ReadClub read_it = read_club_text(R"(name: Alder Quay Gymnastics
groups:
  Wrens: {ages: 6-8, size: 8, level: 2, adults: 2}
hall:
  beam: {count: 3, takes: 1}
  floor strip: {takes: 8}
  wall:
kit:
  hoops: 12
  mats: {count: 8, note: thin blue ones}
  wall bars:
  planks: 0
staff:
  Lead coach: {qualification: level 2, groups: [Wrens]}
  Assistant: level 1
  Kim:
contacts:
  safeguarding: ask at the club desk
words:
  dish: a shallow curve, lying on the back
checks:
  under-slot: off
  unknown-drill: Error
  home-floor: warning
limits:
  longest-stretch: 25 s
  stretch-before-power: 60 s
  water-after: 50 min
  unused-share: 15 %
  fewest-adults: 2
)");
  CHECK(messages(read_it.diagnostics).empty());
  const Club& club = read_it.club;
  CHECK(club.groups.at(0).level.value().value == 2);
  CHECK(club.groups.at(0).adults.value().value == 2);
  CHECK(club.groups.at(0).adults.value().span.text() == "2");

  REQUIRE(club.stations.size() == 3);
  CHECK(club.station("Beams") == &club.stations[0]);
  CHECK(club.stations[0].count.value == 3);
  CHECK(club.stations[0].takes.span.text() == "1");
  CHECK(club.stations[1].count.value == 1);
  CHECK(club.stations[1].takes.value == 8);
  CHECK(club.stations[2].name.text == "wall");
  CHECK(club.stations[2].takes.value == 0);

  REQUIRE(club.kit.size() == 4);
  CHECK(club.stock("hoop") == &club.kit[0]);
  CHECK(club.kit[0].count.value().value == 12);
  CHECK(club.kit[1].count.value().value == 8);
  CHECK(club.kit[1].note.text == "thin blue ones");
  CHECK_FALSE(club.kit[2].count.has_value());
  CHECK(club.kit[3].count.value().value == 0);

  REQUIRE(club.staff.size() == 3);
  CHECK(club.staff[0].qualification.text == "level 2");
  CHECK(club.staff[0].groups.at(0).text == "Wrens");
  CHECK(club.staff[1].qualification.text == "level 1");
  CHECK(club.staff[2].name.text == "Kim");

  REQUIRE(club.contacts.size() == 1);
  CHECK(club.contacts[0].first.text == "safeguarding");
  CHECK(club.contacts[0].second.text == "ask at the club desk");
  REQUIRE(club.words.size() == 1);
  CHECK(club.words[0].word.span.text() == "dish");
  CHECK(club.words[0].meaning.text == "a shallow curve, lying on the back");
  REQUIRE(club.checks.size() == 3);
  CHECK_FALSE(club.checks[0].severity.has_value());
  CHECK(club.checks[0].check.text == "under-slot");
  CHECK(club.checks[0].span.text() == "off");
  CHECK(club.checks[1].severity.value() == Severity::kError);
  CHECK(club.checks[2].severity.value() == Severity::kWarning);
  CHECK(club.limits.longest_stretch.value().value == Duration::seconds(25));
  CHECK(club.limits.stretch_before_power.value().value == Duration::minutes(1));
  CHECK(club.limits.water_after.value().value == Duration::minutes(50));
  CHECK(club.limits.unused_share.value().value == 15);
  CHECK(club.limits.fewest_adults.value().value == 2);
}

TEST_CASE("hall, kit and staff may be only named") {
  const Club club =
      read_club_text("name: A\nhall: beam, bar\nkit: [hoops, cones]\nstaff: Kim\n").club;
  CHECK(club.stations.size() == 2);
  CHECK(club.stations.at(1).count.value == 1);
  CHECK(club.kit.size() == 2);
  CHECK(club.kit.at(1).name.text == "cones");
  CHECK(club.staff.at(0).name.text == "Kim");
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
       R"(club.yaml:2:8: error: ‘a3’ is not a paper size we print on [bad-value]; write a4, a5, letter or half-letter, and behind it landscape for a sheet on its side
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
    CHECK(messages(read_club_text(c.written).diagnostics) == c.messages);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
