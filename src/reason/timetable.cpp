// The session's timetable: every drill one after the other, from 0 to the total.
//
// A change-over belongs to the part whose drill it follows, so that parts add up to the session
// with nothing left over. Drills without a dose fill what is left of their part's budget, change-
// overs and moved kit taken off, so that the part takes exactly its budget. Kit is moved in the
// change-over it stands behind, unless its line has a time.
// Tested by tests/reason/timetable_test.cpp.
#include "reason/timetable.h"

#include <fmt/format.h>

#include <algorithm>

#include "plan/library.h"
#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;
using plan::Part;

/// What every drill's time depends on.
struct Setting {
  const plan::Session& session;
  const plan::Club& club;
};

// The dosed drills' own times; the others wait for `share_budget`.
DrillTime drill_time(const Drill& drill, const Part& part, const Setting& setting) {
  const plan::Timings& timings = setting.session.timings;
  const Waves turns = waves(setting.session, setting.club, drill, part.gymnasts);
  DrillTime out;
  if (drill.circuit) {
    out = circuit_time(drill, timings, turns);
  } else if (drill.dose) {
    out = dose_time(*drill.dose, timings, library_pace(drill), turns);
  } else {
    out.reasoning = drill.dose_unreadable ? "its dose cannot be read" : "no dose, so no time";
  }
  out.drill = &drill;
  out.in_turn = part.gymnasts.value_or(0);
  return out;
}

Duration sum(const PartTime& part) {
  Duration total;
  for (const DrillTime& drill : part.drills) total += drill.length();
  for (const KitMoveTime& move : part.kit_moves) total += move.length;
  return total;
}

// Whole milliseconds: n equal shares, and what does not divide goes to the last.
void share_budget(PartTime& part, Duration budget) {
  std::vector<DrillTime*> waiting;
  for (DrillTime& drill : part.drills) {
    if (!drill.drill->dose && !drill.drill->circuit) waiting.push_back(&drill);
  }
  if (waiting.empty()) return;
  const Duration left = std::max(Duration(), budget - sum(part));
  const auto n = static_cast<std::int64_t>(waiting.size());
  const Duration share = left / n;
  for (DrillTime* drill : waiting) {
    drill->shared_time = true;
    drill->work = drill == waiting.back() ? left - share * (n - 1) : share;
    const std::string rest_of_budget =
        left == budget
            ? fmt::format("the part's {}", exact_text(budget))
            : fmt::format("the {} left of the part's {}", exact_text(left), exact_text(budget));
    drill->reasoning =
        n == 1 ? rest_of_budget : fmt::format("1 of {} equal shares of {}", n, rest_of_budget);
  }
}

// Before the drill that comes: what club or plan say, else what that drill needs to get ready for.
Duration changeover_before(const Drill& next, const plan::Timings& timings) {
  const bool is_told = timings.changeover.origin != plan::Timing::Origin::kDefault;
  if (is_told || next.known == nullptr || !next.known->changeover) return timings.changeover.value;
  return next.known->changeover->value;
}

// `next` is the first drill behind this part; null when there is none.
PartTime part_time(const Part& part, const Setting& setting, const Drill* next) {
  PartTime out;
  out.part = &part;
  const std::vector<const Drill*> drills = plan::drills_of(part);
  out.drills.reserve(drills.size());
  for (const Drill* drill : drills) {
    out.drills.push_back(drill_time(*drill, part, setting));
    const bool last_of_part = out.drills.size() == drills.size();
    const Drill* following = last_of_part ? next : drills[out.drills.size()];
    if (following != nullptr) {
      out.drills.back().changeover = changeover_before(*following, setting.session.timings);
    }
  }
  for (const plan::Step& step : part.steps) {
    const auto* move = std::get_if<plan::KitMove>(&step);
    if (move != nullptr) out.kit_moves.push_back({move, {}, move->time.value_or(Duration())});
  }
  // A station's turn is as long as it is, whether its drills fill it or not.
  if (part.budget && !part.station_of) share_budget(out, part.budget->value);
  out.planned = sum(out);
  if (out.drills.empty() && part.budget) out.planned = std::max(out.planned, part.budget->value);
  out.length = part.budget ? part.budget->value : out.planned;
  return out;
}

// In the order of the lines. Kit without a time of its own is moved while the drill before it is
// changed over.
void set_starts_of(PartTime& part) {
  // What does not fit is at the part's end: the next part does not wait.
  const Duration end = part.start + part.length;
  Duration now = part.start;
  Duration since_change = now;
  auto drill = part.drills.begin();
  auto move = part.kit_moves.begin();
  for (const plan::Step& step : part.part->steps) {
    if (std::holds_alternative<Drill>(step)) {
      drill->start = std::min(now, end);
      now += drill->length();
      since_change = now - drill->changeover;
      ++drill;
    } else if (std::holds_alternative<plan::KitMove>(step)) {
      const bool timed = move->length > Duration();
      move->start = std::min(timed ? now : since_change, end);
      now += move->length;
      if (timed) since_change = now;
      ++move;
    }
  }
}

void set_starts(Timetable& timetable) {
  Duration now;
  for (PartTime& part : timetable.parts) {
    // Stations run beside each other, while the rotation lasts.
    const auto& beside = part.part->station_of;
    part.start = beside && *beside < timetable.parts.size() ? timetable.parts[*beside].start : now;
    set_starts_of(part);
    if (!beside) now += part.length;
  }
  timetable.total = now;
}

}  // namespace

const Seat* Timetable::seat_of(const plan::Part& part) const {
  const auto found = std::find_if(seats.begin(), seats.end(), [&](const Seat& seat) {
    return seat.part < parts.size() && parts[seat.part].part == &part;
  });
  return found == seats.end() ? nullptr : &*found;
}

const rota::Rotation* Timetable::rotation_of(const plan::Part& part) const {
  const Seat* seat = seat_of(part);
  return seat == nullptr || part.station_of ? nullptr : &rotations[seat->rotation];
}

Timetable timetable(const plan::Session& session, const plan::Club& club,
                    const plan::HallBook* hall) {
  // Behind each part the next drill of all, from the last part back.
  std::vector<const Drill*> behind(session.parts.size(), nullptr);
  const Drill* next = nullptr;
  for (std::size_t i = session.parts.size(); i-- > 0;) {
    // A station's last drill ends with its turn.
    behind[i] = session.parts[i].station_of ? nullptr : next;
    const std::vector<const Drill*> drills = plan::drills_of(session.parts[i]);
    if (!drills.empty()) next = drills.front();
  }
  Timetable out;
  out.parts.reserve(session.parts.size());
  for (std::size_t i = 0; i < session.parts.size(); ++i) {
    out.parts.push_back(part_time(session.parts[i], {session, club}, behind[i]));
  }
  set_starts(out);
  if (hall != nullptr) {
    std::vector<HallPart> parts = hall_times(session, club, *hall);
    for (std::size_t i = 0; i < parts.size(); ++i) out.parts[i].hall = std::move(parts[i]);
  }
  if (session.start) {
    out.start = session.start->value;
    out.end = session.start->value + out.total;
  }
  if (session.slot) out.spare = session.slot->value - out.total;
  return out;
}

}  // namespace chalkleaf::reason
