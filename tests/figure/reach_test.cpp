// Hands where the file puts them.
#include "figure/reach.h"

#include <catch2/catch.hpp>

#include "reading.h"
#include "seeded.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

Shown shown(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  return show(read.figures[0], Body::of_age(9)).at(0);
}

// The middle of the palm, had the hand no grip.
Vec palm(const Solved& solved, Side side) {
  const ArmPoints& arm = solved.skeleton.arm(side);
  return arm.wrist + unit(arm.wrist - arm.elbow, {}) * (solved.body.hand * 0.5);
}
void bones_are_whole(const Solved& solved) {
  for (const Side side : kSides) {
    const ArmPoints& arm = solved.skeleton.arm(side);
    CHECK(length(arm.elbow - arm.shoulder) == Approx(solved.body.upper_arm).epsilon(1e-9));
    CHECK(length(arm.wrist - arm.elbow) == Approx(solved.body.forearm).epsilon(1e-9));
  }
}

}  // namespace

TEST_CASE("a palm lies exactly where it was put") {
  const Shown s = shown("touches: seat, lean: 0, joints: {hip: 115, knee: 120}, hands on: knees");
  CHECK(s.out_of_reach.empty());
  const Flesh flesh(s.solved.body);
  for (const Side side : kSides) {
    const LegPoints& leg = s.solved.skeleton.leg(side);
    const Vec goal = leg.knee + leg.front * (flesh.knee * 0.6);
    CHECK(length(palm(s.solved, side) - goal) < 1e-9);
  }
  bones_are_whole(s.solved);
}

TEST_CASE("each hand may go elsewhere, across the body too") {
  const Shown s = shown("touches: feet, hands on: {near: far shoulder, far: far hip}");
  CHECK(s.out_of_reach.empty());
  CHECK(length(palm(s.solved, Side::kRight) - s.solved.skeleton.arm(Side::kLeft).shoulder) < 1e-9);
  CHECK(palm(s.solved, Side::kLeft).z < 0);
  bones_are_whole(s.solved);
}

TEST_CASE("what is too far is said, by how much, and the arm points there") {
  const Shown s = shown("touches: feet, lean: 0, hands on: toes");
  REQUIRE(s.out_of_reach.size() == 2);
  for (const OutOfReach& one : s.out_of_reach) {
    const ArmPoints& arm = s.solved.skeleton.arm(one.reach.hand);
    const Vec goal = s.solved.skeleton.leg(one.reach.hand).toe;
    const double whole = s.solved.body.upper_arm + s.solved.body.forearm + s.solved.body.hand / 2;
    CHECK(one.by == Approx(length(goal - arm.shoulder) - whole).margin(1e-5));
    const Vec along = unit(goal - arm.shoulder, {});
    CHECK(dot(unit(arm.wrist - arm.shoulder, {}), along) == Approx(1).margin(1e-5));
  }
  bones_are_whole(s.solved);
}

TEST_CASE("clasped hands meet") {
  const Shown s =
      shown("touches: feet, joints: {shoulder: 70, shoulder out: -15, elbow: 40}, hands on: hands");
  CHECK(length(palm(s.solved, Side::kRight) - palm(s.solved, Side::kLeft)) < 1e-9);
}

TEST_CASE("hands on both sides of an even pose are even") {
  for (const char* where :
       {"hips", "thighs", "knees", "shins", "ankles", "head", "ears", "chest"}) {
    const Shown s =
        shown("touches: seat, lean: 20, joints: {spine: 30, hip: 120, knee: 130}, hands on: " +
              std::string(where));
    const Vec a = palm(s.solved, Side::kRight);
    const Vec b = palm(s.solved, Side::kLeft);
    INFO(where);
    CHECK(a.x == Approx(b.x).margin(1e-9));
    CHECK(a.y == Approx(b.y).margin(1e-9));
    CHECK(a.z == Approx(-b.z).margin(1e-9));
  }
}

TEST_CASE("arms keep their bones wherever a hand is put, in any pose") {
  Seeded random(5);
  for (int i = 0; i < 500; ++i) {
    Figure figure;
    Pose pose;
    pose.joints = random.joints();
    pose.height = 1;
    for (const Side side : kSides) {
      const auto target = static_cast<Target>(random.below(kTargets));
      std::optional<Side> whose;
      if (random.coin()) whose = random.coin() ? Side::kRight : Side::kLeft;
      pose.reaches.push_back({side, target, whose, {}});
    }
    figure.poses.push_back(pose);
    const Shown s = show(figure, Body::of_age(random.from_to(5, 16))).at(0);
    bones_are_whole(s.solved);
    for (const OutOfReach& one : s.out_of_reach) CHECK(one.by > 0);
  }
}
