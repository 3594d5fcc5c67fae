// Properties of forward kinematics over seeded random poses: bones keep their lengths, mirrored
// angles make a mirrored body.
#include "figure/skeleton.h"

#include <catch2/catch.hpp>

#include "seeded.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

Stance any_stance(Seeded& random) {
  return {Angle::degrees(random.from_to(-180, 180)), Angle::degrees(random.from_to(-180, 180)),
          Angle::degrees(random.from_to(-180, 180))};
}

void mirrored(const Vec& a, const Vec& b) {
  CHECK(a.x == Approx(b.x).margin(1e-12));
  CHECK(a.y == Approx(b.y).margin(1e-12));
  CHECK(a.z == Approx(-b.z).margin(1e-12));
}

}  // namespace

TEST_CASE("bones keep their lengths, whatever the angles") {
  Seeded random(1);
  for (int i = 0; i < 300; ++i) {
    const Body body = Body::of_age(random.from_to(5, 16));
    const Skeleton s = pose_skeleton(body, random.joints(), any_stance(random), {});
    const double foot = body.ankle / 0.039;
    for (const Side side : kSides) {
      const ArmPoints& a = s.arm(side);
      const LegPoints& l = s.leg(side);
      CHECK(length(a.elbow - a.shoulder) == Approx(body.upper_arm).epsilon(1e-9));
      CHECK(length(a.wrist - a.elbow) == Approx(body.forearm).epsilon(1e-9));
      CHECK(length(a.tip - a.wrist) == Approx(body.hand).epsilon(1e-9));
      CHECK(length(l.knee - l.hip) == Approx(body.thigh()).epsilon(1e-9));
      CHECK(length(l.ankle - l.knee) == Approx(body.shank()).epsilon(1e-9));
      // Heel to ankle and ball: the outline's own measures, of the foot's height.
      CHECK(length(l.heel - l.ankle) == Approx(std::hypot(0.020, 0.019) * foot).epsilon(1e-9));
      CHECK(length(l.ball - l.ankle) == Approx(std::hypot(0.068, 0.024) * foot).epsilon(1e-9));
      CHECK(length(l.toe - l.ball) == Approx(std::hypot(0.033, 0.004) * foot).epsilon(1e-9));
    }
    for (std::size_t slice = 1; slice < kSlices; ++slice) {
      CHECK(length(s.trunk[slice].at - s.trunk[slice - 1].at) ==
            Approx(body.trunk() / (kSlices - 1)).epsilon(1e-9));
    }
    CHECK(length(s.legs[0].hip - s.legs[1].hip) ==
          Approx(body.hip_width - 0.098 * body.stature).epsilon(1e-9));
  }
}

TEST_CASE(
    "shoulders are as far apart as the body is broad, and a lifted blade lifts its shoulder") {
  const Body body = Body::of_age(9);
  const auto with = [&](double lift) {
    Joints joints;
    joints.set(Joint::kShoulderLift, lift);
    return pose_skeleton(body, joints, {}, {});
  };
  const Skeleton plain = with(0);
  CHECK(length(plain.arms[0].shoulder - plain.arms[1].shoulder) ==
        Approx(body.shoulder_width - 0.052 * body.stature).epsilon(1e-9));
  CHECK(with(30).arms[0].shoulder.y > plain.arms[0].shoulder.y + 0.01);
  CHECK(with(-20).arms[1].shoulder.y < plain.arms[1].shoulder.y - 0.005);
}

TEST_CASE("a bent joint's angle is the one that was asked for") {
  const Body body = Body::of_age(9);
  for (int degrees = 0; degrees <= 150; degrees += 10) {
    Joints joints;
    joints.set(Joint::kKnee, degrees);
    joints.set(Joint::kElbow, degrees);
    const Skeleton s = pose_skeleton(body, joints, {}, {});
    const LegPoints& l = s.leg(Side::kRight);
    const ArmPoints& a = s.arm(Side::kRight);
    const double cosine_of = cosine(Angle::degrees(degrees));
    CHECK(dot(unit(l.knee - l.hip, {}), unit(l.ankle - l.knee, {})) ==
          Approx(cosine_of).margin(1e-12));
    CHECK(dot(unit(a.elbow - a.shoulder, {}), unit(a.wrist - a.elbow, {})) ==
          Approx(cosine_of).margin(1e-12));
    // The heel goes back, the hand goes forward.
    CHECK(l.ankle.x <= l.knee.x + 1e-12);
    CHECK(a.wrist.x >= a.elbow.x - 1e-12);
  }
}

TEST_CASE("angles go the way that pose files say") {
  const Body body = Body::of_age(9);
  const auto with = [&](Joint joint, double degrees) {
    Joints joints;
    joints.set(joint, degrees);
    return pose_skeleton(body, joints, {}, {});
  };
  const Skeleton plain = with(Joint::kHip, 0);
  CHECK(with(Joint::kShoulder, 90).arms[0].wrist.x > 0.3);              // forward
  CHECK(with(Joint::kShoulder, 180).arms[0].wrist.y > plain.head.y);    // overhead
  CHECK(with(Joint::kShoulderOut, 90).arms[0].wrist.z > 0.3);           // out, to the right
  CHECK(with(Joint::kShoulderOut, 90).arms[1].wrist.z < -0.3);          // and to the left
  CHECK(with(Joint::kHip, 90).legs[0].knee.x > 0.3);                    // forward
  CHECK(with(Joint::kHipOut, 45).legs[0].knee.z > 0.2);                 // out
  CHECK(with(Joint::kAnkle, -50).legs[0].toe.y < plain.legs[0].toe.y);  // pointed
  CHECK(with(Joint::kSpine, 60).head.x > plain.head.x + 0.1);           // forwards
  CHECK(with(Joint::kSpineSide, 40).head.z > plain.head.z + 0.1);       // to the right
  CHECK(with(Joint::kNeck, 45).head.x > plain.head.x);                  // forwards
  CHECK(with(Joint::kSpineTurn, 60).arms[0].shoulder.x > plain.arms[0].shoulder.x);  // to the left
  CHECK(with(Joint::kHipTurn, 60).legs[0].toe.z > plain.legs[0].toe.z);              // outwards
  CHECK(with(Joint::kHipTurn, 60).legs[1].toe.z < plain.legs[1].toe.z);
}

TEST_CASE("mirrored joints make a mirrored body") {
  Seeded random(2);
  for (int i = 0; i < 300; ++i) {
    const Body body = Body::of_age(random.from_to(5, 16));
    const Joints joints = random.joints();
    Stance stance = any_stance(random);
    stance.yaw = {};
    Modes modes;
    for (auto& foot : modes.foot) foot = static_cast<FootMode>(random.below(3));
    for (auto& hand : modes.hand) hand = static_cast<HandMode>(random.below(5));
    const Skeleton a = pose_skeleton(body, joints, stance, modes);
    const Skeleton b =
        pose_skeleton(body, joints.mirrored(), {stance.lean, -stance.tilt, {}},
                      {{modes.foot[1], modes.foot[0]}, {modes.hand[1], modes.hand[0]}});
    mirrored(a.head, b.head);
    for (std::size_t slice = 0; slice < kSlices; ++slice)
      mirrored(a.trunk[slice].at, b.trunk[slice].at);
    for (std::size_t side = 0; side < 2; ++side) {
      const ArmPoints& arm = a.arms[side];
      const ArmPoints& other_arm = b.arms[1 - side];
      mirrored(arm.shoulder, other_arm.shoulder);
      mirrored(arm.elbow, other_arm.elbow);
      mirrored(arm.wrist, other_arm.wrist);
      mirrored(arm.knuckles, other_arm.knuckles);
      mirrored(arm.tip, other_arm.tip);
      const LegPoints& leg = a.legs[side];
      const LegPoints& other_leg = b.legs[1 - side];
      mirrored(leg.hip, other_leg.hip);
      mirrored(leg.knee, other_leg.knee);
      mirrored(leg.ankle, other_leg.ankle);
      mirrored(leg.heel, other_leg.heel);
      mirrored(leg.ball, other_leg.ball);
      mirrored(leg.toe, other_leg.toe);
    }
    mirrored(centre_of_mass(body, a), centre_of_mass(body, b));
    CHECK(joints.mirrored().mirrored() == joints);
  }
}

TEST_CASE("turning the view about the upright axis changes no height") {
  Seeded random(3);
  for (int i = 0; i < 100; ++i) {
    const Body body = Body::of_age(9);
    const Joints joints = random.joints();
    Stance stance = any_stance(random);
    const Skeleton a = pose_skeleton(body, joints, stance, {});
    stance.yaw = stance.yaw + Angle::degrees(random.from_to(-180, 180));
    const Skeleton b = pose_skeleton(body, joints, stance, {});
    CHECK(a.head.y == Approx(b.head.y).margin(1e-12));
    for (std::size_t side = 0; side < 2; ++side) {
      CHECK(a.arms[side].tip.y == Approx(b.arms[side].tip.y).margin(1e-12));
      CHECK(a.legs[side].toe.y == Approx(b.legs[side].toe.y).margin(1e-12));
    }
  }
}

TEST_CASE("hands and feet that bear lie level") {
  const Body body = Body::of_age(9);
  Joints joints;
  joints.set(Joint::kKnee, 40);
  joints.set(Joint::kAnkle, -30);
  Modes modes;
  modes.foot.fill(FootMode::kFlat);
  modes.hand.fill(HandMode::kFlat);
  const Skeleton s = pose_skeleton(body, joints, {Angle::degrees(30), {}, {}}, modes);
  for (const LegPoints& leg : s.legs) {
    // Heel and ball rest with their own thicknesses: 0.020 and 0.015 of the foot's height unit.
    const double k = body.ankle / 0.039;
    CHECK(leg.heel.y - 0.020 * k == Approx(leg.ball.y - 0.015 * k).margin(1e-12));
  }
  for (const ArmPoints& arm : s.arms) {
    CHECK(arm.wrist.y - 0.0155 * body.stature ==
          Approx(arm.knuckles.y - 0.0150 * body.stature).margin(1e-12));
    CHECK(arm.wrist.y - 0.0155 * body.stature ==
          Approx(arm.tip.y - 0.0095 * body.stature).margin(1e-12));
  }
}
