// How long doses take, and the sums in words.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Sides;
using plan::Tempo;
using plan::Timing;
using plan::Timings;

namespace {

/// `work + rest = reasoning`
std::string summed(const Dose& dose, const Timings& timings = {}) {
  const DrillTime time = dose_time(dose, timings);
  return exact_text(time.work) + " + " + exact_text(time.rest) + " = " + time.reasoning;
}

Timings from_club() {
  Timings timings;
  timings.repetition = {s(3), Timing::Origin::kClub, {}};
  timings.rest = {s(30), Timing::Origin::kPlan, {}};
  return timings;
}

}  // namespace

TEST_CASE("tempo: the worked examples of reference-values.md, section 11") {
  // "10 × 3-0-1-0 = 40 s; 3 such sets with 60 s between = 240 s (calc)"
  Dose dose = reps(1, 10);
  dose.tempo = Tempo{{s(3), s(0), s(1), s(0)}};
  CHECK(summed(dose) == "40 s + 0 s = 10 reps × 4 s (tempo 3-0-1-0)");
  dose.sets = 3;
  dose.rest = s(60);
  CHECK(summed(dose) == "2 min + 2 min = 3 sets × 10 reps × 4 s (tempo 3-0-1-0) + 2 × 1 min rest");
  CHECK(dose_time(dose, {}).length() == s(240));
}

TEST_CASE("repetitions, steps and lengths take their default unless the plan says otherwise") {
  // Defaults: issue 2 (a rep 2 s, a step 1 s); common practice, no source.
  CHECK(summed(reps(1, 10)) == "20 s + 0 s = 10 reps × 2 s (a rep, default)");
  CHECK(summed(reps(1, 1)) == "2 s + 0 s = 1 rep × 2 s (a rep, default)");
  CHECK(summed(a_dose(AmountKind::kSteps, 12)) == "12 s + 0 s = 12 steps × 1 s (a step, default)");
  CHECK(summed(a_dose(AmountKind::kLengths, 4)) ==
        "1 min + 0 s = 4 lengths × 15 s (a length, default)");
  CHECK(summed(reps(1, 10), from_club()) == "30 s + 0 s = 10 reps × 3 s (a rep, club)");
  Dose paced = a_dose(AmountKind::kSteps, 12);
  paced.pace = Duration::milliseconds(1500);
  CHECK(summed(paced) == "18 s + 0 s = 12 steps × 1.5 s (its pace)");
}

TEST_CASE("holds: timed, capped and as long as can be") {
  CHECK(summed(hold(1, s(20))) == "20 s + 0 s = 20 s");
  Dose most = a_dose(AmountKind::kMaxHold, 0);
  CHECK(summed(most) == "30 s + 0 s = 30 s (max hold, default)");
  most.amount.time = s(15);
  most.sets = 3;
  most.in_goes = true;
  CHECK(summed(most) == "45 s + 0 s = 3 goes × 15 s (max hold, its cap)");
}

TEST_CASE("sides and ways multiply, rests stand between sets") {
  Dose dose = reps(2, 10);
  dose.sides = Sides::kEachSide;
  CHECK(summed(dose) == "1 min 20 s + 0 s = 2 sets × 2 sides × 10 reps × 2 s (a rep, default)");
  dose.sides = Sides::kEachWay;
  dose.ways = {{"forwards", {}}, {"backwards", {}}, {"sideways", {}}};
  CHECK(summed(dose) == "2 min + 0 s = 2 sets × 3 ways × 10 reps × 2 s (a rep, default)");
  Dose rested = hold(3, s(20));
  rested.rest = s(20);
  CHECK(summed(rested) == "1 min + 40 s = 3 sets × 20 s + 2 × 20 s rest");
  CHECK(summed(hold(3, s(20)), from_club()) ==
        "1 min + 1 min = 3 sets × 20 s + 2 × 30 s rest (plan)");
  rested.rest = Duration();  // a rest of nothing, written, beats the plan's
  CHECK(summed(rested, from_club()) == "1 min + 0 s = 3 sets × 20 s");
}

// Whether the rest of a single set counts is common practice, no source.
TEST_CASE("the rest of a single set stands between its sides, or behind it") {
  Dose dose = hold(1, s(20));
  dose.rest = s(10);
  CHECK(summed(dose) == "20 s + 10 s = 20 s + 10 s rest after it");
  dose.sides = Sides::kEachLeg;
  CHECK(summed(dose) == "40 s + 10 s = 2 legs × 20 s + 10 s rest between the legs");
  dose.sides = Sides::kEachWay;
  dose.ways = {{"forwards", {}}, {"backwards", {}}, {"sideways", {}}};
  CHECK(summed(dose) == "1 min + 20 s = 3 ways × 20 s + 2 × 10 s rest between the ways");
  dose.rest = Duration();
  CHECK(summed(dose) == "1 min + 0 s = 3 ways × 20 s");
  dose.rest.reset();  // the plan's own rest is one between sets
  CHECK(summed(dose, from_club()) == "1 min + 0 s = 3 ways × 20 s");
  dose.sets = 2;
  dose.rest = s(10);
  CHECK(summed(dose) == "2 min + 10 s = 2 sets × 3 ways × 20 s + 1 × 10 s rest");
}

TEST_CASE("every: each set has so much time to itself") {
  Dose dose = hold(3, s(20));
  dose.every = s(60);
  CHECK(summed(dose) == "1 min + 2 min = 3 sets × 1 min (one every 1 min, of which 20 s)");
  dose.every = s(20);
  CHECK(summed(dose) == "1 min + 0 s = 3 sets × 20 s (one every 20 s, of which 20 s)");
  dose.every = s(10);  // reported by the checks; the time is that of the work
  CHECK(summed(dose) == "1 min + 0 s = 3 sets × 20 s");
  dose.sets = 1;
  dose.every = s(60);
  CHECK(summed(dose) == "20 s + 0 s = 20 s");
}

TEST_CASE("several moves in a row are added up, and told apart from what is done again") {
  const auto move = [](const char* name, std::int64_t count) {
    plan::Move out;
    out.name = {name, {}};
    out.amount.count = count;
    return out;
  };
  Dose mix = a_dose(AmountKind::kMoves, 0);
  mix.moves = {move("star jumps", 10), move("high knees", 12)};
  CHECK(summed(mix) == "44 s + 0 s = 10 reps × 2 s (a rep, default) + 12 reps × 2 s");
  mix.sets = 2;
  mix.rest = s(30);
  CHECK(summed(mix) ==
        "1 min 28 s + 30 s = 2 sets × (10 reps × 2 s (a rep, default) + 12 reps × 2 s) + 1 × 30 s "
        "rest");
  CHECK(set_time(mix, {}) == s(44));
  mix.moves[0].sides = Sides::kEachLeg;
  mix.moves[1].amount.kind = AmountKind::kTime;
  mix.moves[1].amount.time = s(20);
  CHECK(summed(mix) ==
        "2 min + 30 s = 2 sets × (2 legs × 10 reps × 2 s (a rep, default) + 20 s) + 1 × 30 s rest");
  mix.sides = Sides::kEachSide;  // all of it on each side
  mix.sets = 1;
  mix.rest.reset();
  mix.moves[0] = move("kicks", 5);
  CHECK(summed(mix) == "1 min + 0 s = 2 sides × (5 reps × 2 s (a rep, default) + 20 s)");
  mix.sides = Sides::kOnce;
  mix.pace = s(3);
  CHECK(summed(mix) == "35 s + 0 s = 5 reps × 3 s (its pace) + 20 s");
  // The library's pace is the drill's own, which has no name for one move of several.
  CHECK(dose_time(mix, {}, LibraryPace{s(9)}).work == s(35));
}

TEST_CASE("of a range the larger number is timed") {
  Dose dose = reps(3, 8);
  dose.amount.count_to = 12;
  CHECK(summed(dose) == "1 min 12 s + 0 s = 3 sets × 12 reps (of 8–12) × 2 s (a rep, default)");
  dose = hold(2, s(20));
  dose.amount.time_to = s(30);
  CHECK(summed(dose) == "1 min + 0 s = 2 sets × 30 s (of 20 s to 30 s)");
  CHECK(set_time(dose, {}) == s(30));
}

TEST_CASE("absurd numbers stop at a ceiling instead of overflowing") {
  Dose dose = reps(9'000'000'000'000'000, 9'000'000'000'000'000);
  dose.rest = kLongestDuration;
  CHECK(dose_time(dose, {}).work == kLongestDuration * 100);
  CHECK(dose_time(dose, {}).rest == kLongestDuration * 100);
}
