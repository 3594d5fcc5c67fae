// What is wrong in hall, kit, staff and the other entries of club.yaml, and what to write instead.
#include <catch2/catch.hpp>

#include "plan/club_reading.h"
#include "plan/mistake.h"

namespace chalkleaf::plan {
namespace {

std::string said_of_club(const std::string& text) {
  return messages(read_club_text("name: A\n" + text).diagnostics);
}

TEST_CASE("groups: level and adults") {
  CHECK(said_of_club("groups: {Wrens: {level: 0, adults: 40}}\n") ==
        "club.yaml:2:25: error: ‘0’ is not a number that makes sense here [bad-value]; write a "
        "whole number from 1 to 10\n"
        "club.yaml:2:36: error: ‘40’ is not a number that makes sense here [bad-value]; write a "
        "whole number from 1 to 30\n");
}

TEST_CASE("whoever writes children's names is told that they do not belong there") {
  CHECK(said_of_club("groups: {Wrens: {children: [Ann, Ben]}}\n") ==
        "club.yaml:2:18: error: ‘children’ is not a key of a group [unknown-key]; write how many "
        "there are: `size: 8`; children's names do not belong here\n");
  CHECK(said_of_club("groups: {Wrens: {size: [Ann, Ben]}}\n") ==
        "club.yaml:2:24: error: ‘size’ must be a number [bad-value]; write how many there are, "
        "from 1 to 60; names do not belong here\n");
  CHECK(said_of_club("gymnasts: [Ann]\n") ==
        "club.yaml:2:1: error: ‘gymnasts’ is not a key of the club file [unknown-key]; children's "
        "names do not belong into these files\n");
}

TEST_CASE("the hall") {
  const Mistake cases[] = {
      {"hall: {beam: {count: 0, take: 1}}\n",
       "club.yaml:2:22: error: ‘0’ is not a number that makes sense here [bad-value]; write a "
       "whole number from 1 to 99\n"
       "club.yaml:2:25: error: ‘take’ is not a key of a station of the hall [unknown-key]; did you "
       "mean `takes`?\n"},
      {"hall: {beam: 3}\n",
       "club.yaml:2:14: error: ‘beam’ must have entries [bad-value]; write it as `beam: {count: 3, "
       "takes: 1}`\n"},
      {"hall:\n  beam: {count: 2}\n  Beams: {count: 3}\n  beam:\n",
       "club.yaml:4:3: error: ‘Beams’ is the same as ‘beam’ [duplicate-key]; keep one of the two, "
       "or give them names that tell them apart\n"
       "club.yaml:5:3: error: ‘beam’ is written twice [duplicate-key]; keep one of the two "
       "lines\n"},
      {"hall:\n",
       "club.yaml:2:6: error: ‘hall’ has no value [bad-value]; write a value behind the colon, or "
       "leave the line out\n"},
  };
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(said_of_club(c.written) == c.messages);
  }
}

TEST_CASE("of a list that is far too long the first are read") {
  std::string hall = "hall:\n";
  std::string kit = "kit: [";
  for (int i = 0; i < 1'001; ++i) {
    hall += "  s" + std::to_string(i) + "x:\n";
    kit += "k" + std::to_string(i) + "x, ";
  }
  CHECK(said_of_club(hall) ==
        "club.yaml:1003:3: error: ‘hall’ has more than 1000 entries; the rest is not read "
        "[bad-value]; keep those the club uses\n");
  CHECK(said_of_club(kit + "]\n").find("‘kit’ has more than 1000 entries; the rest is not read") !=
        std::string::npos);
}

TEST_CASE("kit") {
  const Mistake cases[] = {
      {"kit: {hoops: a dozen}\n",
       "club.yaml:2:14: error: ‘a dozen’ is not a number of hoops [bad-value]; write how many "
       "there are, or both: `hoops: {count: 12, note: …}`; leave it empty if there are always "
       "enough\n"},
      {"kit: {mats: {number: 8}}\n",
       "club.yaml:2:14: error: ‘number’ is not a key of a piece of kit [unknown-key]; the keys are "
       "`count` and `note`\n"},
      {"kit: {mats: [8]}\n",
       "club.yaml:2:13: error: ‘mats’ must have entries [bad-value]; write it as `mats: 12`\n"},
      {"kit: {mat: 1, mats: 2}\n",
       "club.yaml:2:15: error: ‘mats’ is the same as ‘mat’ [duplicate-key]; keep one of the two, "
       "or give them names that tell them apart\n"},
  };
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(said_of_club(c.written) == c.messages);
  }
}

TEST_CASE("staff") {
  CHECK(said_of_club("groups: {Wrens: }\nstaff: {Lead coach: {groups: [Wren], born: 1990}}\n") ==
        "club.yaml:3:31: error: the club has no group ‘Wren’ [bad-value]; did you mean `Wrens`?\n"
        "club.yaml:3:38: error: ‘born’ is not a key of an adult of the staff [unknown-key]; the "
        "keys are `qualification` and `groups`\n");
}

TEST_CASE("contacts, words, checks and limits") {
  const Mistake cases[] = {
      {"contacts: the desk\n",
       "club.yaml:2:11: error: ‘contacts’ must be entries, one a line [bad-value]; write each on a "
       "line of its own: `safeguarding: ask at the club desk`\n"},
      {"words: {dish: , Dish: x}\n",
       "club.yaml:2:14: error: ‘dish’ has no value [bad-value]; write a value behind the colon, or "
       "leave the line out\n"
       "club.yaml:2:17: error: ‘Dish’ is written twice [duplicate-key]; keep one of the two "
       "lines\n"},
      {"checks: {under-slot: never, over-slot: [off]}\n",
       "club.yaml:2:22: error: ‘never’ is not a severity [bad-value]; write `error`, `warning`, "
       "`note` or "
       "`off`\n"
       "club.yaml:2:40: error: ‘over-slot’ must be one value [bad-value]; write it on one line: "
       "`over-slot: …`\n"},
      {"limits: {longest-strech: 30 s, water-after: 10 h, unused-share: 101 %}\n",
       "club.yaml:2:10: error: ‘longest-strech’ is not a key of the limits [unknown-key]; did you "
       "mean `longest-stretch`?\n"
       "club.yaml:2:45: error: ‘10 h’ is not a limit that makes sense here [bad-value]; write a "
       "time from 10 min to 4 h\n"
       "club.yaml:2:65: error: ‘101’ is not a number that makes sense here [bad-value]; write a "
       "share of the slot in percent, from 0 to 100: `10 %`\n"},
      {"limits: {stretch-before-power: 60}\n",
       "club.yaml:2:32: error: ‘60’ has no unit [bad-value]; say what it is: `60 s` or `60 min`\n"},
      {"limits: strict\n",
       "club.yaml:2:9: error: ‘limits’ must be entries, one for each limit [bad-value]; write each "
       "on a line of its own: `longest-stretch: 30 s`\n"},
  };
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(said_of_club(c.written) == c.messages);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
