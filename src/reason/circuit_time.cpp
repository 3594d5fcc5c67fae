// The time of a circuit: station after station, round after round.
//
// A station has the circuit's work time or, where its line has a dose of its own, that. Between two
// stations of a round there is the rest that is written, or else a change-over. A rest that the
// station's own line gives behind its one set stands in the place of that, and, where the circuit
// does not say what is between rounds, between them too (common practice, no source). Tested by
// tests/reason/circuit_time_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

// `Squats: 10, rest 20 s`: the rest behind the station's one set.
std::optional<Duration> own_rest(const plan::Drill& station) {
  if (!station.dose || !station.dose->rest) return std::nullopt;
  const bool one = station.dose->sets == 1 && station.dose->repeats_per_set() == 1;
  return one ? station.dose->rest : std::nullopt;
}

DrillTime station_time(const plan::Drill& station, const plan::Circuit& circuit,
                       const plan::Timings& timings) {
  DrillTime out;
  if (station.dose) {
    plan::Dose dose = *station.dose;
    if (own_rest(station)) dose.rest.reset();  // it stands between this station and the next
    out = dose_time(dose, timings, library_pace(station));
  } else if (station.dose_unreadable) {
    out.reasoning = "its dose cannot be read";
  } else if (circuit.work) {
    out.work = *circuit.work;
    out.reasoning = exact_text(*circuit.work);
  } else {
    out.reasoning = "no dose, so no time";
  }
  out.drill = &station;
  return out;
}

/// One round, and how much of it is no work.
struct Round {
  Term term;
  Duration rest;
};

// `4 stations × 30 s + 3 × 15 s rest`; stations that differ have only their sum here, and a line of
// their own in the table.
Round one_round(const std::vector<DrillTime>& stations, const plan::Circuit& circuit,
                Duration between) {
  Round out;
  const auto n = static_cast<std::int64_t>(stations.size());
  Duration each;
  Duration gaps;
  bool alike = circuit.work.has_value();
  bool own_rests = false;
  for (const DrillTime& station : stations) {
    each += station.work + station.rest;
    out.rest += station.rest;
    alike = alike && !station.drill->dose && !station.drill->dose_unreadable;
    if (&station == &stations.back()) break;
    gaps += station.changeover;
    own_rests = own_rests || station.changeover != between;
  }
  const std::string stations_text = counted(n, "station", "stations");
  out.term.text = alike ? fmt::format("{} × {}", stations_text, exact_text(*circuit.work))
                        : fmt::format("{} at {}", exact_text(each), stations_text);
  if (own_rests) {
    out.term.text += fmt::format(" + {} between them", exact_text(gaps));
  } else if (gaps > Duration()) {
    out.term.text += fmt::format(" + {} × {} {}", n - 1, exact_text(between),
                                 circuit.rest ? "rest" : "change-over");
  }
  out.term.time = each + gaps;
  out.rest += gaps;
  return out;
}

}  // namespace

DrillTime circuit_time(const plan::Drill& drill, const plan::Timings& timings, const Waves& waves) {
  const plan::Circuit& circuit = *drill.circuit;
  const Duration after = circuit.rest.value_or(timings.changeover.value);
  std::vector<DrillTime> stations;
  stations.reserve(drill.stations.size());
  Duration at;
  for (const plan::Drill& station : drill.stations) {
    stations.push_back(station_time(station, circuit, timings));
    DrillTime& time = stations.back();
    time.start = at;
    if (stations.size() < drill.stations.size())
      time.changeover = own_rest(station).value_or(after);
    at += time.length();
  }
  DrillTime out;
  if (stations.empty()) {
    out.reasoning = "no stations, so no time";
    out.drill = &drill;
    return out;
  }
  const Round round = one_round(stations, circuit, after);
  Term term = round.term;
  const bool alone = circuit.rounds == 1 && waves.count == 1;
  if (!alone) term.text = "(" + term.text + ")";
  Repeated rounds;
  rounds.count = circuit.rounds;
  rounds.counted = counted(circuit.rounds, "round", "rounds");
  rounds.between = circuit.between.value_or(own_rest(drill.stations.back()).value_or(after));
  rounds.between_words = "between rounds";
  rounds.says_where = true;
  out = in_waves(term, rounds, waves);
  const Duration resting = times(round.rest, circuit.rounds);
  out.work = std::max(Duration(), out.work - resting);
  out.rest += resting;
  out.drill = &drill;
  out.stations = std::move(stations);
  return out;
}

}  // namespace chalkleaf::reason
