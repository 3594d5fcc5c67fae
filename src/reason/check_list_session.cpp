// The manual of the checks: order, time and choices of a session.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> session_checks() {
  return {
      {"missing-warm-up", kWarning,
       "A session has no part that is its warm-up, or one with nothing in it.",
       "Cold muscles and an unready mind are hurt more easily, and a cover coach does what the "
       "card says.",
       "Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise, activate and "
       "mobilise, potentiate.",
       "Begin with a part under the heading ‘## Warm-up’ and list its drills, or link a shared "
       "warm-up there.",
       "## Bars\n\n- Dish hold: 2 x 20 s\n\n## Cool-down", true, Stops::kEverything, true},
      {"missing-cool-down", kWarning,
       "A session has no part that is its cool-down, or one with nothing in it.",
       "A session ends calmly, with time to settle, to look back and to say what hurts.",
       kCommonPractice,
       "End with a part under the heading ‘## Cool-down’, or link a shared cool-down there.",
       "## Warm-up\n\n- Jog on the spot: 2 min\n\n## Bars\n\n- Dish hold: 2 x 20 s", true,
       Stops::kEverything, true},
      {"warm-up-not-first", kWarning, "Something comes before the warm-up.",
       "A warm-up in the middle warms up for what is already done.",
       "Jeffreys 2007, Professional Strength and Conditioning 6:12-18.",
       "Move the warm-up up, before every other part.",
       "## Beam\n\n- Beam walk: 12 steps\n\n## Warm-up\n\n- Jog on the spot: 2 min", true,
       Stops::kEverything, true},
      {"cool-down-not-last", kWarning, "Something comes after the cool-down.",
       "What follows the cool-down starts the body up again and sends children home hot and hasty.",
       kCommonPractice, "Move the cool-down down, behind every other part.",
       "## Cool-down\n\n- Calm breathing: 1 min\n\n## Strong to finish\n\n- Tuck-ups: 3 x 8", true,
       Stops::kEverything, true},
      {"over-slot", kWarning, "The parts add up to more than the session's slot.",
       "The hall belongs to the next group afterwards; what is cut in a hurry is the cool-down.",
       kOurs,
       "Take the minutes out of the parts that the message names, or make the slot longer. "
       "‘chalkleaf times PLAN’ shows where each minute goes.",
       "slot: 20 min\n…\n- Dish hold: 30 x 40 s, rest 20 s", true, Stops::kEverything, true},
      {"under-slot", kWarning, "More than a tenth of the slot is not planned.",
       "Children who wait find something of their own to do.",
       "Common practice, no source. A club sets the share with ‘limits: {unused-share: 10}’.",
       "Add drills or time to the parts that the message names, or make the slot shorter.",
       "slot: 60 min\n…\n- Dish hold: 2 x 20 s"},
      {"over-budget", kWarning, "A part's drills take longer than the time the part is given.",
       "The next part then starts late, and its apparatus may be in use by another group.", kOurs,
       "Take drills out of the part, or give it more time.",
       "## Warm-up (2 min)\n\n- Jog on the spot: 3 min"},
      {"part-cannot-fit", kWarning,
       "In a hall with so many gymnasts a part takes more than twice the time it is given.",
       "Gymnasts queue: five goes of each of eight, one at a time, are nine minutes and not one. "
       "What is cut then is the cool-down, or the care with which a mat is put straight.",
       "Common practice, no source; the lengths of time and their fit to hand estimates are in "
       "‘themes/words/en/hall.yaml’. ‘chalkleaf times PLAN’ shows the sum.",
       "Take goes out, open another lane, give those who wait a side station, or give the part "
       "more time.",
       "gymnasts: 24\n…\n## Vault (5 min)\n\n- Squat on: 5 goes", true, Stops::kEverything, true},
      {"part-tight", Severity::kNote,
       "A part takes longer in a hall than it is given, even when all goes well.",
       "The written time stays the clock; a coach who knows it is tight plans what to leave out.",
       "Common practice, no source; see part-cannot-fit.",
       "Mark what can be left out, or give the part more time.",
       "gymnasts: 12\n…\n## Vault (10 min)\n\n- Squat on: 5 goes"},
      {"long-queue", Severity::kNote,
       "In a part of five minutes or more, one child works less than a twelfth of the time.",
       "Who waits learns nothing, cools down, and finds something of their own to do.",
       "Common practice, no source.",
       "Open another lane, or write a side station for those who wait.",
       "gymnasts: 16\n…\n## Vault\n\n- Squat on: 5 goes"},
      {"under-budget", kWarning,
       "A part's drills fill less than nine tenths of the time it is given.",
       "The heading promises minutes that nobody has planned, and what follows starts early.",
       "Common practice, no source. A club sets the share with ‘limits: {unused-share: 10}’.",
       "Add drills, leave a drill without a dose to take what is left, or give the part less time.",
       "## Games (10 min)\n\n- Tag: 3 min"},
      {"no-dose", kWarning,
       "A drill does not say how much to do, in a part that has no time of its own.",
       "Nobody knows when to stop, and no timetable can be worked out.", kOurs,
       "Write how much behind a colon, such as ‘Dish hold: 2 x 20 s’, or give the part a time: ‘## "
       "Games (5 min)’.",
       "## Shapes\n\n- Dish hold"},
      {"substitute-without-easier", kWarning, "A substitute for missing kit has no easier option.",
       "Who lacks the kit still needs a choice that is not “I can't”.", kCommonPractice,
       "Add a line below the substitute: ‘- easier: one foot on the floor’.",
       "- without towel: Dish hold, palms pressed together: 2 x 20 s", true, Stops::kEverything,
       true},
      {"choices-unordered", kWarning,
       "The choices of a line do not go from easy to hard, by the levels of the club's library.",
       "Children read a row of choices as a ladder, and a parent starts with the first.",
       kCommonPractice,
       "Write the easiest choice first and the hardest last, or correct the level in the drill's "
       "file.",
       "- Wall handstand or donkey kick: 3 goes"},
      {"duplicate-drill", kWarning,
       "A part lists the same drill with the same dose twice, or two files of the library have one "
       "name.",
       "Most often a line was copied and not changed; and of two files with one name only the "
       "first is used.",
       kOurs,
       "Take one of the two lines out, or change its dose; give each library file a name of its "
       "own.",
       "- Dish hold: 2 x 20 s\n- Dish hold: 2 x 20 s"},
  };
}

}  // namespace chalkleaf::reason
