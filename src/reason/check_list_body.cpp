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
       "A hold of 10 to 30 s does what a longer one does; from 60 s a muscle jumps and sprints "
       "worse for a while.",
       "ACSM's Guidelines for Exercise Testing and Prescription, 11th ed., table 5.6 (10-30 s; for "
       "adults); Behm et "
       "al. 2016, Appl Physiol Nutr Metab 41:1-11 (60 s before power: -4.6 %). A club sets "
       "‘limits: {longest-stretch: "
       "30 s, stretch-before-power: 60 s}’.",
       "Hold for 30 s at most and repeat it instead, or move the stretch behind the jumps.",
       "- Pike stretch: 1 x 90 s"},
      {"one-side-only", kWarning, "A drill that works one side at a time has a dose without sides.",
       "One side gets all the work, or each gymnast guesses differently.", kCommonPractice,
       "Write ‘each side’, ‘each leg’ or ‘each arm’ in the dose.", "- Passé balance: 3 x 10 s"},
      {"unpaired-shape", Severity::kNote,
       "A session trains the dish but not the arch, or the other way round.",
       "The front and the back of the body grow strong together, and a back that only arches or "
       "only rounds "
       "complains.",
       kCommonPractice, "Add a drill of the other shape, or of both, such as a dish-to-arch roll.",
       "- Dish hold: 3 x 20 s   (and no arch in the session)"},
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
       "two adults at least. A club sets ‘limits: {fewest-adults: 2}’.",
       "Find another adult and write it as ‘adults: 3’, or take fewer gymnasts: ‘gymnasts: 12’.",
       "group: Wrens   (ages 6-8, size 14)\nadults: 2", true, Stops::kHomeSheet},
      {"no-water-break", kError, "A long session has no water break.",
       "Children feel thirst late and do not like to ask.",
       "Common practice, no source. A club sets the time with ‘limits: {water-after: 60 min}’.",
       "Add a line such as ‘- Water: 2 min’ between two parts.",
       "slot: 90 min   (and no line with water)", true, Stops::kHomeSheet},
      {"spotter-at-home", kError,
       "A home plan has a drill that needs a spotter or a coach, or that the library keeps in the "
       "gym.",
       "At home nobody is trained to catch a child, and there is no mat under it.",
       "The `spotter:`, `coach:` and `home:` of the library.",
       "Take the drill out, or use a rung of its ladder that needs nobody.",
       "place: home\n…\n- Handstand: 3 goes   (spotter: yes)", false, Stops::kHomeSheet},
      {"no-adult-note", kError, "No safety note of a home plan says that an adult is in the room.",
       "At home no coach is there.", kCommonPractice,
       "Add it as a block quote: ‘> **Safety.** An adult stays in the room’.",
       "place: home\n…\n> **Safety.** Clear two big steps of floor.", false, Stops::kHomeSheet},
      {"no-space-note", kError, "No safety note of a home plan says what to clear away.",
       "A living room is full of corners.", kCommonPractice,
       "Add it as a block quote: ‘> **Safety.** Clear two big steps of floor in every direction’.",
       "place: home\n…\n> **Safety.** An adult stays in the room.", false, Stops::kHomeSheet},
      {"coach-words-at-home", kWarning, "Words on a family's sheet read like a note for the coach.",
       "What a coach notes about children is not for other eyes, and a parent would puzzle over "
       "it.",
       kCommonPractice,
       "Begin the coach's note with ‘Coach:’ on a line of its own; for families say ‘your coach’, "
       "or "
       "begin the line with ‘Family:’.",
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
