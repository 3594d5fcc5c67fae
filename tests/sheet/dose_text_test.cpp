#include "sheet/dose_text.h"

#include "sheet_fixture.h"

using namespace chalkleaf;
using namespace chalkleaf::sheet;

namespace {

plan::Dose counted(plan::AmountKind kind, std::int64_t count, std::int64_t sets = 1) {
  plan::Dose dose;
  dose.sets = sets;
  dose.amount.kind = kind;
  dose.amount.count = count;
  return dose;
}

void check(const plan::Dose& dose, const std::string& name, const std::string& on_card,
           const std::string& at_home) {
  const auto labels = support::english();
  CHECK(support::plain_spaces(short_dose(dose, *labels)) == on_card);
  CHECK(support::plain_spaces(plain_dose(dose, name, *labels).whole()) == at_home);
}

}  // namespace

TEST_CASE("doses in signs and in plain words") {
  using plan::AmountKind;
  check(support::hold(2, 20), "Dish hold", "2 × 20 s", "Hold for 20 seconds. Do it twice.");
  check(support::hold(1, 60), "Jog on the spot", "1 min", "Keep going for 1 minute.");
  check(counted(AmountKind::kRepetitions, 10), "Star jumps", "10", "Do 10.");
  check(counted(AmountKind::kRepetitions, 8, 3), "Leg lifts", "3 × 8", "Do 8. Do that 3 times.");
  check(counted(AmountKind::kLengths, 4), "Bear crawl", "4 lengths", "Do 4 lengths.");

  plan::Dose goes = counted(AmountKind::kRepetitions, 1, 4);
  goes.in_goes = true;
  check(goes, "Wall walk-up", "4 goes", "Have 4 goes.");
  goes.sides = plan::Sides::kEachSide;
  goes.pace = Duration::seconds(4);
  check(goes, "Quarter-turn jump", "4 goes each side, 4 s each",
        "Have 4 goes. Do each side. Take 4 seconds for each one.");

  plan::Dose walk = counted(AmountKind::kSteps, 12);
  walk.sides = plan::Sides::kEachWay;
  check(walk, "Line walk", "12 steps each way", "Take 12 steps. Go each way.");
  walk.ways = {support::words("forwards"), support::words("backwards")};
  check(walk, "Line walk", "12 steps each way: forwards, backwards",
        "Take 12 steps. Go each way: forwards and backwards.");

  plan::Dose lever;
  lever.amount.kind = AmountKind::kMaxHold;
  check(lever, "Half lever", "max hold", "Hold for as long as it looks good.");
  lever.amount.time = Duration::seconds(15);
  lever.sets = 3;
  lever.rest = Duration::seconds(20);
  check(lever, "Half lever", "3 × max hold, up to 15 s, rest 20 s",
        "Hold for as long as it looks good, 15 seconds at most. Do it 3 times. Rest 20 seconds in "
        "between.");

  plan::Dose slow = counted(AmountKind::kRepetitions, 4);
  slow.tempo =
      plan::Tempo{{Duration::seconds(3), Duration(), Duration::milliseconds(1000), Duration()}};
  slow.effort = 6;
  slow.remarks = {support::words("like a feather")};
  check(slow, "Slow lowers", "4, tempo 3-0-1-0, effort 6 of 10, like a feather",
        "Do 4. Each one slowly: 3 seconds down, 1 second up. It should feel like 6 out of 10. Like "
        "a feather.");
}

TEST_CASE("several moves in a row") {
  using plan::AmountKind;
  const auto move = [](std::int64_t count, const char* name) {
    plan::Move out;
    out.name = support::words(name);
    out.amount.count = count;
    return out;
  };
  plan::Dose mix;
  mix.amount.kind = AmountKind::kMoves;
  mix.moves = {move(10, "star jumps"), move(10, "high knees")};
  check(mix, "Jump mix", "10 star jumps, 10 high knees", "Do 10 star jumps, then 10 high knees.");
  mix.sets = 2;
  mix.rest = Duration::seconds(30);
  check(mix, "Jump mix", "2 × (10 star jumps, 10 high knees), rest 30 s",
        "Do 10 star jumps, then 10 high knees. Do it twice. Rest 30 seconds in between.");
  mix.moves[0] = move(5, "lunges");
  mix.moves[0].sides = plan::Sides::kEachLeg;
  mix.moves[1].name = support::words("mountain climbers");
  mix.moves[1].amount.kind = AmountKind::kTime;
  mix.moves[1].amount.time = Duration::seconds(20);
  mix.moves.push_back(move(8, "crab walk"));
  mix.moves[2].amount.kind = AmountKind::kSteps;
  mix.moves[2].amount.count_to = 12;
  mix.sets = 1;
  mix.rest.reset();
  check(mix, "Mix", "5 lunges each leg, 20 s mountain climbers, 8–12 steps crab walk",
        "Do 5 lunges each leg, then 20 seconds of mountain climbers, then 8–12 steps crab walk.");
  mix.moves = {move(5, "kicks"), move(5, "swings")};
  mix.sides = plan::Sides::kEachLeg;
  check(mix, "Mix", "(5 kicks, 5 swings) each leg", "Do 5 kicks, then 5 swings. Do each leg.");
}

TEST_CASE("ranges, and as many as fit") {
  using plan::AmountKind;
  plan::Dose dose = counted(AmountKind::kRepetitions, 8, 3);
  dose.amount.count_to = 12;
  check(dose, "Leg lifts", "3 × 8–12", "Do 8 to 12. Do that 3 times.");
  dose = counted(AmountKind::kSteps, 6);
  dose.amount.count_to = 8;
  check(dose, "Line walk", "6–8 steps", "Take 6 to 8 steps.");
  dose = counted(AmountKind::kLengths, 1);
  dose.amount.count_to = 2;
  check(dose, "Bear walk", "1–2 lengths", "Do 1 to 2 lengths.");
  dose = support::hold(1, 20);
  dose.amount.time_to = Duration::seconds(30);
  check(dose, "Dish hold", "20–30 s", "Hold for 20 to 30 seconds.");
  dose.amount.time_to = Duration::seconds(90);
  check(dose, "Jog", "20 s–1 min 30 s", "Keep going for 20 seconds to 1 minute 30 seconds.");
  dose = support::hold(2, 60);
  dose.amount.as_many = true;
  check(dose, "Squats", "2 × as many good ones as possible in 1 min",
        "Do as many good ones as you can in 1 minute. Do it twice.");
}

TEST_CASE("a figure never parts from its unit") {
  const auto labels = support::english();
  CHECK(short_dose(support::hold(2, 20), *labels) == "2\u00A0×\u00A020\u00A0s");
  CHECK(plain_dose(support::hold(3, 20), "Dish hold", *labels).what ==
        "Hold for 20\u00A0seconds. Do it 3\u00A0times.");
}

TEST_CASE("a rest that is counted is also said, wherever it was written") {
  const auto labels = support::english();
  plan::Timings timings;
  timings.rest.value = Duration::seconds(15);
  const plan::Dose rested = with_rest(support::hold(2, 20), timings);
  CHECK(support::plain_spaces(short_dose(rested, *labels)) == "2 × 20 s, rest 15 s");
  CHECK_FALSE(with_rest(support::hold(1, 20), timings).rest.has_value());
  plan::Dose own = support::hold(2, 20);
  own.rest = Duration::seconds(5);
  CHECK(with_rest(own, timings).rest == Duration::seconds(5));
  plan::Dose turns = support::hold(2, 20);
  turns.every = Duration::seconds(60);
  CHECK_FALSE(with_rest(turns, timings).rest.has_value());
}
