// Two plans that want the same thing of the hall at the same time: a station, kit of which there is
// not enough for both, a coach.
//
// Counted part by part: what a part uses it has from its begin to its end. Only things that the
// club counts can run out. Pure. Tested by tests/reason/clashes_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

struct WeekSession;

/// What a part of a session in the hall needs.
struct Want {
  enum class Kind { kStation, kKit, kCoach };
  Kind kind = Kind::kStation;
  std::string name = {};  ///< as the plan has it
  Duration from = {};     ///< of the day
  Duration until = {};
  std::int64_t count = 1;  ///< gymnasts at a station, pieces of kit
};
/// Of a session in the gym with a start; nothing of others.
std::vector<Want> wants_of(const plan::Session& session, const Timetable& timetable);

/// One thing two sessions want at a time.
struct Clash {
  const WeekSession* first = nullptr;
  const WeekSession* second = nullptr;
  Date day = {};
  Want::Kind kind = Want::Kind::kStation;
  std::string name = {};
  Duration from = {};  ///< of the day: where both want it
  Duration until = {};
  std::int64_t wanted = 0;  ///< by both together
  std::int64_t there = 0;   ///< in the club: places at a station, pieces; of a coach 1
};
/// In the order of the days and the clock. Points into `plans`.
std::vector<Clash> clashes(const std::vector<WeekSession>& plans, const plan::Club& club);

/// `the beam from 17:48 to 17:58 (6 wanted, 3 there)`
std::string clash_text(const Clash& clash);

/// `hall-clash`: one for each two plans, with all they clash in.
void check_clashes(const std::vector<WeekSession>& plans, const plan::Club& club,
                   Diagnostics& diagnostics);

}  // namespace chalkleaf::reason
