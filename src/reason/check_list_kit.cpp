// The manual of the checks: the drill library, kit, and what a home has.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> kit_checks() {
  return {
      {"unknown-drill", kWarning,
       "A drill's name is nearly one that the library has: the club's own or the program's shelf.",
       "It is printed as it stands, but nothing is known of it: no cues, no level, no check of its "
       "needs. Mostly it is a slip of spelling. With ‘shelf: off’ every drill is named that the "
       "club's library lacks.",
       kOurs,
       "Correct the name, add the name to `also:` of the drill it is, or write a file of its own "
       "in drills/.",
       "- Dsh hold: 2 x 20 s"},
      {"unknown-station", kWarning,
       "A drill stands `at:` a place that the club's hall does not list.",
       "Turns and waiting there cannot be worked out, so the session runs late.", kOurs,
       "Write the station as ‘hall:’ in club.yaml has it, or add it there.",
       "- Beam walk: 12 steps\n  - at: baem"},
      {"unknown-kit", kWarning,
       "A drill uses kit that neither the plan's `equipment:` nor the club's `kit:` lists.",
       "What is not on the list is not set out, and a family cannot look for it beforehand.", kOurs,
       "Add it to ‘equipment:’ of the plan or to ‘kit:’ in club.yaml, or correct its name.",
       "- Dish hold: 2 x 20 s\n  - uses: towel   (and no ‘towel’ under equipment)"},
      {"not-enough-kit", kWarning, "The club has fewer of something than the group needs.",
       "Some of the group stand and wait, or share what should not be shared.",
       "The club's own ‘kit:’ list.",
       "Let them work in turns (‘note: in pairs, two hoops’), use other kit, or correct the number "
       "in club.yaml.",
       "kit: {hoops: 4}\n…\n- Hoop jumps: 10 reps\n  - uses: hoop, one each   (with 8 gymnasts)"},
      {"no-substitute-at-home", kWarning,
       "A home plan uses kit that a family may not have, and says nothing about what to do "
       "without.",
       "A child who lacks the thing is left out of the drill, or finds something unsafe instead.",
       kCommonPractice,
       "Add a line below the drill: ‘- without towel: Dish hold, palms pressed together: 2 x 20 "
       "s’.",
       "place: home\n…\n- Dish hold: 2 x 20 s\n  - uses: towel"},
  };
}

}  // namespace chalkleaf::reason
