// Circuits: the sums, worked by hand beside each case.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

plan::Circuit circuit(std::int64_t rounds, std::optional<Duration> work,
                      std::optional<Duration> rest, std::optional<Duration> between = {}) {
  plan::Circuit out;
  out.rounds = rounds;
  out.work = work;
  out.rest = rest;
  out.between = between;
  return out;
}

SessionMaker with(const plan::Circuit& circuit, const std::vector<std::optional<Dose>>& stations) {
  SessionMaker maker;
  maker.part("Strong").drill("Strong circle");
  maker.last_drill().circuit = circuit;
  for (const auto& dose : stations) maker.station("Station", dose);
  return maker;
}

std::string summed_circuit(SessionMaker maker, const plan::Club& club = {}) {
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, club);
  const DrillTime& time = table.parts[0].drills[0];
  std::string out = exact_text(time.work) + " + " + exact_text(time.rest) + " = " + time.reasoning;
  for (const DrillTime& station : time.stations) {
    out += "\n" + stopwatch_text(station.start) + " " + exact_text(station.work) + " + " +
           exact_text(station.rest) + " + " + exact_text(station.changeover) + " = " +
           station.reasoning;
  }
  return out;
}

}  // namespace

TEST_CASE("a circuit: work and rest at each station, round after round") {
  // One round 3 × 30 s + 2 × 15 s = 120 s; 3 × 120 s + 2 × 60 s = 480 s, of which 270 s are work.
  CHECK(summed_circuit(with(circuit(3, s(30), s(15), s(60)), {{}, {}, {}})) ==
        "4 min 30 s + 3 min 30 s = 3 rounds × (3 stations × 30 s + 2 × 15 s rest) + 2 × 1 min "
        "between rounds\n"
        "0:00 30 s + 0 s + 15 s = 30 s\n"
        "0:45 30 s + 0 s + 15 s = 30 s\n"
        "1:30 30 s + 0 s + 0 s = 30 s");
}

TEST_CASE("a rest in a station's own line stands between it and the next") {
  // One round 20 s + 30 s rest + 20 s + 15 s rest + 20 s = 105 s; after it the last one's 40 s.
  const auto rested = [](Duration rest) {
    Dose out = reps(1, 10);
    out.rest = rest;
    return out;
  };
  CHECK(summed_circuit(with(circuit(2, {}, s(15)), {rested(s(30)), reps(1, 10), rested(s(40))})) ==
        "2 min + 2 min 10 s = 2 rounds × (1 min at 3 stations + 45 s between them) + 40 s between "
        "rounds\n"
        "0:00 20 s + 0 s + 30 s = 10 reps × 2 s (a rep, default)\n"
        "0:50 20 s + 0 s + 15 s = 10 reps × 2 s (a rep, default)\n"
        "1:25 20 s + 0 s + 0 s = 10 reps × 2 s (a rep, default)");
  // What is written between rounds counts there.
  CHECK(summed_circuit(with(circuit(2, {}, s(15), s(60)), {reps(1, 10), rested(s(40))})) ==
        "1 min 20 s + 1 min 30 s = 2 rounds × (40 s at 2 stations + 1 × 15 s rest) + 1 min between "
        "rounds\n"
        "0:00 20 s + 0 s + 15 s = 10 reps × 2 s (a rep, default)\n"
        "0:35 20 s + 0 s + 0 s = 10 reps × 2 s (a rep, default)");
}

TEST_CASE("a circuit without a rest of its own takes a change-over; between rounds the same") {
  // 2 × (40 s + 15 s) + 15 s
  CHECK(summed_circuit(with(circuit(2, s(20), {}), {{}, {}})) ==
        "1 min 20 s + 45 s = 2 rounds × (2 stations × 20 s + 1 × 15 s change-over) + 15 s between "
        "rounds\n"
        "0:00 20 s + 0 s + 15 s = 20 s\n"
        "0:35 20 s + 0 s + 0 s = 20 s");
  CHECK(summed_circuit(with(circuit(1, s(20), Duration()), {{}, {}})) ==
        "40 s + 0 s = 2 stations × 20 s\n"
        "0:00 20 s + 0 s + 0 s = 20 s\n"
        "0:20 20 s + 0 s + 0 s = 20 s");
}

TEST_CASE("a station's own dose counts instead of the work time, its inner rest as rest") {
  Dose holds = hold(2, s(10));
  holds.rest = s(5);
  // 20 s + 25 s, of which 5 s are rest; 2 × (45 s + 10 s) + 10 s = 120 s.
  CHECK(summed_circuit(with(circuit(2, s(30), s(10)), {reps(1, 10), holds})) ==
        "1 min 20 s + 40 s = 2 rounds × (45 s at 2 stations + 1 × 10 s rest) + 10 s between "
        "rounds\n"
        "0:00 20 s + 0 s + 10 s = 10 reps × 2 s (a rep, default)\n"
        "0:30 20 s + 5 s + 0 s = 2 sets × 10 s + 1 × 5 s rest");
}

TEST_CASE("a circuit at a station of the hall is done by one wave after the other") {
  plan::Club club;
  club.stations = {station("floor strip", 1, 5)};
  SessionMaker maker = with(circuit(2, s(20), s(10), s(30)), {{}, {}});
  maker.gymnasts(10);
  maker.last_drill().at = {"floor strip", {}};
  // One round 50 s, two waves 100 s, more than 50 s + 30 s: 2 × 100 s, of which 2 × 40 s are work.
  CHECK(summed_circuit(maker, club).substr(0, summed_circuit(maker, club).find('\n')) ==
        "1 min 20 s + 2 min = 2 rounds × 2 waves of 5 gymnasts × (2 stations × 20 s + 1 × 10 s "
        "rest)");
}

TEST_CASE("a circuit with nothing in it takes no time, and stations without time are told") {
  CHECK(summed_circuit(with(circuit(3, s(30), {}), {})) == "0 s + 0 s = no stations, so no time");
  SessionMaker empty = framed(SessionMaker(), s(60), [](SessionMaker& m) {
    m.part("Strong").drill("Strong circle");
    m.last_drill().circuit = circuit(3, s(30), {});
  });
  CHECK(checked(empty) ==
        "s.md:5:1: warning: the circuit ‘Strong circle’ has no drills [no-dose]; list its drills "
        "below it, each indented by two spaces\n");
  SessionMaker timeless = framed(SessionMaker(), s(60), [](SessionMaker& m) {
    m.part("Strong").drill("Strong circle");
    m.last_drill().circuit = circuit(3, {}, s(15));
    m.station("Squats", reps(1, 10)).station("Plank");
  });
  CHECK(checked(timeless) ==
        "s.md:7:1: warning: ‘Plank’ has no dose, and its circuit no time for each station "
        "[no-dose]; write the work time behind ‘Strong circle’, as in ‘3 rounds, 30 s work, 15 s "
        "rest’, or how much behind this drill\n");
}

TEST_CASE("a circuit takes its own time in a part with a budget; the others share what is left") {
  SessionMaker maker;
  maker.part("Strong").budget(s(300)).drill("Strong circle");
  maker.last_drill().circuit = circuit(1, s(30), s(10));
  maker.station("Squats").station("Plank");
  maker.drill("Free play");
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  CHECK(table.parts[0].drills[0].work == s(60));
  CHECK(table.parts[0].drills[1].work == s(300 - 70 - 15));
  CHECK(table.total == s(300));
}

TEST_CASE("absurd circuits stay within bounds") {
  SessionMaker maker = with(circuit(1'000'000'000, s(86'400), s(86'400)), {{}, {}});
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  CHECK(table.total > Duration());
  CHECK(table.parts[0].drills[0].work >= Duration());
  CHECK(table.parts[0].drills[0].rest >= Duration());
}
