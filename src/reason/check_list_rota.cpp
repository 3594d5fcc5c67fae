// The manual of the checks: rotations.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> rotation_checks() {
  return {
      {"rota-slip", kWarning,
       "In the grid of a rotation a group is in two places at once or in none, comes to a station "
       "twice or never, or a "
       "name is nobody's.",
       "The grid hangs on the wall, and at that moment two groups stand at one beam with nobody to "
       "say who goes.",
       kOurs,
       "Write what the message shows into the cell. What is meant is left alone when the plan says "
       "so: ‘beam twice for "
       "F’, ‘D: no vault’, ‘rest’ in the cell.",
       "| | vault | bars | beam |\n|---|---|---|---|\n| 5.00 | A | B | C |\n| 5.30 | C | A | A "
       "|\n| 6.00 | B | C | A |",
       true, Stops::kEverything, true},
      {"rota-clock", kWarning,
       "The clock of a rotation runs backwards, its turns are not as long as the heading says, or "
       "there are more or "
       "fewer of them.",
       "All groups move at once: one wrong time makes every coach wait, or walk into a group that "
       "is not done.",
       kOurs, "Correct the time the message points at, or the heading.",
       "## Rotations (3 x 40 min)\n\n| | vault | bars |\n|---|---|---|\n| 5.00 | A | B |\n| 5.30 | "
       "B | A |"},
      {"rota-full", kWarning,
       "More gymnasts are at a station than it takes, or a coach would be in two places.",
       "Who cannot be seen is not coached, and who cannot be spotted is hurt.",
       "A rule of Chalkleaf's own; how many a station takes is the plan's to say: ‘beam max 6’.",
       "Split the group, open another lane, or give the station or group to another coach.",
       "bars max 6\n\n- groups: A 8, B 5", true, Stops::kEverything, true},
      {"rota-rule", kWarning,
       "A line behind ‘must:’ is not kept by the grid, cannot be kept with the others, or cannot "
       "be read.",
       "What a coach calls a must is a hand that is ripped or a group that shares one crash mat.",
       kOurs,
       "Change the grid, or take the line out; a line that cannot be read is printed, and nothing "
       "looks after it.",
       "- must: A not first on vault"},
      {"hall-clash", kWarning,
       "Two sessions of the club want the same station, kit or coach at the same time.",
       "Two groups find out at the beam, with sixteen children looking on.",
       "A rule of Chalkleaf's own, from what club.yaml says of hall and kit.",
       "Let one session begin later, or swap two of its parts. ‘chalkleaf clashes’ shows all there "
       "are.",
       "a.md: start: \"17:00\", Vault 17:20 to 17:40\nb.md: start: \"17:15\", Vault 17:30 to "
       "17:50"},
  };
}

}  // namespace chalkleaf::reason
