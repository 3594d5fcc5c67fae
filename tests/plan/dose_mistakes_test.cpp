// Doses that cannot be read: each message whole, each pointing at the clause it is about.
#include <catch2/catch.hpp>

#include "plan/mistake.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a dose that cannot be read says where and what to write") {
  const Mistake cases[] = {
      {R"(2 of 20 s)",
       R"(dose:1:1: error: ‘2 of 20 s’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(2–3 x 8)",
       R"(dose:1:1: error: ‘2–3’ is a range [unreadable-dose]; choose one number, the one you would call out
)"},
      {R"(2 x 20 s, rest 20-30 s)",
       R"(dose:1:16: error: ‘20-30 s’ is a range [unreadable-dose]; choose one number, the one you would call out
)"},
      {R"(12 to 8 reps)",
       R"(dose:1:1: error: ‘12 to 8’ is not a range that goes up [unreadable-dose]; write the smaller number first: `8–12`
)"},
      {R"(20 m)",
       R"(dose:1:1: error: ‘20 m’ cannot be read as a dose [unreadable-dose]; write `min` for minutes; distances are `steps` or `lengths`
)"},
      {R"(2 x 20 s nicely)",
       R"(dose:1:1: error: ‘2 x 20 s nicely’ cannot be read as a dose [unreadable-dose]; put a comma before ‘nicely’ if it is a remark; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(10 star jumps)",
       R"(dose:1:1: error: ‘10 star jumps’ cannot be read as a dose [unreadable-dose]; put a comma before ‘star jumps’ if it is a remark; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(rest 20 s)",
       R"(dose:1:1: error: ‘rest 20 s’ does not say how much [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(3 sets)",
       R"(dose:1:1: error: ‘3 sets’ does not say how much [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(3 x)",
       R"(dose:1:1: error: ‘3 x’ does not say how much [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(10, rest)",
       R"(dose:1:5: error: ‘rest’ has no number [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(10, rest 20)",
       R"(dose:1:5: error: ‘rest 20’ has no unit [unreadable-dose]; say seconds or minutes: `rest 20 s`
)"},
      {R"(10, every 30)",
       R"(dose:1:5: error: ‘every 30’ has no unit [unreadable-dose]; say seconds or minutes: `every 30 s`
)"},
      {R"(hold 20)",
       R"(dose:1:1: error: ‘hold 20’ has no unit [unreadable-dose]; say seconds or minutes: `hold 20 s`
)"},
      {R"(10, up to 15 s)",
       R"(dose:1:5: error: only a `max hold` can have a cap [unreadable-dose]; write `max hold, up to 15 s`, or the time alone
)"},
      {R"(max hold, up to 15)",
       R"(dose:1:11: error: ‘up to 15’ has no unit [unreadable-dose]; say seconds or minutes: `up to 15 s`
)"},
      {R"(10, 20 s)",
       R"(dose:1:5: error: ‘20 s’ is a second amount [unreadable-dose]; write one amount, such as `2 x 20 s`, and put another drill on a line of its own
)"},
      {R"(10, rest 10 s, rest 20 s)",
       R"(dose:1:16: error: this dose gives the rest twice [unreadable-dose]; leave one out
)"},
      {R"(10 each side each side)",
       R"(dose:1:14: error: this dose gives the sides twice [unreadable-dose]; leave one out
)"},
      {R"(10, eahc side)",
       R"(dose:1:5: error: ‘eahc side’ is not known here [unreadable-dose]; did you mean `each side`?
)"},
      {R"(10, both sids)",
       R"(dose:1:5: error: ‘both sids’ is not known here [unreadable-dose]; did you mean `both sides`?
)"},
      {R"(10 rpes)",
       R"(dose:1:1: error: ‘10 rpes’ cannot be read as a dose [unreadable-dose]; did you mean `reps`?
)"},
      {R"(10, rets 20 s)",
       R"(dose:1:5: error: ‘rets 20 s’ cannot be read as a dose [unreadable-dose]; did you mean `rest`?
)"},
      {R"(0 reps)",
       R"(dose:1:1: error: ‘0’ is not a number of repetitions [bad-value]; write a whole number from 1 to 10000
)"},
      {R"(10001 reps)",
       R"(dose:1:1: error: ‘10001’ is not a number of repetitions [bad-value]; write a whole number from 1 to 10000
)"},
      {R"(101 x 10)",
       R"(dose:1:1: error: ‘101’ is not a number of sets [bad-value]; write a whole number from 1 to 100
)"},
      {R"(2.5 reps)",
       R"(dose:1:1: error: ‘2.5’ is not a number of repetitions [bad-value]; write a whole number from 1 to 10000
)"},
      {R"(99999999999999999999 reps)",
       R"(dose:1:1: error: ‘99999999999999999999’ is not a number of repetitions [bad-value]; write a whole number from 1 to 10000
)"},
      {R"(10,000 reps)",
       R"(dose:1:1: error: ‘10,000’ is not a number of repetitions [bad-value]; write a whole number from 1 to 10000
)"},
      {R"(25 h)",
       R"(dose:1:1: error: ‘25 h’ is not a time to train for [bad-value]; write a time of at most 24 hours, in whole thousandths of a second
)"},
      {R"(99999999999 h)",
       R"(dose:1:1: error: ‘99999999999 h’ is not a time to train for [bad-value]; write a time of at most 24 hours, in whole thousandths of a second
)"},
      {R"(0 s)",
       R"(dose:1:1: error: ‘0 s’ is no time at all [bad-value]; write a time above zero, such as `20 s`
)"},
      {R"(1:75)",
       R"(dose:1:1: error: ‘1:75’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(10, effort 11)",
       R"(dose:1:5: error: ‘effort 11’ is not on the scale [bad-value]; write a whole number from 0, rest, to 10, as hard as can be
)"},
      {R"(10, effort 6.5)",
       R"(dose:1:5: error: ‘effort 6.5’ is not on the scale [bad-value]; write a whole number from 0, rest, to 10, as hard as can be
)"},
      {R"(10, tempo 3-0-1)",
       R"(dose:1:5: error: ‘tempo 3-0-1’ cannot be read as a tempo [unreadable-dose]; write four numbers of seconds, down, pause, up, pause: `tempo 3-0-1-0`
)"},
      {R"(10, tempo 3-0-1-61)",
       R"(dose:1:5: error: ‘tempo 3-0-1-61’ has a phase of more than 60 s [bad-value]; write four numbers of seconds, down, pause, up, pause: `tempo 3-0-1-0`
)"},
      {R"(10, tempo 0-0-0-0)",
       R"(dose:1:5: error: ‘tempo 0-0-0-0’ is no time at all [bad-value]; write a time above zero, such as `20 s`
)"},
      {R"(10, pace 0 s)",
       R"(dose:1:5: error: ‘pace 0 s’ is no time at all [bad-value]; write a time above zero, such as `20 s`
)"},
      {R"(-5 reps)",
       R"(dose:1:1: error: ‘-5 reps’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(slowly)",
       R"(dose:1:1: error: ‘slowly’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`; if these words are not a dose, write a dash instead of the colon
)"},
      {R"(“10”)",
       R"(dose:1:1: error: ‘“10”’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(()",
       R"(dose:1:1: error: ‘(’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`; if these words are not a dose, write a dash instead of the colon
)"},
      {R"(:)",
       R"(dose:1:1: error: ‘:’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`; if these words are not a dose, write a dash instead of the colon
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(dose_of(c.written) == c.messages);
  }
}

// Shorthand that is refused, with the form to write; the corpus has more of them without hints.
TEST_CASE("what may mean two things is asked about, what is no dose for children is not done") {
  const Mistake cases[] = {
      {"3 x failure",
       "dose:1:5: error: ‘failure’ is no dose for children [unreadable-dose]; say how many good "
       "ones are enough, `8–12`, or for how long: `AMRAP 30 s` (as many good ones as fit), `max "
       "hold, up to 15 s`\n"},
      {"3/10",
       "dose:1:1: error: ‘3/10’ may mean several things [unreadable-dose]; write `3 x 10` for "
       "sets, `effort 3` for how hard it is, `3–10` for a range\n"},
      {"40/20",
       "dose:1:1: error: ‘40/20’ may mean several things [unreadable-dose]; write `40 s on, 20 s "
       "off` for work and rest, `40 x 20` for sets\n"},
      {"2x10/10",
       "dose:1:3: error: ‘10/10’ may be two sides, or work and rest [unreadable-dose]; write `10 "
       "each side`, or `10 s on, 10 s off`\n"},
      {"10+10",
       "dose:1:1: error: ‘10+10’ may be two sets or two sides [unreadable-dose]; write `2 x 10` "
       "for sets, `10 each side` for sides\n"},
      {"20 s/20 s",
       "dose:1:6: error: two equal times may be two sides, or work and rest [unreadable-dose]; "
       "write `20 s each side`, or `20 s, rest 20 s`\n"},
      {"10/8/6",
       "dose:1:1: error: ‘10/8/6’ has a number for each set [unreadable-dose]; write one number "
       "for all of them, `3 x 8`, or a line for each set\n"},
      {"10, RPE 7",
       "dose:1:5: error: ‘RPE 7’ may be on one of two scales [unreadable-dose]; write `effort 7`, "
       "where 0 is rest and 10 as hard as can be\n"},
      {"1.30 min",
       "dose:1:1: error: ‘1.30 min’ may be a decimal, or minutes and seconds [unreadable-dose]; "
       "write `1:30` or `1 min 18 s`\n"},
      {"AMRAP",
       "dose:1:1: error: ‘AMRAP’ does not say for how long [unreadable-dose]; write the time in "
       "which as many good ones as possible are done: `AMRAP 30 s`\n"},
      {"EMOM, 5 reps",
       "dose:1:1: error: ‘EMOM’ does not say for how many minutes [unreadable-dose]; write how "
       "often: `EMOM 6 min, 5 reps`, or `6 x 5, every 1 min`\n"},
      {"30 on 30 off",
       "dose:1:1: error: ‘30 on’ has no unit [unreadable-dose]; say seconds or minutes: `30 s "
       "on`\n"},
      {"2 laps",
       "dose:1:1: error: ‘2 laps’ may be of any length [unreadable-dose]; write `lengths`, "
       "`steps` or a time: `4 lengths`, `20 steps`, `2 min`\n"},
      {"10 reps, hold 2 s",
       "dose:1:10: error: ‘hold 2 s’ is a second amount [unreadable-dose]; if each one is held, "
       "write how long one takes: `10 reps, pace 2 s`\n"},
      {"10, 3 times a week",
       "dose:1:5: error: ‘3 times a week’ is no dose of one session [unreadable-dose]; write what "
       "is done in one session; the days go into `repeat:` at the top of the plan\n"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(dose_of(c.written) == c.messages);
  }
}

TEST_CASE("a quotation that ends behind a number is no time") {
  for (const char* line : {"- Play “Level 2”\n", "- Play ‘Beam 2’\n", "- Play \"Level 2\"\n",
                           "- Play 'Beam 2'\n", "- The “Beam 2” game\n"}) {
    INFO(line);
    CHECK(body_messages(std::string("## P\n\n") + line).empty());
  }
  CHECK(body_messages("## P\n\n- The “long” plank 20”\n") ==
        "plan.md:7:20: error: there is no colon before this dose [unreadable-dose]; put a colon "
        "between the drill and its dose: `The “long” plank: 20”`\n");
  CHECK(body_messages("## P\n\n- The “long” plank: 1’30”\n").empty());
  CHECK(body_messages("## P\n\n- Coach’s plank: 2’\n").empty());
}

TEST_CASE("a row of moves that cannot be read says which piece is odd") {
  const std::string form =
      "write several moves in a row as `10 star jumps, 10 high knees`, and what is done again in "
      "brackets: `2 x (10 star jumps, 10 high knees), rest 30 s`\n";
  CHECK(dose_of("3 x 10 star jumps, 10 high knees") ==
        "dose:1:1: error: ‘3 x’ may be for the first move or for all of them [unreadable-dose]; "
        "put what is done again in brackets: `3 x (10 star jumps, 10 high knees)`\n");
  CHECK(dose_of("10 star jumps, 10 high knees x 3") ==
        "dose:1:1: error: ‘x 3’ may be for the last move or for all of them [unreadable-dose]; "
        "put what is done again in brackets: `3 x (10 star jumps, 10 high knees)`\n");
  CHECK(dose_of("10 star jumps, 10 rpes, 10 high knees") ==
        "dose:1:16: error: ‘10 rpes’ is no move [unreadable-dose]; " + form);
  CHECK(dose_of("10 star jumps, rest 20 s, 10 high knees") ==
        "dose:1:16: error: ‘rest 20 s’ stands between two moves [unreadable-dose]; write rest, "
        "sets and sides behind the last move; with a rest after every move it is a circuit: "
        "`Circuit: 2 rounds, 30 s work, 15 s rest`, and the moves in a list below it\n");
  CHECK(dose_of("10 (5 slow, 5 fast)") ==
        "dose:1:1: error: ‘10’ may be how often, or how many in all [unreadable-dose]; write `10 "
        "x (5 slow, 5 fast)`, or leave the number out\n");
}

TEST_CASE("a line too long for a dose is refused without being taken apart") {
  std::string line;
  for (int i = 0; i < 100'000; ++i) line += "10, ";
  CHECK(dose_of(line).find("this is too long to be a dose") != std::string::npos);
}

}  // namespace
}  // namespace chalkleaf::plan
