// What a part takes in a hall with that group: turns at places, queues, and what goes by between
// drills. It is what a plan's times are judged by; a written time stays the clock.
//
// At a place with k lanes n gymnasts are ⌈n/k⌉ in a queue. A go blocks its lane for b, and nobody
// goes again before c has passed, so t goes of each take t × max(⌈n/k⌉ × b, c). All lengths of time
// are data (plan/hall_book.h). Tested by tests/reason/hall_time_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "plan/hall_book.h"
#include "plan/model.h"

namespace chalkleaf::reason {

/// One line of a part in the hall.
struct HallDrill {
  const plan::Drill* drill = nullptr;
  const plan::HallActivity* about = nullptr;  ///< of a line without a dose
  std::string place;                          ///< where they take turns; empty: all at once
  int gymnasts = 0;                           ///< in turn there
  int lanes = 0;
  Duration low;  ///< by the lower ends of ranges
  Duration likely;
  Duration high;
  Duration working;  ///< of one gymnast, by the likely length
  Duration waiting;  ///< of one gymnast, in the queue
  std::string why;   ///< a sentence without full stop
};

/// One part of the session in the hall.
struct HallPart {
  Duration low;
  Duration likely;
  Duration high;
  Duration working;  ///< of one gymnast
  Duration waiting;  ///< of one gymnast, in queues
  int lanes = 0;     ///< the fewest at a place where they take turns; 0: they take none
  std::vector<HallDrill> drills;
  std::string why;
};

/// How many gymnasts there are when neither plan nor club says (common practice, no source).
inline constexpr int kUsualGroup = 10;

/// Of each part, in order. Points into the session.
std::vector<HallPart> hall_times(const plan::Session& session, const plan::Club& club,
                                 const plan::HallBook& book);

}  // namespace chalkleaf::reason
