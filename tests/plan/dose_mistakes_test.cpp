// Doses that cannot be read: each message whole, each pointing at the clause it is about.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

struct Mistake {
  const char* written;
  const char* messages;
};

TEST_CASE("a dose that cannot be read says where and what to write") {
  const Mistake cases[] = {
      {R"(2 by 20 s)",
       R"(dose:1:1: error: ‘2 by 20 s’ cannot be read as a dose [unreadable-dose]; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
)"},
      {R"(3 x 8–12)",
       R"(dose:1:5: error: ‘8–12’ is a range [unreadable-dose]; choose one number, the one you would call out
)"},
      {R"(8-12)",
       R"(dose:1:1: error: ‘8-12’ is a range [unreadable-dose]; choose one number, the one you would call out
)"},
      {R"(8 to 12 reps)",
       R"(dose:1:1: error: ‘8 to 12’ is a range [unreadable-dose]; choose one number, the one you would call out
)"},
      {R"(20 m)",
       R"(dose:1:1: error: ‘20 m’ cannot be read as a dose [unreadable-dose]; write `min` for minutes; distances are `steps` or `lengths`
)"},
      {R"(2 x 20 s slow)",
       R"(dose:1:1: error: ‘2 x 20 s slow’ cannot be read as a dose [unreadable-dose]; put a comma before ‘slow’ if it is a remark; write the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 goes`
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

TEST_CASE("a line too long for a dose is refused without being taken apart") {
  std::string line;
  for (int i = 0; i < 100'000; ++i) line += "10, ";
  CHECK(dose_of(line).find("this is too long to be a dose") != std::string::npos);
}

}  // namespace
}  // namespace chalkleaf::plan
