// The time of a circuit: station after station, round after round.
//
// A station has the circuit's work time or, where its line has a dose of its own, that. Between two
// stations of a round there is the rest that is written, or else a change-over. Tested by
// tests/reason/circuit_time_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

DrillTime station_time(const plan::Drill& station, const plan::Circuit& circuit,
                       const plan::Timings& timings) {
  DrillTime out;
  if (station.dose) {
    out = dose_time(*station.dose, timings, library_pace(station));
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
  bool alike = circuit.work.has_value();
  for (const DrillTime& station : stations) {
    each += station.work + station.rest;
    out.rest += station.rest;
    alike = alike && !station.drill->dose && !station.drill->dose_unreadable;
  }
  const std::string stations_text = counted(n, "station", "stations");
  out.term.text = alike ? fmt::format("{} × {}", stations_text, exact_text(*circuit.work))
                        : fmt::format("{} at {}", exact_text(each), stations_text);
  const Duration gaps = n > 1 ? times(between, n - 1) : Duration();
  if (gaps > Duration()) {
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
    if (stations.size() < drill.stations.size()) time.changeover = after;
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
  rounds.between = circuit.between.value_or(after);
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
