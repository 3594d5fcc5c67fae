// When each line of a session is done. Inside the room.
// Tested by tests/reason/order_checks_test.cpp.
#pragma once

#include <unordered_map>

#include "reason/timetable.h"

namespace chalkleaf::reason {

/// From the session's begin; of a circuit's station, from its first round to the circuit's end.
struct LineTime {
  Duration begin;
  Duration end;   ///< of its work and rest
  Duration work;  ///< all rounds
};

/// Looked up by the drill of a line.
class LineTimes {
 public:
  explicit LineTimes(const Timetable& timetable);
  LineTime of(const plan::Drill& drill) const;
  /// How long a line may have kept the pulse up; where nobody knows how long it takes, long enough.
  Duration raising(const plan::Drill& drill) const;

 private:
  std::unordered_map<const plan::Drill*, LineTime> times_;
};

}  // namespace chalkleaf::reason
