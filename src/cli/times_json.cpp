// See the header.
#include "cli/times_json.h"

#include <fmt/format.h>

#include <vector>

#include "base/json_text.h"
#include "rota/json.h"

namespace chalkleaf::cli {
namespace {

using plan::Amount;
using plan::AmountKind;
using plan::Dose;
using reason::DrillTime;

std::string seconds(Duration time) {
  return fmt::format("{:g}", static_cast<double>(time.in_milliseconds()) / 1000);
}
std::string seconds_or_null(const std::optional<Duration>& time) {
  return time ? seconds(*time) : "null";
}
std::string number_or_null(std::int64_t n) { return n > 1 ? std::to_string(n) : "null"; }

std::string_view sides_of(plan::Sides sides) {
  switch (sides) {
    case plan::Sides::kOnce:
      break;
    case plan::Sides::kEachSide:
      return "each side";
    case plan::Sides::kEachWay:
      return "each way";
    case plan::Sides::kEachLeg:
      return "each leg";
    case plan::Sides::kEachArm:
      return "each arm";
  }
  return {};
}

std::string sides_text(const Dose& dose) {
  if (dose.ways.empty()) {
    const std::string_view sides = sides_of(dose.sides);
    return sides.empty() ? "null" : json_string(sides);
  }
  std::string out;
  for (const plan::Words& way : dose.ways) out += (out.empty() ? "" : "/") + way.text;
  return json_string(out);
}

std::string count_text(const Amount& amount) {
  if (!amount.ladder.empty()) return fmt::format("[{}]", fmt::join(amount.ladder, ", "));
  if (amount.count_to) return fmt::format("[{}, {}]", amount.count, *amount.count_to);
  return std::to_string(amount.count);
}

std::string kind_and_value(std::string_view kind, const std::string& value) {
  return fmt::format(R"({{"kind": "{}", "value": {}}})", kind, value);
}

std::string amount_text(const Amount& amount) {
  switch (amount.kind) {
    case AmountKind::kRepetitions:
      return kind_and_value("reps", count_text(amount));
    case AmountKind::kSteps:
      return kind_and_value("steps", count_text(amount));
    case AmountKind::kLengths:
      return kind_and_value("lengths", count_text(amount));
    case AmountKind::kTime:
      if (amount.time_to) {
        return kind_and_value(
            "seconds", fmt::format("[{}, {}]", seconds(*amount.time), seconds(*amount.time_to)));
      }
      return kind_and_value("seconds", seconds_or_null(amount.time));
    case AmountKind::kMaxHold:
      return kind_and_value("max_hold", seconds_or_null(amount.time));
    case AmountKind::kMoves:
      break;
  }
  return kind_and_value("none", "null");
}

/// What a row says besides its dose.
struct Entry {
  std::string name;
  std::vector<std::string> notes;
  std::uint32_t line = 0;
  std::string rounds = "null";
  std::optional<Duration> work;  ///< of a circuit, at each station
  std::optional<Duration> rest;  ///< likewise, behind this station
  Duration start;
  Duration length;
  std::string why;
  const reason::HallDrill* hall = nullptr;
};

std::string hall_text(const reason::HallDrill* hall) {
  if (hall == nullptr) return R"("likely": null, "lanes": null, "sentence": null)";
  return fmt::format(R"("likely": {}, "lanes": {}, "sentence": {})", seconds(hall->likely),
                     hall->lanes > 0 ? std::to_string(hall->lanes) : "null",
                     json_string(hall->why));
}

std::string row_text(const Entry& row, const Dose* dose) {
  std::string sets = "null";
  std::string sides = "null";
  std::string amount = kind_and_value("none", "null");
  std::optional<Duration> rest = row.rest;
  if (dose != nullptr) {
    const bool goes = dose->in_goes && dose->amount.kind == AmountKind::kRepetitions &&
                      dose->amount.count == 1 && !dose->amount.count_to;
    sets = goes ? "null" : number_or_null(dose->sets);
    sides = sides_text(*dose);
    amount = goes ? kind_and_value("goes", std::to_string(dose->sets)) : amount_text(dose->amount);
    if (dose->rest) rest = dose->rest;
  } else if (row.work) {
    amount = kind_and_value("seconds", seconds(*row.work));
  }
  std::string notes;
  for (const std::string& note : row.notes)
    notes += (notes.empty() ? "" : ", ") + json_string(note);
  return fmt::format(
      R"({{"line": {}, "name": {}, "notes": [{}], "sets": {}, "rounds": {}, "sides": {}, )"
      R"("amount": {}, "turns": null, "rest_s": {}, "start_s": {}, "seconds": {}, "why": {}, {}}})",
      row.line, json_string(row.name), notes, sets, row.rounds, sides, amount,
      seconds_or_null(rest), seconds(row.start), seconds(row.length), json_string(row.why),
      hall_text(row.hall));
}

class Rows {
 public:
  explicit Rows(const club::TimedPlan& plan) : plan_(plan) {}

  void add(const DrillTime& time, const reason::HallDrill* hall) {
    const plan::Drill& drill = *time.drill;
    Entry alone;
    alone.hall = hall;
    if (!drill.circuit) return add_drill(time, std::move(alone));
    const plan::Circuit& circuit = *drill.circuit;
    for (const DrillTime& station : time.stations) {
      Entry row;
      row.hall = hall;
      row.rounds = number_or_null(circuit.rounds);
      row.work = circuit.work;
      row.rest = circuit.work ? circuit.rest : std::nullopt;
      const bool last = &station == &time.stations.back();
      if (last && circuit.between) row.rest = circuit.between;
      row.start = time.start + station.start;
      add_drill(station, std::move(row));
    }
  }
  std::string text() const { return fmt::format("{}", fmt::join(rows_, ", ")); }

 private:
  void add_drill(const DrillTime& time, Entry row) {
    const plan::Drill& drill = *time.drill;
    if (row.start == Duration()) row.start = time.start;
    row.length = time.length();
    row.why = time.reasoning;
    row.name = drill.name.text;
    row.line = plan_.line_of(drill.name.span);
    for (const plan::Words& cue : drill.cues) row.notes.push_back(cue.text);
    for (const plan::Note& note : drill.notes) row.notes.push_back(note.words.text);
    if (drill.dose) {
      for (const plan::Words& remark : drill.dose->remarks) row.notes.push_back(remark.text);
    }
    if (const std::string typed = plan_.typed(drill.name.span); !typed.empty()) {
      row.notes.push_back(typed);
    }
    if (!drill.dose || drill.dose->amount.kind != AmountKind::kMoves) {
      rows_.push_back(row_text(row, drill.dose ? &*drill.dose : nullptr));
      return;
    }
    for (const plan::Move& move : drill.dose->moves) {  // a row of moves is a drill each
      Dose dose = *drill.dose;
      dose.amount = move.amount;
      if (move.sides != plan::Sides::kOnce) dose.sides = move.sides;
      Entry one = row;
      one.notes.push_back(row.name);
      one.name = move.name.text;
      rows_.push_back(row_text(one, &dose));
    }
  }

  const club::TimedPlan& plan_;
  std::vector<std::string> rows_;
};

// In the hall; without words for it, the sum of what its drills say.
Duration model_of(const reason::PartTime& time) {
  if (time.hall) return time.hall->likely;
  Duration out;
  for (const DrillTime& drill : time.drills) {
    if (!drill.shared_time) out += drill.length();
  }
  return out;
}

std::string in_hall(const reason::PartTime& time) {
  if (!time.hall) {
    return R"("low": null, "likely": null, "high": null, "lanes": null, "working": null, )"
           R"("waiting": null, "sentence": null)";
  }
  const reason::HallPart& hall = *time.hall;
  return fmt::format(
      R"("low": {}, "likely": {}, "high": {}, "lanes": {}, "working": {}, "waiting": {}, )"
      R"("sentence": {})",
      seconds(hall.low), seconds(hall.likely), seconds(hall.high),
      hall.lanes > 0 ? std::to_string(hall.lanes) : "null", seconds(hall.working),
      seconds(hall.waiting), json_string(hall.why));
}

std::string part_text(const club::TimedPlan& plan, const reason::PartTime& time) {
  const plan::Part& part = *time.part;
  Rows rows(plan);
  for (std::size_t i = 0; i < time.drills.size(); ++i) {
    rows.add(time.drills[i], time.hall ? &time.hall->drills[i] : nullptr);
  }
  const Duration length = part.budget ? part.budget->value : time.length;
  return fmt::format(
      R"({{"name": {}, "line": {}, "seconds": {}, "model_seconds": {}, "written_seconds": {}, )"
      R"({}, "drills": [{}]}})",
      json_string(part.title.text), plan.line_of(part.title.span ? part.title.span : part.span),
      seconds(length), seconds(model_of(time)),
      part.budget ? seconds(part.budget->value) : std::string("null"), in_hall(time), rows.text());
}

}  // namespace

std::string times_json(const club::TimedPlan& plan) {
  const plan::Session& session = plan.session;
  std::vector<std::string> parts;
  for (const reason::PartTime& part : plan.timetable.parts) parts.push_back(part_text(plan, part));
  std::vector<std::string> rotations;
  for (const rota::Rotation& one : plan.timetable.rotations)
    rotations.push_back(rota::json_of(one, [&](const Span& span) { return plan.line_of(span); }));
  return fmt::format(
      R"({{"schema": {}, "title": {}, "place": "{}", "start": {}, "slot_seconds": {}, )"
      R"("seconds": {}, "parts": [{}], "rotations": [{}]}})"
      "\n",
      kTimesSchema, json_string(session.title.text),
      session.place.value == plan::Place::kHome ? "home" : "gym",
      session.start ? json_string(clock_text(session.start->value)) : "null",
      session.slot ? seconds(session.slot->value) : "null", seconds(plan.timetable.total),
      fmt::join(parts, ", "), fmt::join(rotations, ", "));
}

}  // namespace chalkleaf::cli
