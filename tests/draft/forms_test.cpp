// Families of forms found in drafts of many authors: lists with one dose, rounds, places, counts.
#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft_test::drills;

TEST_CASE("lots, tries of so long, counts") {
  CHECK(drills("plank - 3 lots of 20s") == "plank: 3 x 20 s");
  CHECK(drills("handstand at the wall, three goes of 20 seconds") ==
        "handstand at the wall: 3 x 20 s");
  CHECK(drills("headstand 3 tries, 10 seconds each") == "headstand: 3 x 10 s");
  CHECK(drills("straddle support, hold of 3 sec, 5 attempts, pause 30 sec") ==
        "straddle support: 5 x hold 3 s, rest 30 s");
  CHECK(drills("balance, hold 3 seconds, 5 on each leg") == "balance: 5 x hold 3 s each leg");
  CHECK(drills("stork stand, count five") == "stork stand: hold 5 s");
  CHECK(drills("count to 20 in candle") == "candle: hold 20 s");
  CHECK(drills("knee press, squeeze for 5, ten times") == "knee press: 10 x hold 5 s");
  CHECK(drills("2 x 30 sec hollow hold w/ 30 sec break") == "hollow hold: 2 x 30 s, rest 30 s");
  CHECK(drills("plank 3 x 30") == "plank: 3 x 30 s");
  CHECK(drills("plank shoulder taps 3 x 30") == "plank shoulder taps: 3 x 30");
  CHECK(drills("L hang off the bar 4x max") == "L hang off the bar: 4 x max hold, max");
  CHECK(drills("handstand 3s stand + roll, 6 tries") == "handstand 3s stand + roll: 6 goes");
}

TEST_CASE("short words of coaches: a rest by its letter, ways across, each of several") {
  CHECK(drills("cast 4x5 r60\"") == "cast: 4 x 5, rest 60 s");
  CHECK(drills("dish 3x30\" r15\", arch 3x30\" r15\"") ==
        "dish: 3 x 30 s, rest 15 s | arch: 3 x 30 s, rest 15 s");
  CHECK(drills("kangaroo hops across x2") == "kangaroo hops across: 2 lengths");
  CHECK(drills("leaps 4 diags") == "leaps: 4 lengths");
  // A bare number is seconds of what is held, but not where it counts each of several.
  CHECK(drills("tuck, pike, straddle, 5 of each") == "tuck: 5 | pike: 5 | straddle: 5");
  CHECK(drills("pike 15, straddle 15") == "pike: 15 s | straddle: 15 s");
}

TEST_CASE("rounds of so much on and off") {
  CHECK(drills("3 rounds 30/15: dish rocks, press ups") ==
        drills("3 rounds 30 s on / 15 s off: dish rocks, press ups"));
}

TEST_CASE("ladders in any writing") {
  CHECK(drills("30-20-10 squats") == "squats: 30-20-10");
  CHECK(drills("squats 15, 12, 10") == "squats: 15-12-10");
}

TEST_CASE("laps and ways there and back") {
  CHECK(drills("laps x4") == "laps: 4 lengths");
  CHECK(drills("sprint x 6 lengths") == "sprint: 6 lengths");
  CHECK(drills("jog 3x round the hall") == "jog: 3 lengths");
  CHECK(drills("bear walk to the kitchen + back, 3 times") == "bear walk: 6 lengths");
  CHECK(drills("monkey bars, 2 x there and back") == "monkey bars: 4 lengths");
  CHECK(drills("skips, gallops, 1 lap each forward and backward") ==
        "skips: 2 lengths | gallops: 2 lengths");
}

TEST_CASE("one dose for a list") {
  CHECK(drills("jog / skips / high knees, 2 laps of each") ==
        "jog: 2 lengths | skips: 2 lengths | high knees: 2 lengths");
  CHECK(drills("butterfly and long-sit, both 20 s") == "butterfly: 20 s | long-sit: 20 s");
  CHECK(drills("30 s each of straddle, pike and butterfly") ==
        "straddle: 30 s | pike: 30 s | butterfly: 30 s");
  CHECK(drills("stretch: 30 sec each - pike, straddle") ==
        "stretch – pike: 30 s | stretch – straddle: 30 s");
  CHECK(drills("shapes: tuck, pike. Hold each for 5 secs") ==
        "shapes – tuck: hold 5 s | shapes – pike: hold 5 s");
  CHECK(drills("to the rock and back again: crab walk, bear walk") ==
        "crab walk: 2 lengths | bear walk: 2 lengths");
  CHECK(drills("heel raises 10, toe raises 10, two lots") ==
        "heel raises: 2 x 10 | toe raises: 2 x 10");
  CHECK(drills("animal walks bear bunny crab there and back each") ==
        "bear: 2 lengths | bunny: 2 lengths | crab: 2 lengths");
}

TEST_CASE("moves that follow each other are one drill, the smaller load") {
  CHECK(drills("walk, hop, jump off half turn, 3 turns each") ==
        "walk, hop, jump off half turn: 3 goes");
  CHECK(drills("fwd roll, cartwheel, 2 turns each") == "forward roll: 2 goes | cartwheel: 2 goes");
  CHECK(drills("walk, hop, run. 2 goes of each") == "walk: 2 goes | hop: 2 goes | run: 2 goes");
}

TEST_CASE("several drills with counts in any order") {
  CHECK(drills("hollow rocks 20 arch rocks 20") == "hollow rocks: 20 | arch rocks: 20");
  CHECK(drills("5 tuck jumps / 5 star jumps") == "tuck jumps: 5 | star jumps: 5");
  CHECK(drills("10 leg raises x 2") == "leg raises: 2 x 10");
  CHECK(drills("star jumps (20), tuck jumps (10)") == "star jumps: 20 | tuck jumps: 10");
  CHECK(drills("back walkover, 5 line, 5 low, 3 high") ==
        "back walkover – line: 5 | back walkover – low: 5 | back walkover – high: 3");
  CHECK(drills("stick off bench x6 > off 1 box layer x6") ==
        "stick off bench: 6 | off 1 box layer: 6");
  CHECK(drills("dips 8, 5 deep breaths") == "dips: 8 | deep breaths: 5");
  CHECK(drills("leap pass 8 for 8") == "leap pass: 8");
  CHECK(drills("throw and catch, from 5 to 8 with clean catch") == "throw and catch: 5–8");
  CHECK(drills("pirouettes 360 x 5") == "pirouettes 360: 5");
}

TEST_CASE("rounds of one drill are its sets") {
  CHECK(drills("bridge, hold 10, repeat three times") == "bridge: 3 x hold 10 s");
  CHECK(drills("dance thru 2x no tumbling") == "dance through: 2");
}

TEST_CASE("numbers that count other things are no doses") {
  for (const char* line :
       {"3 corners about 8 mins each", "three groups of six, ten minutes apiece",
        "captain ball, two courts", "hello song, 2 action rhymes", "1:1 on the air track",
        "3 x a week", "stations 1 + 6 only", "uniform payment until day 20",
        "clear by twenty past seven", "4+4, swop 6:15", "the level 3s run it",
        "4 points, 6 min per point, 1 min for the change"}) {
    INFO(line);
    CHECK(drills(line).find(": ") == std::string::npos);
  }
}

TEST_CASE("a drill does not take twenty minutes, and a game's time is not that of two") {
  CHECK(drills("VAULT 22 min / FLOOR 22 min").find(": ") == std::string::npos);
  CHECK(drills("traffic lights, stuck in the mud, 10 mins").find(": ") == std::string::npos);
  CHECK(drills("tag 5 mins") == "tag: 5 min");
}

TEST_CASE("a numbered label is no dose, a bracket of sides belongs to the dose behind it") {
  CHECK(drills("Turn 1: 10 straight bounces") == "Turn 1 – straight bounces: 10");
  CHECK(drills("splits (R, L, box) – 45 secs") == "splits: 45 s each way: right, left, middle");
  CHECK(drills("gallop – 2 x length each") == "gallop: 2 lengths");
}

TEST_CASE("a count before its own name does not count what was named before") {
  CHECK(drills("lie down, 3 sleepy breaths") == "lie down | sleepy breaths: 3");
  CHECK(drills("long hang and swing, six swings") == "long hang and swing, six swings: 6");
  CHECK(drills("cartwheels 10 on line, 5 low") == "cartwheels: 10 | cartwheels – low: 5");
  CHECK(drills("step out 4 each, 2 on floor 2 on track") == "step out: 4");
  CHECK(drills("Hang for 10 seconds") == "Hang: 10 s");
}

TEST_CASE("letters typed for digits, units in front, ladders with slashes") {
  CHECK(drills("dish 2 x 2O s") == "dish: 2 x 20 s");
  CHECK(drills("tricep dips l0") == "tricep dips: 10");
  CHECK(drills("heels l lap") == "heels: 1 length");
  CHECK(drills("squats – Sets: 3 Reps: 10") == "squats: 3 x 10");
  CHECK(drills("press ups 10/8/6") == "press ups: 10-8-6");
  CHECK(drills("L6 kip cast 6 turns") == "L6 kip cast: 6 goes");  // a level keeps its letter
}

TEST_CASE("sets and rounds of one drill") {
  CHECK(drills("handstands, 3 of 20 sec") == "handstands: 3 x 20 s");
  CHECK(drills("back bends, 3 slow sets of 5") == "back bends: 3 x 5");
  CHECK(drills("arch rocks 3 times 10 seconds") == "arch rocks: 3 x 10 s");
  CHECK(drills("roundoff flick: 5 rounds") == "roundoff flick: 5 goes");
  CHECK(drills("run round the mat, 5 rounds").ends_with(": 5 lengths"));
  CHECK(drills("penche hold 8 cts x 3 each leg") == "penche: 3 x hold 8 s each leg");
}

TEST_CASE("several drills by arrows, dots and counts") {
  CHECK(drills("jog 3 laps → crab there & back → skips 1 lap") ==
        "jog: 3 lengths | crab: 2 lengths | skips: 1 length");
  CHECK(drills("10 squat jumps · 6 tuck jumps") == "squat jumps: 10 | tuck jumps: 6");
  CHECK(drills("10 sit ups 10 star jumps 5 press-ups") ==
        "sit ups: 10 | star jumps: 10 | press-ups: 5");
  CHECK(drills("bear walk and crab walk - 1 length each") ==
        "bear walk: 1 length | crab walk: 1 length");
  CHECK(drills("high knees + heel kicks, 2 lengths of each") ==
        "high knees: 2 lengths | heel kicks: 2 lengths");
}

TEST_CASE("numbers that are no dose") {
  CHECK(drills("180 jumps x8") == "180 jumps: 8");
  CHECK(drills("make up a 5-move routine") == "make up a 5-move routine");
  CHECK(drills("lunges 2x8 L/R") == "lunges: 2 x 8 each side");
}
