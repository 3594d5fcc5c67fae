// Front matter gone wrong: each message whole. The text under test stands between the `---` lines.
#include <catch2/catch.hpp>

#include "plan/mistake.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("what is wrong in front matter is said once, with what to write") {
  const Mistake cases[] = {
      {R"(title: T
place: gym
slot: 75
)",
       R"(plan.md:4:7: warning: ‘75’ has no unit [bad-value]; say what it is: `75 s` or `75 min`
)"},
      {R"(title: T
place: gym
slot: 1:15
)",
       R"(plan.md:4:7: warning: ‘1:15’ could be hours or minutes [bad-value]; say which: `1:15 h` or `1:15 min`
)"},
      {R"(title: T
place: gym
slot: 0 min
)",
       R"(plan.md:4:7: warning: ‘0 min’ is no time at all [bad-value]; write a time above zero
)"},
      {R"(title: T
place: gym
slot: -5 min
)",
       R"(plan.md:4:7: warning: ‘-5 min’ is less than nothing [bad-value]; write a time above zero
)"},
      {R"(title: T
place: gym
slot: 25 h
)",
       R"(plan.md:4:7: warning: ‘25 h’ is not a time to train for [bad-value]; write a time of at most 24 hours, in whole thousandths of a second
)"},
      {R"(title: T
place: gym
slot: soon
)",
       R"(plan.md:4:7: warning: ‘soon’ is not a length of time [bad-value]; write it with its unit: `20 s`, `40 min`, `1 h` or `1:15 h`
)"},
      {R"(title: T
place: gym
slot: [40 min]
)",
       R"(plan.md:4:7: warning: ‘slot’ must be one value [bad-value]; write it on one line: `slot: …`
)"},
      {R"(title: T
place: gym
start: 17
)",
       R"(plan.md:4:8: warning: ‘17’ is not a time of day [bad-value]; write it with its minutes: `17:00`
)"},
      {R"(title: T
place: gym
start: 25:00
)",
       R"(plan.md:4:8: warning: ‘25:00’ is not a time of day [bad-value]; write it as `17:00`, `17.00` or `5 pm`
)"},
      {R"(title: T
place: gym
start: 13 pm
)",
       R"(plan.md:4:8: warning: ‘13 pm’ is not a time of day [bad-value]; write it as `17:00`, `17.00` or `5 pm`
)"},
      {R"(title: T
place: gym
start: noon
)",
       R"(plan.md:4:8: warning: ‘noon’ is not a time of day [bad-value]; write it as `17:00`, `17.00` or `5 pm`
)"},
      {R"(title: T
place: gym
date: 2026-02-30
)",
       R"(plan.md:4:7: warning: there is no day ‘2026-02-30’ [bad-value]; check the month and the day
)"},
      {R"(title: T
place: gym
date: 2 December 2026
)",
       R"(plan.md:4:7: warning: ‘2 December 2026’ is not a date that can be read [bad-value]; write it as year-month-day: `2026-12-02`
)"},
      {R"(title: T
place: gym
date: 2/12/2026
)",
       R"(plan.md:4:7: warning: ‘2/12/2026’ is not a date that can be read [bad-value]; write it as year-month-day: `2026-12-02` for 2 December, `2026-02-12` for 12 February
)"},
      {R"(title: T
place: gym
date: 2026-2-3
)",
       R"(plan.md:4:7: warning: ‘2026-2-3’ is not a date that can be read [bad-value]; write it as year-month-day: `2026-02-03`
)"},
      {R"(title: T
place: gym
repeat: Mon, Wedensday
)",
       R"(plan.md:4:14: warning: ‘Wedensday’ is not a day of the week [bad-value]; did you mean `Wednesday`?
)"},
      {R"(title: T
place: gym
repeat: [Mon, Mon]
)",
       R"(plan.md:4:15: warning: ‘Mon’ is named twice [bad-value]; name each day once
)"},
      {R"(title: T
place: gym
repeat: weekdays, Mon
)",
       R"(plan.md:4:19: warning: ‘Mon’ is named twice [bad-value]; name each day once
)"},
      {R"(title: T
place: gym
repeat: fortnightly
)",
       R"(plan.md:4:9: warning: ‘fortnightly’ is not a day of the week [bad-value]; write days as `Mon, Wed, Fri`, or `daily` or `weekdays`
)"},
      {R"(title: T
place: gym
plce: x
)",
       R"(plan.md:4:1: warning: ‘plce’ is not a key of the front matter [unknown-key]; did you mean `place`?
)"},
      {R"(title: T
place: gym
equipment:
  towel: a
  Towel: b
)",
       R"(plan.md:6:3: warning: ‘Towel’ is written twice [duplicate-key]; keep one of the two lines
)"},
      {R"(title: T
place: gym
timings: 3 s
)",
       R"(plan.md:4:10: warning: ‘timings’ must be entries with times [bad-value]; write them as `timings: {rep: 3 s, changeover: 10 s}`
)"},
      {R"(title: T
place: gym
timings: {reps: 3 s}
)",
       R"(plan.md:4:11: warning: ‘reps’ is not a key of the timings [unknown-key]; did you mean `rep`?
)"},
      {R"(title: T
place: gym
timings: {rep: 3}
)",
       R"(plan.md:4:16: warning: ‘3’ has no unit [bad-value]; say what it is: `3 s` or `3 min`
)"},
      {R"(title: T
place: gym
timings: {rep: 0 s, changeover: 0 s, rest: 0 s}
)",
       R"(plan.md:4:16: warning: ‘0 s’ is no time at all [bad-value]; write a time above zero
)"},
      {R"(title: T
place: gym
timings: {parts: 8 min}
)",
       R"(plan.md:4:18: warning: ‘parts’ must be entries with times [bad-value]; write them as `parts: {Warm-up: 8 min}`
)"},
      {R"(title: T
place: gym
timings:
  parts: {PP: 8 min, p: 1 min}
)",
       R"(plan.md:5:11: warning: the plan has no part ‘PP’ [bad-value]; did you mean `P`?
)"},
      {R"(title: T
place: gym
place: pool
)",
       R"(plan.md:4:1: warning: ‘place’ is written twice [duplicate-key]; keep one of the two lines
)"},
      {R"(title: T
place: pool
)",
       R"(plan.md:3:8: warning: ‘pool’ is not a place [bad-value]; write `place: gym` or `place: home`
)"},
      {R"(title: T
)",
       R"(plan.md:2:1: warning: the plan does not say where it is done, and was read as one for the hall [missing-key]; add the line `place: gym` to the front matter, or `place: home` for sheets to take home
)"},
      {R"(place: gym
)",
       R"(plan.md:2:1: warning: the plan has no title, and is called ‘Plan’ [missing-key]; add a line `title: ` to the front matter, or begin the text with a heading `# `
)"},
      {R"()",
       R"(plan.md:2:1: warning: the plan does not say where it is done, and was read as one for the hall [missing-key]; add the line `place: gym` to the front matter, or `place: home` for sheets to take home
plan.md:2:1: warning: the plan has no title, and is called ‘Plan’ [missing-key]; add a line `title: ` to the front matter, or begin the text with a heading `# `
)"},
      {R"(title: T
place gym
)",
       R"(plan.md:3:1: warning: this line has no colon [bad-value]; write it as `key: value`, or indent it if it belongs to the line above
)"},
      {R"(title:T
place:gym
)",
       R"(plan.md:2:1: warning: there is no space after the colon [bad-value]; write `title: T`
plan.md:3:1: warning: there is no space after the colon [bad-value]; write `place: gym`
)"},
      {R"(title: Day 2: jumps
place: gym
)",
       R"(plan.md:2:8: warning: the value of ‘title’ has a colon in it [bad-value]; put the value in quotation marks: `title: "Day 2: jumps"`
)"},
      {R"(title: T
place: gym
equipment:
	towel: x
)",
       R"(plan.md:5:1: warning: this line is indented with a tab [bad-value]; YAML is indented with spaces: replace the tab with two spaces
)"}};
  for (const Mistake& c : cases) {
    INFO(c.written);
    CHECK(messages(read_plan("---\n" + std::string(c.written) + "---\n## P\n").diagnostics) ==
          c.messages);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
