// Sides as they are said: each limb, equal amounts by side, the other side again.
#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft_test::drills;

TEST_CASE("each limb, with any word between") {
  CHECK(drills("trunk bends 6 to each side") == "trunk bends: 6 each side");
  CHECK(drills("shoulder roll 3 goes over either shoulder") == "shoulder roll: 3 goes each side");
  CHECK(drills("hamstring 15 s / leg") == "hamstring: 15 s each leg");
  CHECK(drills("roll it along, 8 times every arm") == "roll it along: 8 each arm");
  CHECK(drills("calf raises 10 on each foot") == "calf raises: 10 each leg");
  CHECK(drills("kick-ups 5/leg") == "kick-ups: 5 each leg");
  CHECK(drills("splits 45s each leg + middle") == "splits: 45 s each way: right, left, middle");
  CHECK(drills("walk fwd/back/side 2 lengths") == "walk forward/back/side: 2 lengths");
}

TEST_CASE("equal amounts that name their sides") {
  CHECK(drills("side plank 20s L, 20s R") == "side plank: 20 s each side");
  CHECK(drills("split 20 s right 20 s left") == "split: 20 s each side");
  CHECK(drills("splits 2 min right, 2 min left") == "splits: 2 min each side");
  CHECK(drills("figure of eight, 10 with the right hand, 10 with the left") ==
        "figure of eight: 10 each side");
  CHECK(drills("log rolls - four one way, four the other") == "log rolls: 4 each way");
  CHECK(drills("arm circles, ten forwards and ten backwards") == "arm circles: 10 each way");
  CHECK(drills("10 arm circles to front and 10 to back") == "arm circles to front: 10 each way");
  CHECK(drills("pirouettes x 5 R, x 5 L") == "pirouettes: 5 each side");
  CHECK(drills("wrists rolling 10 + 10") == "wrists rolling: 10 each way");
  CHECK(drills("splits: R 30s, L 30s, middle 30s") == "splits: 30 s each way: right, left, middle");
  CHECK(drills("big march, forward 1 lap, back 1 lap") == "big march: 2 lengths");
  CHECK(drills("5 forward rolls, 5 backward rolls") == "forward rolls: 5 | backward rolls: 5");
}

TEST_CASE("the same again on the other side") {
  CHECK(drills("stand on one foot, 20 seconds, change feet") ==
        "stand on one foot: 20 s each side");
  CHECK(drills("arabesque 5 s, other leg same") == "arabesque: 5 s each side");
  CHECK(drills("hop on right leg x10, then left leg x10") == "hop on right leg: 10 each side");
}

TEST_CASE("each means sides where the drill is one-sided and alone") {
  CHECK(drills("calves 20s ea") == "calves: 20 s each side");
  CHECK(drills("hip openers x 10 ea") == "hip openers: 10 each side");
  CHECK(drills("cartwheels 5 ea") == "cartwheels: 5");
}

TEST_CASE("a share in brackets is no side of the whole") {
  CHECK(drills("round-offs 6 (3 each leg)") == "round-offs: 6");
  CHECK(drills("shoulder taps 3 x 20 (10 each side)") == "shoulder taps: 3 x 20");
}

TEST_CASE("sides behind minutes, and a centre called c") {
  CHECK(drills("roll calves 1 min/side") == "roll calves: 60 s each side");
  CHECK(drills("splits 60 sec R/L/C") == "splits: 60 s each way: right, left, middle");
}
