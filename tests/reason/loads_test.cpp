// What a plan asks of a body, added up by hand beside each check.
#include "reason/loads.h"

#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;
using plan::PartRole;

namespace {

void load(LibraryDrill& drill, const std::string& region, int amount) {
  drill.loads.emplace_back(plan::Words{region, {}}, plan::Sourced<int>{amount, {}});
}

std::vector<LibraryDrill> library() {
  LibraryDrill support = known("Front support", DrillKind::kSupport);
  load(support, "wrists", 2);
  support.each.hands = plan::Sourced<int>{1, {}};
  support.longest = plan::Sourced<Duration>{s(20), {}};
  support.effort = plan::Sourced<int>{5, {}};
  LibraryDrill wheel = known("Cartwheel", DrillKind::kSkill);
  load(wheel, "wrists", 2);
  wheel.each.hands = plan::Sourced<int>{2, {}};
  wheel.each.inverted = plan::Sourced<Duration>{s(1), {}};
  wheel.pace = plan::Sourced<Duration>{s(8), {}};
  LibraryDrill handstand = known("Wall handstand", DrillKind::kSupport);
  load(handstand, "wrists", 3);
  handstand.each.hands = plan::Sourced<int>{1, {}};
  handstand.each.inverted = plan::Sourced<Duration>{s(1), {}};
  handstand.longest = plan::Sourced<Duration>{s(20), {}};
  LibraryDrill jump = known("Tuck jump", DrillKind::kJump);
  jump.each.landings = plan::Sourced<int>{1, {}};
  jump.pace = plan::Sourced<Duration>{s(4), {}};
  LibraryDrill rope = known("Rope skipping", DrillKind::kRaise);
  rope.each.landings = plan::Sourced<int>{1, {}};
  rope.pace = plan::Sourced<Duration>{s(1), {}};
  LibraryDrill roll = known("Forward roll", DrillKind::kRoll);
  load(roll, "neck", 2);
  LibraryDrill over = known("Walkover", DrillKind::kSkill);
  load(over, "wrists", 2);
  load(over, "back", 3);
  LibraryDrill lifts = known("Arch lifts", DrillKind::kStrength);
  load(lifts, "back", 2);
  lifts.curve = {"arch", {}};
  LibraryDrill ups = known("V-ups", DrillKind::kStrength);
  load(ups, "back", 2);
  ups.curve = {"dish", {}};
  LibraryDrill walk = known("Bear walk", DrillKind::kRaise);
  load(walk, "wrists", 1);
  walk.each.hands = plan::Sourced<int>{1, {}};
  return {support, wheel, handstand, jump, rope, roll, over, lifts, ups, walk};
}

/// The sums of one part that `fill` writes, as `hands 8, landings 3`.
template <class Fill>
std::string sums_of(Fill fill) {
  SessionMaker maker;
  maker.part("Floor");
  fill(maker);
  Diagnostics diagnostics;
  plan::Session session = maker.session();
  const plan::DrillBook book(library(), diagnostics);
  plan::inherit(session, book, diagnostics);
  const Timetable times = timetable(session, {});
  const PlanLoads loads = loads_of(session, times, book);
  std::string out;
  for (const Load each : all_loads()) {
    const std::int64_t amount = loads.sum.of(each);
    if (amount == 0) continue;
    out +=
        (out.empty() ? "" : ", ") + std::string(load_key(each)) + " " + load_amount(each, amount);
  }
  for (const plan::Drill* drill : loads.uncounted) out += " ? " + drill->name.text;
  return out;
}
std::string sums_of(const std::string& name, const Dose& dose) {
  return sums_of([&](SessionMaker& m) { m.drill(name, dose); });
}

Dose each_way(Dose dose) {
  dose.sides = plan::Sides::kEachSide;
  return dose;
}

}  // namespace

TEST_CASE("loads: repetitions count by sets and sides") {
  CHECK(sums_of("Tuck jump", reps(3, 8)) == "landings 24");
  CHECK(sums_of("Cartwheel", each_way(reps(1, 4))) == "hands 16, upside_down_s 8 s");
  CHECK(sums_of("Forward roll", reps(1, 4)) == "neck 4");
}

TEST_CASE("loads: of a range the larger end counts") {
  Dose dose = reps(2, 6);
  dose.amount.count_to = 10;
  CHECK(sums_of("Tuck jump", dose) == "landings 20");
}

TEST_CASE("loads: a hold is one time on to the hands, and all its time on them") {
  CHECK(sums_of("Front support", hold(3, s(20))) == "hands_s 1 min, hands 3, effort_min 5");
  CHECK(sums_of("Wall handstand", hold(2, s(15))) == "hands_s 30 s, hands 2, upside_down_s 30 s");
}

TEST_CASE("loads: a time of what is repeated is so many repetitions at its pace") {
  CHECK(sums_of("Rope skipping", hold(2, s(45))) == "bounces 90");
  CHECK(sums_of("Tuck jump", hold(1, s(30))) == "landings 7");
}

// A third of such a time is common practice, no source.
TEST_CASE("loads: from two minutes on a time is a place in the lesson, with turns and waiting") {
  CHECK(sums_of("Tuck jump", hold(1, min(2))) == "landings 10");
  CHECK(sums_of("Front support", hold(1, min(3))) == "hands_s 1 min, hands 3, effort_min 15");
  Dose held = hold(1, min(2));
  held.amount.held = true;
  CHECK(sums_of("Front support", held) == "hands_s 2 min, hands 1, effort_min 10");
}

TEST_CASE("loads: a light load is not added up, and a dish is no bend of the back") {
  CHECK(sums_of("Bear walk", reps(1, 20)).empty());
  CHECK(sums_of("V-ups", reps(2, 10)).empty());
  CHECK(sums_of("Arch lifts", reps(2, 10)) == "back_bends 20");
  CHECK(sums_of("Walkover", reps(1, 5)) == "back_bends 5");
}

TEST_CASE("loads: a circuit's stations count in each round") {
  CHECK(sums_of([](SessionMaker& m) {
          m.drill("Circuit");
          plan::Circuit circuit;
          circuit.rounds = 3;
          circuit.work = s(30);
          m.last_drill().circuit = circuit;
          m.station("Rope skipping").station("Tuck jump", reps(1, 5));
        }) == "landings 15, bounces 90");
}

TEST_CASE("loads: of several moves each counts by its name") {
  CHECK(sums_of([](SessionMaker& m) {
          Dose dose = a_dose(AmountKind::kMoves, 0);
          dose.sets = 2;
          for (const char* name : {"Tuck jump", "Forward roll"}) {
            plan::Move move;
            move.name = {name, {}};
            move.amount.count = 3;
            dose.moves.push_back(move);
          }
          m.drill("Line", dose);
        }) == "landings 6, neck 6");
}

// Foster et al. 2001, J Strength Cond Res 15(1):109-115: effort × minutes.
TEST_CASE("loads: effort is the dose's own, else the library's, times the minutes of work") {
  Dose dose = hold(1, s(90));
  CHECK(sums_of("Front support", dose).find("effort_min 8") != std::string::npos);  // 5 × 1.5
  dose.effort = 8;
  CHECK(sums_of("Front support", dose).find("effort_min 12") != std::string::npos);
}

TEST_CASE("loads: what cannot be counted is named, and a pause is not missed") {
  CHECK(sums_of([](SessionMaker& m) {
          m.drill("Galloping geese", reps(1, 5)).drill("Tuck jump").drill("Water", hold(1, s(60)));
        }) == " ? Galloping geese ? Tuck jump");
}

TEST_CASE("loads: an absurd dose stops at a bound") {
  CHECK(sums_of("Tuck jump", reps(1'000'000'000'000, 1'000'000'000'000)).find("landings") == 0);
}

TEST_CASE("loads: how they are spoken of") {
  CHECK(load_text(Load::kLandings, 1) == "1 landing");
  CHECK(load_text(Load::kLandings, 40) == "40 landings");
  CHECK(load_text(Load::kUpsideDown, 80'000) == "1 min 20 s upside down");
  CHECK(load_text(Load::kEffort, 145 * 60'000) == "145 effort-minutes");
}
