#include "figure/reach.h"

#include <algorithm>
#include <cmath>

namespace chalkleaf::figure {
namespace {

constexpr Side other(Side side) { return side == Side::kRight ? Side::kLeft : Side::kRight; }

// Where the middle of the palm goes.
Vec place_of(const Reach& reach, const Vec& bar, const Skeleton& posed, const Solved& solved) {
  const Skeleton& s = solved.skeleton;
  const Flesh f(solved.body);
  const Side side = reach.side.value_or(reach.hand);
  const double out = side == Side::kRight ? 1 : -1;
  const LegPoints& leg = s.leg(side);
  const TrunkSlice& waist = s.trunk[2];
  const TrunkSlice& chest = s.trunk[8];
  switch (reach.target) {
    case Target::kHips:
      return waist.at + waist.frame.right * (out * waist.breadth) +
             waist.frame.forward * (0.2 * waist.depth);
    case Target::kThighs:
    case Target::kUnderThighs: {
      const Vec along = unit(leg.knee - leg.hip, {1, 0, 0});
      const Vec over = unit(cross(waist.frame.right, along), {0, 1, 0});
      return reach.target == Target::kThighs ? mix(leg.hip, leg.knee, 0.55) + over * f.knee
                                             : mix(leg.hip, leg.knee, 0.72) - over * (f.knee * 0.9);
    }
    case Target::kKnees:
      return leg.knee + leg.front * (f.knee * 0.6);
    case Target::kShins:
      return mix(leg.knee, leg.ankle, 0.45) + leg.front * f.shin;
    case Target::kAnkles:
      return leg.ankle + leg.front * (f.ankle * 0.6);
    case Target::kHeels:
      return leg.heel;
    case Target::kToes:
      return leg.toe;
    case Target::kHead:
      return s.head - s.head_frame.forward * (f.head_deep * 0.7) +
             s.head_frame.right * (out * f.head_wide * 0.6);
    case Target::kEars:
      return s.head + s.head_frame.right * (out * f.head_wide);
    case Target::kChest:
      return chest.at + chest.frame.forward * chest.depth +
             chest.frame.right * (out * chest.breadth * 0.4);
    case Target::kBelly:
      return s.trunk[4].at + s.trunk[4].frame.forward * s.trunk[4].depth;
    case Target::kShoulders:
      return s.arm(reach.side.value_or(other(reach.hand))).shoulder;
    case Target::kElbows:
      return s.arm(reach.side.value_or(other(reach.hand))).elbow;
    case Target::kHands: {
      // Both palms meet half way between where the written angles put them.
      const auto palm = [&](Side hand) {
        const ArmPoints& arm = posed.arm(hand);
        return mix(arm.wrist, arm.tip, 0.5);
      };
      return mix(palm(Side::kRight), palm(Side::kLeft), 0.5);
    }
    case Target::kBar:
      return bar + Vec{0, 0, s.arm(reach.hand).shoulder.z};
  }
  return {};
}

}  // namespace

std::vector<OutOfReach> reach(const Pose& pose, const Vec& bar, Solved& solved) {
  std::vector<OutOfReach> missed;
  const Body& body = solved.body;
  const Skeleton posed = solved.skeleton;
  for (const Reach& one : pose.reaches) {
    ArmPoints& arm = solved.skeleton.arm(one.hand);
    const Vec goal = place_of(one, bar, posed, solved);
    const double upper = body.upper_arm;
    const double lower = body.forearm + body.hand * 0.5;
    const Vec way = goal - arm.shoulder;
    const double distance = length(way);
    const Vec along = unit(way, {0, -1, 0});
    const double far = std::clamp(distance, std::fabs(upper - lower) + 1e-6, upper + lower - 1e-6);
    if (distance - far > 0.01 * body.stature) missed.push_back({one, distance - far});
    // The elbow: on a circle about that line, on the side where the written angles have it.
    const TrunkSlice& chest = solved.skeleton.trunk.back();
    const double out = one.hand == Side::kRight ? 1 : -1;
    const Vec usual = chest.frame.right * (out * 0.5) - chest.frame.forward - chest.frame.up * 0.2;
    Vec side = (arm.elbow - arm.shoulder) + usual * (0.25 * upper);
    side = side - along * dot(side, along);
    const Vec bend = unit(side, unit(usual - along * dot(usual, along), {0, 0, out}));
    const double foot = (upper * upper - lower * lower + far * far) / (2 * far);
    const double lift = std::sqrt(std::max(0.0, upper * upper - foot * foot));
    arm.elbow = arm.shoulder + along * foot + bend * lift;
    const Vec hand = unit(arm.shoulder + along * far - arm.elbow, along);
    arm.wrist = arm.elbow + hand * body.forearm;
    const bool grips = pose.holds.has_value() || one.target == Target::kBar;
    const double fingers = grips ? 0.5 : 0.9;
    arm.knuckles = arm.wrist + hand * (body.hand * 0.45 * (grips ? 0.5 : 1));
    arm.tip = arm.wrist + hand * (body.hand * fingers);
  }
  return missed;
}

}  // namespace chalkleaf::figure
