// The manual of the checks: figures, and the poses that describe them.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> figure_list_checks() {
  return {
      {"unknown-figure", kWarning,
       "A drill, a line of a plan or a pose names a figure that is not there.",
       "The sheet then shows no picture where the coach meant one.", kOurs,
       "Write the name as the catalogue has it (‘chalkleaf figures’ draws all of them), or "
       "describe the figure in a file of the club's folder ‘figures’.",
       "- Dish hold: 2 x 20 s\n  - figure: dihs"},
      {"figure-cycle", kError, "A figure begins from another that begins from it.",
       "Neither can be drawn.", kOurs, "Describe one of them by its own joints, without ‘from’.",
       "figures:\n  small tuck: {from: smaller tuck}\n  smaller tuck: {from: small tuck}", false},
      {"figure-range", kWarning, "A joint of a figure bends further than most people's joints do.",
       "Children copy what they see; and most often an angle is a slip of the pen.",
       "AAOS 1965, Joint Motion; 38 CFR 4.71a; Soucie et al. 2011, Haemophilia 17:500-507 (ages 2 "
       "to 8): the larger value of each joint. Trained gymnasts pass them at shoulder, hip, trunk "
       "and "
       "ankle: Kirby et al. 1981, American Journal of Sports Medicine 9:160-164.",
       "Bend the joint less; ‘range: trained’ allows a gymnast's range where gymnasts have it.",
       "figures:\n  look down: {touches: feet, joints: {neck: 60}}"},
      {"figure-impossible", kError, "A joint of a figure bends further than anybody's could.",
       "Most often an angle is a slip of the pen, or counted from the wrong end.",
       "A rule of Chalkleaf's own: limits far outside the published ranges of ‘figure-range’.",
       "Bend the joint less. Angles are degrees from standing with hanging arms.",
       "figures:\n  look behind: {touches: feet, joints: {neck: 180}}"},
      {"figure-contact", kError,
       "A part of the body should touch something that it cannot get to, or nothing is touched at "
       "all.",
       "A floating foot says that the picture is not to be trusted.", kOurs,
       "Change the angles so that the part gets there, or take it out of ‘touches’ or ‘hands on’.",
       "figures:\n  hands to toes: {touches: feet, hands on: toes}"},
      {"figure-falls", kWarning,
       "A pose that is held has its centre of mass beside what it stands on.",
       "Nobody can hold it; most often an angle is wrong.",
       "Segment masses: Dempster after Winter 2009, table 4.1; of children Jensen 1986 and 1989.",
       "Correct ‘lean’ or the joints, name what else bears in ‘touches’, or write ‘still: no’ for "
       "a moment of a movement.",
       "figures:\n  lean on the line: {touches: feet, lean: 40}"},
      {"figure-below-ground", kWarning, "A part of a figure lies below the ground.",
       "The picture shows what cannot be.", kOurs,
       "Add the part to ‘touches’ if it bears, or bend what carries it.",
       "figures:\n  seat on the floor: {touches: seat, joints: {hip: 60}}"}};
}

}  // namespace chalkleaf::reason
