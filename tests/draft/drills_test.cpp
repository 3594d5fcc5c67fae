// Doses as spoken, one line each: the families of forms, not the list of any draft.
#include "draft/drills.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft_test::drills;

TEST_CASE("how often, in any order") {
  CHECK(drills("casts x5") == "casts: 5");
  CHECK(drills("casts 5x") == "casts: 5");
  CHECK(drills("casts 5 times") == "casts: 5");
  CHECK(drills("casts 3x6") == "casts: 3 x 6");
  CHECK(drills("casts 3 sets 8 reps") == "casts: 3 x 8");
  CHECK(drills("casts sets of 5 x 3") == "casts: 3 x 5");
  CHECK(drills("casts 3 series x 5, pause 30 s") == "casts: 3 x 5, rest 30 s");
  CHECK(drills("casts 15 x 3 sets") == "casts: 3 x 15");
  CHECK(drills("casts 5, x 2") == "casts: 2 x 5");
  CHECK(drills("kick to wall, 5 tries") == "kick to wall: 5 goes");
  CHECK(drills("cast x 3-5") == "cast: 3–5");
}

TEST_CASE("times, held or counted") {
  CHECK(drills("plank 3x10s") == "plank: 3 x 10 s");
  CHECK(drills("plank 20 secs x3") == "plank: 3 x 20 s");
  CHECK(drills("arch 3x20''") == "arch: 3 x 20 s");
  CHECK(drills("bridge x3 hold 3") == "bridge: 3 x hold 3 s");
  CHECK(drills("pike 10 counts x 3") == "pike: 3 x 10 s");
  CHECK(drills("run 5'") == "run: 5 min");
  CHECK(drills("dish 30 / arch 30") == "dish: 30 s | arch: 30 s");
  CHECK(drills("jumps 2x10, hold 2 counts at the top") == "jumps: 2 x 10");
}

TEST_CASE("each by itself is no side") {
  CHECK(drills("cartwheels 5 each") == "cartwheels: 5");
  CHECK(drills("squat jumps 4 turns each") == "squat jumps: 4 goes");
  CHECK(drills("forward roll, handstand roll, 2 turns each") ==
        "forward roll: 2 goes | handstand roll: 2 goes");
  CHECK(drills("side gallop, high knees, skips 1 lap ea") ==
        "side gallop: 1 length | high knees: 1 length | skips: 1 length");
}

TEST_CASE("sides are what says so") {
  CHECK(drills("leg swings 10/side") == "leg swings: 10 each side");
  CHECK(drills("leg swings 10 e/l") == "leg swings: 10 each leg");
  CHECK(drills("calf raises 8 per leg") == "calf raises: 8 each leg");
  CHECK(drills("arm circles 10 ea way") == "arm circles: 10 each way");
  CHECK(drills("turns 5 R 5 L") == "turns: 5 each side");
  CHECK(drills("splits L/R/middle 30 secs each") == "splits: 30 s each way: left, right, middle");
  CHECK(drills("splits right, left, middle – 40 s") ==
        "splits: 40 s each way: right, left, middle");
  CHECK(drills("walks fwd/back/side 2 lengths") == "walks forward/back/side: 2 lengths");
}

TEST_CASE("ladders, ways there and back, until so many are good") {
  CHECK(drills("casts 5-4-3-2-1, 30 sec between") == "casts: 5-4-3-2-1, rest 30 s");
  CHECK(drills("bear walk there and back x2") == "bear walk: 4 lengths");
  CHECK(drills("bunny hops across the room and back") == "bunny hops: 2 lengths");
  CHECK(drills("c/wheel until stuck 5") == "cartwheel: 5");
  CHECK(drills("kip, 3 in a row, 3 sets") == "kip: 3 x 3, in a row");
}

TEST_CASE("rungs with slashes; not a date") {
  CHECK(drills("casts 10/10/8") == "casts: 10-10-8");
  CHECK(drills("back lifts 20/20/15") == "back lifts: 20-20-15");
  CHECK(drills("casts 4/12/26").find("4-12-26") == std::string::npos);
}

TEST_CASE("sides in short: behind a noun, a letter and a number, `a side`") {
  CHECK(drills("reach across - 8 a side") == "reach across: 8 each side");
  CHECK(drills("splits 1 min a side, pike 30s") == "splits: 60 s each side | pike: 30 s");
  CHECK(drills("10 squat jumps · 6 lunge jumps/leg · 5 tuck jumps") ==
        "squat jumps: 10 | lunge jumps: 6 each leg | tuck jumps: 5");
  CHECK(drills("single leg cuts L10 R10") == "single leg cuts: 10 each side");
  CHECK(drills("kick up L leg 5 R leg 5") == "kick up: 5 each side");
  CHECK(drills("circle both arms slowly, 10 each way") == "circle both arms slowly: 10 each way");
}

TEST_CASE("so often so long: tries that are held, games of a minute") {
  CHECK(drills("straddle lever: 4 tries, 3s hold") == "straddle lever: 4 x hold 3 s");
  CHECK(drills("stuck in the mud, 3 games of 1 min") == "stuck in the mud: 3 x 60 s");
  CHECK(drills("dish and arch, 20s each, x2") == "dish: 2 x 20 s | arch: 2 x 20 s");
  CHECK(drills("dish / arch 3 x 15 secs each") == "dish: 3 x 15 s | arch: 3 x 15 s");
  CHECK(drills("front kicks, side kicks, back kicks: 10 per leg") ==
        "front kicks: 10 each leg | side kicks: 10 each leg | back kicks: 10 each leg");
}

TEST_CASE("lengths one way and lengths the other are two things to do") {
  CHECK(drills("walk forwards 2 lengths, backwards 2 lengths") ==
        "walk forwards: 2 lengths | backwards: 2 lengths");
}

TEST_CASE("a level is no amount, `of them` counts, and back to a shape is no way back") {
  CHECK(drills("throw to catch, 4 goes each, levels 2+ only") == "throw to catch: 4 goes");
  CHECK(drills("frog jumps, 10 of them") == "frog jumps: 10");
  CHECK(drills("rock to shoulders and back to sitting, 8 reps") ==
        "rock to shoulders and back to sitting: 8");
  CHECK(drills("bridge kickover 5") == "bridge kickover: 5");
}

TEST_CASE("several drills on a line, with and without commas") {
  CHECK(drills("fwd roll x5 teddy rolls x4 bunny hops over bench there and back x4") ==
        "forward roll: 5 | teddy rolls: 4 | bunny hops over bench: 8 lengths");
  CHECK(drills("10 squats, 10 press ups") == "squats: 10 | press ups: 10");
  CHECK(drills("run, jump, land in hoop x6") == "run, jump, land in hoop: 6");
  CHECK(drills("silver: bwd roll x5, handstand w spot 4 goes") ==
        "silver – backward roll: 5 | silver – handstand with spot: 4 goes");
}

TEST_CASE("rounds over several drills") {
  const draft::SpokenLine superset = draft::read_drills(
      draft_test::english(), "superset x3: 8 leg lifts + 10 press ups, 45s rest", {});
  REQUIRE(superset.group);
  CHECK(superset.group->rounds == 3);
  CHECK(superset.group->between == 45);
  CHECK(superset.drills.size() == 2);
  const draft::SpokenLine circuit =
      draft::read_drills(draft_test::english(), "40 on / 20 off x2 - push ups, squat jumps", {});
  REQUIRE(circuit.group);
  CHECK(circuit.group->rounds == 2);
  CHECK(circuit.group->work == 40);
  CHECK(circuit.group->rest == 20);
}

TEST_CASE("numbers that are no doses") {
  CHECK(drills("half on bar, swop after 10 mins").find(':') == std::string::npos);
  CHECK(drills("roundoff from 3 steps x 6") == "roundoff from 3 steps: 6");
  CHECK(drills("obstacle relay, teams of 4").find(':') == std::string::npos);
  CHECK(drills("rope 1 go each, 2 ropes") == "rope: 1 go");
  CHECK(drills("throw with 1 turn below 5-8x") == "throw with 1 turn below: 5–8");
  CHECK(drills("1/1 turn x4") == "1/1 turn: 4");
}

TEST_CASE("in a stretch a bare number is seconds, but not of what moves") {
  draft::Setting stretch;
  stretch.stretch = true;
  CHECK(drills("shoulders 30/side", stretch) == "shoulders: 30 s each side");
  CHECK(drills("wrist circles 10", stretch) == "wrist circles: 10");
}

TEST_CASE("which one, whose, and how long are not how often") {
  CHECK(drills("leap pass x3, 2nd pass x3") == "leap pass: 3 | 2nd pass: 3");
  CHECK(drills("eyes closed, all 4 routines in your head").find(':') == std::string::npos);
  CHECK(drills("cradle tuck 5 goes, only trio 1 + 4") == "cradle tuck: 5 goes");
  CHECK(drills("thigh stand hold 5 x3") == "thigh stand: 3 x hold 5 s");
  CHECK(drills("vaults 5, 1 min b/w") == "vaults: 5, rest 60 s");
  CHECK(drills("rope climb, 2 trips each") == "rope climb: 2 goes");
}

TEST_CASE("a line that no coach types is not taken apart") {
  const auto pairs = [](std::size_t count) {
    std::string out;
    for (std::size_t i = 0; i < count; ++i) out += "5 R 5 L ";
    return out;
  };
  CHECK(draft::read_drills(draft_test::english(), "kicks " + pairs(30), {}).has_dose());
  CHECK(draft::read_drills(draft_test::english(), "kicks " + pairs(31), {}).drills.empty());
  const std::string words = "star jumps x10 " + std::string(585, 'a');
  CHECK(draft::read_drills(draft_test::english(), words, {}).has_dose());
  CHECK(draft::read_drills(draft_test::english(), words + "a", {}).drills.empty());
  const draft::SpokenDrill named = draft::read_named(draft_test::english(), "kicks", pairs(31), {});
  CHECK_FALSE(named.dose);
  CHECK(named.notes.front() == pairs(31));  // nothing typed is lost
}
