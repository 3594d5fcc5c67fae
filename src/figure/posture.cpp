#include "figure/posture.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace chalkleaf::figure {
namespace {

double rise_of(const Vec& way) {
  const Vec u = unit(way, {0, 1, 0});
  return direction_of(std::sqrt(u.x * u.x + u.z * u.z), u.y).in_degrees();
}

bool any(const Facts& f, std::initializer_list<Part> parts) {
  return std::any_of(parts.begin(), parts.end(), [&](Part part) {
    const Contact* c = f.contact(part);
    return c != nullptr && bears_from_below(c->on);
  });
}

Posture on_a_bar(const Facts& f) {
  const Skeleton& s = f.solved->skeleton;
  const bool above = s.arms[0].wrist.y > s.arms[0].shoulder.y;
  return f.touches(Part::kHands) && above ? Posture::kHang : Posture::kBar;
}

Posture posture_of(const Facts& f) {
  const auto& contacts = f.pose->contacts;
  if (contacts.empty()) return Posture::kAir;
  for (const Contact& c : contacts) {
    if (c.on == Prop::kBar) return on_a_bar(f);
  }
  if (any(f, {Part::kBack})) return Posture::kBack;
  if (any(f, {Part::kUpperBack})) {
    return any(f, {Part::kFeet, Part::kToes, Part::kHeels}) ? Posture::kBack : Posture::kShoulders;
  }
  if (any(f, {Part::kFront})) return Posture::kFront;
  if (any(f, {Part::kSideBody})) return Posture::kSide;
  if (any(f, {Part::kSeat})) return Posture::kSit;
  const bool knees = any(f, {Part::kKnees, Part::kShins, Part::kThighs});
  const bool feet = any(f, {Part::kFeet, Part::kToes, Part::kHeels, Part::kPointedToes});
  const bool hands = any(f, {Part::kHands, Part::kFingersBack, Part::kForearms, Part::kElbows});
  if (any(f, {Part::kHead}) && !knees && !feet) return Posture::kHead;
  if (hands && (knees || feet)) return Posture::kSupport;
  if (hands) return f.rise < -30 ? Posture::kHands : Posture::kBalance;
  if (knees && feet) {
    const Contact* foot = f.contact(Part::kFeet);
    return foot != nullptr && foot->side ? Posture::kHalfKneel : Posture::kKneel;
  }
  if (knees) return Posture::kKneel;
  return feet ? Posture::kStand : Posture::kOther;
}

ArmPlace place_of(const Facts& f, Side side) {
  const ArmPoints& arm = f.solved->skeleton.arm(side);
  const Frame& chest = f.solved->skeleton.trunk.back().frame;
  const Vec way = unit(arm.elbow - arm.shoulder, {0, -1, 0});
  const double forward = dot(way, chest.forward);
  const double up = dot(way, chest.up);
  const double out = dot(way, chest.right) * (side == Side::kRight ? 1 : -1);
  constexpr double kPlain = 0.945;  // within 19 degrees
  if (up > kPlain)
    return f.arms[static_cast<std::size_t>(side)].elbow > 75 ? ArmPlace::kBehindHead
                                                             : ArmPlace::kOverhead;
  if (up < -0.94) return ArmPlace::kDown;
  if (out < -0.35) return ArmPlace::kAcross;
  if (forward > kPlain) return ArmPlace::kForward;
  if (out > kPlain) return ArmPlace::kSide;
  if (forward < -0.3 && up < 0.3) return ArmPlace::kBack;
  if (up > 0.35) return out > forward ? ArmPlace::kSideUp : ArmPlace::kForwardUp;
  if (out > 0.34 && out > forward) return up < -0.5 ? ArmPlace::kSideLow : ArmPlace::kSide;
  return forward > 0.34 ? (up < -0.5 ? ArmPlace::kForwardLow : ArmPlace::kForward)
                        : ArmPlace::kDown;
}

// The bend of a hinge as it is drawn: a hand that was put somewhere has another than its file says.
double bend(const Vec& a, const Vec& hinge, const Vec& b) {
  const Vec one = unit(hinge - a, {0, -1, 0});
  const Vec other = unit(b - hinge, {0, -1, 0});
  return direction_of(dot(one, other), length(cross(one, other))).in_degrees();
}

}  // namespace

const Contact* Facts::contact(Part part, std::optional<Side> side) const {
  for (const Contact& c : pose->contacts) {
    if (c.part == part && (!side || !c.side || *c.side == *side)) return &c;
  }
  return nullptr;
}

Facts facts_of(const Pose& pose, const Solved& solved) {
  Facts f;
  f.pose = &pose;
  f.solved = &solved;
  const Skeleton& s = solved.skeleton;
  f.rise = rise_of(s.trunk[8].at - s.trunk[0].at);
  f.face_up = s.trunk[5].frame.forward.y > 0.4;
  for (const Side side : kSides) {
    const auto i = static_cast<std::size_t>(side);
    const ArmPoints& arm = s.arm(side);
    ArmFacts& a = f.arms[i];
    a.elbow = bend(arm.shoulder, arm.elbow, arm.wrist);
    // An arm along the floor hangs on a shoulder that lies half a trunk above it.
    const double k = solved.body.stature;
    a.lifted = arm.wrist.y > arm.shoulder.y + 0.045 * k || arm.shoulder.y > 0.085 * k;
    for (const Part part : {Part::kHands, Part::kFingersBack, Part::kForearms, Part::kElbows}) {
      const Contact* c = f.contact(part, side);
      if (c == nullptr) continue;
      (c->on == Prop::kWall || c->on == Prop::kDoorway ? a.against : a.bears) = true;
    }
    for (const Reach& reach : pose.reaches) {
      if (reach.hand == side) a.on = &reach;
    }
    a.place = place_of(f, side);
    const LegPoints& leg = s.leg(side);
    LegFacts& l = f.legs[i];
    l.hip = solved.joints.get(Joint::kHip, side);
    l.out = solved.joints.get(Joint::kHipOut, side);
    l.turn = solved.joints.get(Joint::kHipTurn, side);
    l.knee = solved.joints.get(Joint::kKnee, side);
    l.ankle = solved.joints.get(Joint::kAnkle, side);
    l.rise = rise_of(leg.ankle - leg.hip);
    l.clear = std::min(lowest(solved.body, s, Part::kFeet, side),
                       lowest(solved.body, s, Part::kInsteps, side));
    for (const Part part : {Part::kFeet, Part::kToes, Part::kHeels, Part::kPointedToes,
                            Part::kInsteps, Part::kKnees, Part::kShins, Part::kThighs}) {
      const Contact* c = f.contact(part, side);
      if (c == nullptr) continue;
      (c->on == Prop::kWall ? l.against : l.bears) = true;
    }
  }
  f.posture = posture_of(f);
  return f;
}

}  // namespace chalkleaf::figure
