// How much each sign counts for a line's being a heading, a line of drills or a remark.
//
// One table; the unit is that of a plain sign. Measured on drafts of many authors (tests/drafts);
// a weight that only one author needs has no place here.
#pragma once

#include <cstddef>

namespace chalkleaf::draft {

inline constexpr std::size_t kLongestHead = 7;  ///< pieces of a heading without a clock

inline constexpr double kLongMinutes = 20;  ///< no drill takes as long
inline constexpr double kPartMinutes = 5;   ///< hardly a part is shorter, hardly a drill as long

struct Weights {
  // For a heading.
  double clock = 4;
  double hash = 6;
  double bold = 4;
  double capitals = 3;
  double part_word = 2;
  double whole_part_word = 1.5;
  double minutes_in_brackets = 3;
  double minutes = 2.5;
  double minutes_right_behind = 3.5;  ///< the word that opens a part: `drink 3 min`
  double break_word = 1;
  double break_with_minutes = 4;  ///< `water 5'`, in a list, too
  double long_minutes = 3;        ///< `Evening 60 min`
  double minutes_alone = 0.5;
  double minutes_of_prose = 6;  ///< `We begin seated, ten minutes. Heel raises, twenty. …`
  double colon_at_end = 2;
  double list_below = 2;
  double steps_in = 3.5;      ///< where the document is stepped, and the line below is further in
  double colon_above = 6;     ///< a colon ends the line, and the line below is further in
  double minutes_lead = 4;    ///< as those of several other lines do
  double inside_step = -3.5;  ///< there, further in itself
  double blank_before = 0.7;
  double bullet = -3;
  double emoji_with_minutes = 1;  ///< a picture where a bullet would stand
  double indent = -2;
  double long_head = -3;
  double sentence = -2;
  double remark_word = -4;
  double child = -7;
  double level = -5;
  double comma = -1.5;
  double begins_with_amount = -5;  ///< `EMOM 8: …`, `3 rounds: …`
  double runs_on = -2.5;
  double dose_in_head = -3;
  double weak_part = 0.8;       ///< where few headings are plain, and drills stand behind this one
  double heading_costs = -2.5;  ///< what a heading has to bring

  // For drills.
  double dosed = 2.5;
  double several = 2;      ///< two or more of its drills have doses
  double weak_dose = 0.8;  ///< a number before what is no known move: `12 new leotards`
  double listed = 0.8;     ///< a bullet or number, or indented below its heading
  double clock_of_drill = -3;
  double undosed = 0.2;
  double short_name = 0.5;
  double drill_before_parts = -3.5;
  double doses_before_parts = -1;  ///< three doses and more in a line
  double drill_in_tail = -1.5;

  // For a remark.
  double remark = 0.5;
  double remark_begins = 2.5;
  double about_child = 4;
  double sentence_verb = 1.5;  ///< `has`, `must`, where there is no dose
  double label = 5;            ///< `Coaches: …`, `need: …`
  double child_is_no_drill = -20;
  double remark_sentence = 0.5;
  double prose = 2;  ///< several sentences
  double dose_in_remark = -1;

  // From one state of the document to the next.
  double to_tail = -0.5;
  double back_to_part = -1.5;
};
inline constexpr Weights kWeights;

}  // namespace chalkleaf::draft
