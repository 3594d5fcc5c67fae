// What a part takes in a hall. Each sum is done beside its case, with the round numbers of
// reason/a_hall.h: a go at the vault blocks 10 s, 40 s pass from one go of a gymnast to the next.
#include "reason/hall_time.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "reason/a_hall.h"
#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

Dose goes(std::int64_t n) {
  Dose out = reps(n, 1);
  out.in_goes = true;
  return out;
}

/// `likely: sentence` of the first line of the first part.
std::string line_of(SessionMaker& maker, const plan::Club& club = {}) {
  const plan::Session session = maker.session();
  const plan::HallBook book = a_hall();
  const HallDrill drill = hall_times(session, club, book).at(0).drills.at(0);
  return exact_text(drill.likely) + ": " + drill.why;
}

std::string at_vault(int gymnasts, const Dose& dose, const std::string& name = "Squat on") {
  SessionMaker maker;
  maker.gymnasts(gymnasts).part("Vault").drill(name, dose);
  return line_of(maker);
}

}  // namespace

TEST_CASE("hall: goes at the vault are each gymnast's, one after the other") {
  // 5 × 8 × 10 s + 30 s
  CHECK(at_vault(8, goes(5)) ==
        "7 min 10 s: 5 goes each, 8 in a queue, 10 s a go + 30 s to change");
  // `x5` there are five goes too
  CHECK(at_vault(8, reps(1, 5)) == at_vault(8, goes(5)));
  // Two gymnasts would be back after 20 s: 5 × 40 s + 30 s
  CHECK(at_vault(2, goes(5)) ==
        "3 min 50 s: 5 goes each, 2 in a queue, 10 s a go, 40 s from one go to the next + 30 s to "
        "change");
  // 10 bounces are one go: 10 s × 2 s in it and 10 s around it, for eight
  CHECK(at_vault(8, reps(1, 10), "Trampette bounces") ==
        "4 min 30 s: 1 go each, 8 in a queue, 30 s a go + 30 s to change");
}

TEST_CASE("hall: lanes from the line, from the hall, by the size of the group; spotters") {
  // 4 in each of two runs: 5 × 40 s + 30 s
  CHECK(at_vault(8, goes(5), "Squat on, two runs") ==
        "3 min 50 s: 5 goes each, 4 in a queue, 10 s a go + 30 s to change");
  SessionMaker hall;
  hall.gymnasts(9).part("Vault").drill("Squat on", goes(5));
  plan::Club club;
  club.stations = {station("vault", 3, 1)};
  CHECK(line_of(hall, club) ==
        "3 min 50 s: 5 goes each, 3 in a queue, 10 s a go, 40 s from one go to the next + 30 s to "
        "change");
  SessionMaker bars;
  bars.gymnasts(8).part("Bars").drill("Cast", reps(3, 5));  // 3 × 4 × (10 s + 5 × 2 s) + 30 s
  CHECK(line_of(bars) == "4 min 30 s: 3 goes each, 4 in a queue, 20 s a go + 30 s to change");
  SessionMaker spotted;
  spotted.gymnasts(8).part("Bars").drill("Cast, with spot", reps(3, 5));
  CHECK(line_of(spotted) == "8 min 30 s: 3 goes each, 8 in a queue, 20 s a go + 30 s to change");
  spotted.adults(2);
  CHECK(line_of(spotted) == "4 min 30 s: 3 goes each, 4 in a queue, 20 s a go + 30 s to change");
}

TEST_CASE("hall: short holds are one go, a minute at a place is everybody's") {
  SessionMaker maker;
  maker.gymnasts(4).part("Bars").drill("Tuck hang", hold(3, s(5)));  // 4 × (10 s + 15 s) + 30 s
  CHECK(line_of(maker) == "2 min 10 s: 1 go each, 4 in a queue, 25 s a go + 30 s to change");
  SessionMaker shared;
  shared.gymnasts(4).part("Bars").drill("Free play", hold(1, min(3)));
  CHECK(line_of(shared) == "3 min 20 s: 3 min + 20 s to change");
}

TEST_CASE("hall: groups go from place to place, each with its share of the gymnasts") {
  SessionMaker maker;
  maker.gymnasts(12).note("three groups").part("Vault").drill("Squat on", goes(1));
  CHECK(line_of(maker) == "1 min 10 s: 1 go each, 4 in a queue, 10 s a go + 30 s to change");
  SessionMaker of_four;
  of_four.gymnasts(12).note("groups of 6").part("Vault").drill("Squat on", goes(1));
  CHECK(line_of(of_four) == "1 min 30 s: 1 go each, 6 in a queue, 10 s a go + 30 s to change");
  SessionMaker swapped;
  swapped.gymnasts(12).note("swap at 5.05").part("Vault").drill("Squat on", goes(1));
  swapped.part("Bars").drill("Cast", goes(1));
  CHECK(line_of(swapped) == "1 min 30 s: 1 go each, 6 in a queue, 10 s a go + 30 s to change");
}

TEST_CASE("hall: all at once in a warm-up and at home, whatever stands in the title") {
  SessionMaker warm;
  warm.gymnasts(8).part("Warm-up").drill("Star jumps", reps(1, 10));
  CHECK(line_of(warm) == "30 s: 10 reps × 2 s (in a hall) + 10 s to change");
  SessionMaker listed;
  listed.gymnasts(8).part("Warm-up").drill("Neck, wrists and ankles", reps(1, 10));
  CHECK(line_of(listed) == "1 min 10 s: 3 drills × (10 reps × 2 s (in a hall)) + 10 s to change");
  SessionMaker home(plan::Place::kHome);
  home.part("Bars").drill("Dead hang", hold(1, s(20)));
  CHECK(line_of(home) == "25 s: 20 s + 5 s to change");
  // Not the hall's minute to gather a group, and 10 s: a child at home goes on.
  SessionMaker flow(plan::Place::kHome);
  flow.part("Warm-up", plan::PartRole::kWarmUp).drill("Star jumps", reps(1, 10));
  CHECK(line_of(flow) == "23 s: 10 reps × 2 s (in a hall) + 3 s to change");
  CHECK(hall_times(flow.session(), {}, a_hall()).at(0).likely == s(30));
}

TEST_CASE("hall: under-nines need longer, by their group or by what is said of them") {
  SessionMaker maker;  // 8 × 15 s + 45 s
  maker.gymnasts(8).note("5-6 years, all new").part("Vault").drill("Squat on", goes(1));
  CHECK(line_of(maker) == "2 min 45 s: 1 go each, 8 in a queue, 15 s a go + 45 s to change");
  SessionMaker older;
  older.gymnasts(8).note("9-11 years").part("Vault").drill("Squat on", goes(1));
  CHECK(line_of(older) == "1 min 50 s: 1 go each, 8 in a queue, 10 s a go + 30 s to change");
}

TEST_CASE("hall: lines without a dose take what they usually do, and remarks a little") {
  SessionMaker maker;
  maker.gymnasts(8).part("Game").drill("Game of islands").drill("Mind the bench");
  const plan::Session session = maker.session();
  const plan::HallBook book = a_hall();
  const HallPart part = hall_times(session, {}, book).at(0);
  CHECK(part.drills.at(0).why == "2 min, as game usually takes");
  CHECK(part.drills.at(1).likely == s(15));
  CHECK(part.likely == s(135));
}

TEST_CASE("hall: ranges and the model's own spread; lines for one level share their time") {
  SessionMaker maker;
  Dose dose = goes(1);
  dose.amount.count = 3;
  dose.amount.count_to = 5;
  maker.gymnasts(8).part("Vault").drill("Squat on", dose);
  const plan::HallBook book = a_hall();
  const plan::Session session = maker.session();
  const HallPart part = hall_times(session, {}, book).at(0);
  CHECK(part.likely == s(60 + 4 * 80 + 30));
  CHECK(part.low == s((60 + 3 * 80 + 30) / 2));
  CHECK(part.high == s((60 + 5 * 80 + 30) * 2));
  CHECK(part.lanes == 1);
  CHECK(part.working == s(4 * 2));
  CHECK(part.waiting == s(4 * 80 - 4 * 2));

  SessionMaker levels;
  levels.gymnasts(8).part("Vault").drill("A – Squat on", goes(5)).drill("B – Dive roll", goes(5));
  CHECK(line_of(levels) ==
        "3 min 35 s: 5 goes each, 8 in a queue, 10 s a go + 30 s to change, by 1 of 2 levels side "
        "by side");
}

TEST_CASE("hall: absurd numbers stay numbers") {
  CHECK_FALSE(at_vault(60, reps(1'000'000'000, 1'000'000'000)).empty());
}
