// The manual of the checks: what a body should and should not do, and who looks after it.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> body_checks() {
  return {
      {"stretch-before-raise", kError, "A stretch is held before anything has raised the pulse.",
       "Cold muscle is stretched with less range and more strain; movement first, then still "
       "stretches.",
       "Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise comes first.",
       "Put a drill that raises the pulse (jogging, skipping, a running game) before the stretch, "
       "or move the stretch "
       "to the cool-down.",
       "## Warm-up\n\n- Pike stretch: 2 x 20 s\n- Jog on the spot: 2 min", true, Stops::kHomeSheet},
      {"stretch-too-long", kWarning,
       "One stretch is held longer than guidance has it, or a muscle group is stretched for a "
       "minute or more before "
       "power work.",
       "A hold of 10 to 30 s does what a longer one does (from 12 years up to 60 s in the "
       "cool-down); from 60 s a muscle jumps and sprints "
       "worse for a while.",
       "ACSM's Guidelines for Exercise Testing and Prescription, 11th ed., table 5.6 (10-30 s; for "
       "adults); Behm et "
       "al. 2016, Appl Physiol Nutr Metab 41:1-11 (60 s before power: -4.6 %). A club sets "
       "‘limits: {longest-stretch: "
       "30 s, stretch-before-power: 60 s}’.",
       "Hold for 30 s at most and repeat it instead, or move the stretch behind the jumps.",
       "- Pike stretch: 1 x 90 s"},
      {"one-side-only", Severity::kNote,
       "A drill that works one side at a time has a dose without sides.",
       "One side gets all the work, or each gymnast guesses differently.", kCommonPractice,
       "Write ‘each side’, ‘each leg’ or ‘each arm’ in the dose.", "- Passé balance: 3 x 10 s"},
      {"power-before-raise", kWarning,
       "A jump or skill of full power comes before half a minute of anything that raises the "
       "pulse.",
       "Cold muscle tears when it has to work hard.",
       "Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise comes first; how "
       "little is too little is common practice, no source.",
       "Begin with two or three minutes of running, skipping or a running game.",
       "## Warm-up\n\n- Jog on the spot: 3 s\n- Tuck jumps: 2 x 8"},
      {"skill-when-tired", kWarning,
       "A hard skill (level 5 and above) comes within ten minutes of five minutes' very hard work.",
       "Tired arms and legs give way in what a child can do when fresh.", kCommonPractice,
       "Put hard skills straight behind the warm-up, and conditioning at the end.",
       "- Sprints: 8 min, effort 9\n- Back handspring: 5"},
      {"hold-too-long", kWarning,
       "A hold is far longer than a child of the group's age can keep its form.",
       "The weight then hangs on joints and the lower back.",
       "Common practice, no source: the library's ‘longest:’ for 7 to 11 years; as much below 7, "
       "half more to 11, twice as much from 12, three times where no ages are written.",
       "Hold it for the library's time, rest as long, and repeat.",
       "group: Wrens   (ages 6-8)\n…\n- Arch hold: 2 x 45 s"},
      {"too-much-load", kWarning,
       "Landings, weight on the hands or the neck, deep bends of the back or time upside down add "
       "up to a lot, in one session or in a group's week.",
       "Growing wrists, backs and knees complain of many small loads, each of them harmless.",
       "Common practice, no source; no forecast of injury. ‘chalkleaf loads PLAN’ shows the sums.",
       "Take out what the message names, or do less of it.",
       "group: Wrens   (ages 6-8)\n…\n- Drop jumps: 10 x 15"},
      {"too-many-hours", kWarning,
       "A group trains more hours in a week than its youngest has years.",
       "Children who do so have about twice the odds of a serious overuse injury.",
       "Jayanthi et al. 2015, Am J Sports Med 43(4):794-801 (odds ratio 2.07); National Athletic "
       "Trainers' Association statement of 2019 (value from memory).",
       "Take a session out of the week, or make sessions shorter.",
       "group: Wrens   (ages 6-8)\nslot: 120 min\nrepeat: mon, tue, wed, fri"},
      {"too-few-rest-days", kWarning,
       "A group has no day off in a week, or fewer than two without a session in the gym.",
       "Bodies grow and mend on the days between.",
       "At least one day off a week: AMSSM, AAP; two days off from organised training: National "
       "Athletic Trainers' Association statement of 2019 (value from memory).",
       "Leave two days free of the gym, and one of them free of anything but light practice.",
       "repeat: mon, tue, wed, thu, fri, sat"},
      {"unpaired-shape", Severity::kNote,
       "A session has several shapes for the front of the body and nothing at all for the back, or "
       "the other way round.",
       "Front and back grow strong together, and a back that only arches or only rounds complains.",
       kCommonPractice, "Add a drill for the other side, such as an arch hold or hip lifts.",
       "- Dish hold: 3 x 20 s\n- V-ups: 10   (and nothing for the back)"},
      {"level-above-group", kError, "A drill is of a higher level than its group does.",
       "A skill asked for too early is learned wrongly or hurts.",
       "The levels of the club's own library and groups.",
       "Use an easier rung of the drill's ladder, or change the level of the drill or of the group "
       "if it is wrong.",
       "group: Wrens   (level: 2)\n…\n- Back walkover: 3 goes   (level: 6)", true,
       Stops::kHomeSheet},
      {"too-few-adults", kError, "Fewer adults are with the group than its age and size ask for.",
       "When one adult is busy with one child, another has to see all the others.",
       "NSPCC, recommended adult to child ratios (guidance, not law): ages 4-8 1:6, 9-12 1:8, "
       "13-18 1:10, and always "
       "two adults at least; 2-3 1:4 and 0-2 1:3 (value from memory). Only those of 18 and over "
       "count. A club sets ‘limits: {fewest-adults: 2}’.",
       "Find another adult and write it as ‘adults: 3’, or take fewer gymnasts: ‘gymnasts: 12’.",
       "group: Wrens   (ages 6-8, size 14)\nadults: 2", true, Stops::kHomeSheet},
      {"no-adults-stated", Severity::kNote,
       "A plan says how many children come, and nothing of the adults with them.",
       "Whoever steps in for the coach has to know how many adults there must be.",
       "NSPCC, recommended adult to child ratios (guidance, not law).",
       "Write ‘adults: 2’, or name the group behind the club's staff. In a club with staff it is a "
       "warning.",
       "place: gym\ngymnasts: 14"},
      {"no-water-break", kError, "A long session has no water break.",
       "Children feel thirst late and do not like to ask.",
       "Common practice, no source: every 60 min; a club sets ‘limits: {water-after: 60 min}’. "
       "With "
       "‘heat: yes’ every 20 min: American Academy of Pediatrics 2011, Pediatrics 128(3):e741-e747 "
       "(value from memory).",
       "Add a line such as ‘- Water: 2 min’ between two parts.",
       "slot: 90 min   (and no line with water)", true, Stops::kHomeSheet},
      {"spotter-at-home", kError,
       "A home plan has a drill that needs a spotter or a coach, or that the library keeps in the "
       "gym.",
       "At home nobody is trained to catch a child, and there is no mat under it.",
       "The `spotter:`, `coach:` and `home:` of the library.",
       "Take the drill out, or use a rung of its ladder that needs nobody.",
       "place: home\n…\n- Handstand: 3 goes   (spotter: yes)", false, Stops::kHomeSheet},
      {"no-adult-note", kWarning,
       "Nothing in a home plan says that an adult is in the room; the home sheet says it then.",
       "At home no coach is there.", kCommonPractice,
       "Say it in your own words: ‘> **Safety.** An adult stays in the room’.",
       "place: home\n…\n> **Safety.** Clear two big steps of floor.", false, Stops::kHomeSheet},
      {"no-space-note", Severity::kNote,
       "Nothing in a home plan says what to clear away; the home sheet says it then.",
       "A living room is full of corners.", kCommonPractice,
       "Say it in your own words: ‘> **Safety.** Clear two big steps of floor in every "
       "direction’.",
       "place: home\n…\n> **Safety.** An adult stays in the room.", false, Stops::kHomeSheet},
      {"coach-words-at-home", kWarning, "Words on a family's sheet read like a note for the coach.",
       "What a coach notes about children is not for other eyes, and a parent would puzzle over "
       "it.",
       kCommonPractice,
       "Begin the coach's note with ‘Coach:’ on a line of its own; for families say ‘your coach’, "
       "or begin the line with ‘Family:’.",
       "place: home\n…\n- Squats: 10\n  - Coach stands behind the slower two"},
      {"hard-words", kWarning, "A family's sheet has a word of the trade that nothing explains.",
       "A parent who does not know the word does the drill wrongly, or not at all.",
       "Common practice, no source. Health information is written for a reading age of 9 to 11.",
       "Explain it in club.yaml (‘words: {dish: a shallow curve, lying on your back}’), in the "
       "drill's `plain:`, or "
       "with a plainer word.",
       "place: home\n…\n- Passé balance: 3 x 10 s each leg"},
      {"picture-without-text", kWarning, "A picture has no text for who cannot see it.",
       "A screen reader says nothing, and nor does the card when the picture is too dark to print.",
       "WCAG 2.2, success criterion 1.1.1; ISO 14289-1 (PDF/UA-1), 7.3.",
       "Say what it shows between the square brackets: ‘![a child in dish shape](dish.png)’.",
       "![](dish.png)"},
  };
}

}  // namespace chalkleaf::reason
