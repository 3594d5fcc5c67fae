// See the header.
#include "reason/line_times.h"

#include "plan/library.h"
#include "reason/sums.h"

namespace chalkleaf::reason {

LineTimes::LineTimes(const Timetable& timetable) {
  for (const PartTime& part : timetable.parts) {
    for (const DrillTime& time : part.drills) {
      const Duration end = time.start + time.work + time.rest;
      times_[time.drill] = {time.start, end, time.work};
      if (!time.drill->circuit) continue;
      for (const DrillTime& station : time.stations) {
        times_[station.drill] = {time.start + station.start, end,
                                 times(station.work, time.drill->circuit->rounds)};
      }
    }
  }
}

LineTime LineTimes::of(const plan::Drill& drill) const {
  const auto found = times_.find(&drill);
  return found == times_.end() ? LineTime{} : found->second;
}

// Laps, lengths and `to the bin and back: 2` are ways to go, and nobody knows how long they are.
Duration LineTimes::raising(const plan::Drill& drill) const {
  constexpr Duration kLongEnough = Duration::minutes(10);
  const bool in_time = drill.dose && drill.dose->amount.kind == plan::AmountKind::kTime;
  const bool at_a_pace = drill.dose && drill.dose->amount.kind == plan::AmountKind::kRepetitions &&
                         drill.known != nullptr && drill.known->pace;
  const Duration work = of(drill).work;
  return (in_time || at_a_pace) && work > Duration() ? work : kLongEnough;
}

}  // namespace chalkleaf::reason
