#include "figure/skeleton.h"

#include <algorithm>
#include <numeric>

namespace chalkleaf::figure {
namespace {

// How the bend of the spine is spread over the joints between the slices: the pelvis is stiff, the
// loins bend more than the chest. Ours, for the eye.
constexpr std::array<double, kSlices - 1> kBend = {0, 0.3, 0.9, 1.3, 1.4, 1.3, 1.1, 0.9, 0.7, 0.4};
// Half the trunk's depth and breadth at each slice, of the stature. Ours.
constexpr std::array<double, kSlices> kDepth = {0.057, 0.058, 0.053, 0.046, 0.043, 0.045,
                                                0.050, 0.054, 0.054, 0.047, 0.033};
constexpr std::array<double, kSlices> kBreadth = {0.076, 0.080, 0.074, 0.065, 0.061, 0.065,
                                                  0.073, 0.081, 0.086, 0.088, 0.072};

/// A limb's own directions: along it, to its front, and to the gymnast's right.
struct LimbFrame {
  Vec along, front, right;
};

LimbFrame hanging(const Frame& from) { return {-from.up, from.forward, from.right}; }

// A limb at a ball joint: out to its side, then forwards, then about itself.
LimbFrame swung(const Frame& from, Side side, double flexion, double out, double about,
                Sines& sines) {
  const double sign = side == Side::kRight ? 1 : -1;
  LimbFrame limb = hanging(from);
  turn(limb.along, limb.right, sines.of(out * sign));
  Vec outward = limb.right;
  // Forwards about the right axis of what carries the limb.
  const auto [s, c] = sines.of(flexion);
  const auto forwards = [&, s = s, c = c](Vec& v) {
    const double forward = dot(v, from.forward);
    const double up = dot(v, from.up);
    v = from.right * dot(v, from.right) + from.forward * (forward * c - up * s) +
        from.up * (forward * s + up * c);
  };
  forwards(limb.along);
  forwards(limb.front);
  forwards(outward);
  limb.right = outward;
  turn(limb.front, limb.right, sines.of(about * sign));
  return limb;
}

Vec level(const Vec& v, const Vec& otherwise) { return unit({v.x, 0, v.z}, otherwise); }

void place_arm(const Body& body, const Joints& joints, Side side, HandMode mode,
               const TrunkSlice& chest, Sines& sines, ArmPoints& arm) {
  const double sign = side == Side::kRight ? 1 : -1;
  // The joint lies a quarter of the upper arm's thickness inside the shoulder's edge.
  arm.shoulder =
      chest.at + chest.frame.right * (sign * (body.shoulder_width * 0.5 - 0.026 * body.stature));
  // The blade turns about the breastbone, a tenth of the stature away.
  const double lift = sines.of(joints.get(Joint::kShoulderLift, side)).sine;
  arm.shoulder += chest.frame.up * (0.1 * body.stature * lift);
  LimbFrame limb =
      swung(chest.frame, side, joints.get(Joint::kShoulder, side),
            joints.get(Joint::kShoulderOut, side), joints.get(Joint::kShoulderTurn, side), sines);
  arm.elbow = arm.shoulder + limb.along * body.upper_arm;
  turn(limb.along, limb.front, sines.of(joints.get(Joint::kElbow, side)));
  arm.wrist = arm.elbow + limb.along * body.forearm;
  arm.front = limb.front;
  if (mode == HandMode::kFree || mode == HandMode::kGrip) {
    // A fist is half as long as the hand.
    const double reach = mode == HandMode::kGrip ? 0.5 : 1;
    turn(limb.along, limb.front, sines.of(joints.get(Joint::kWrist, side)));
    arm.knuckles = arm.wrist + limb.along * (body.hand * 0.45 * reach);
    arm.tip = arm.wrist + limb.along * (body.hand * reach);
    return;
  }
  if (mode == HandMode::kFlatUp) {
    arm.knuckles = arm.wrist + Vec{0, body.hand * 0.5, 0};
    arm.tip = arm.wrist + Vec{0, body.hand * 0.94, 0};
    return;
  }
  if (mode == HandMode::kFlatOn) {
    return lay_hand(body, arm, level(limb.along, level(chest.frame.forward, {1, 0, 0})));
  }
  const Vec front = level(limb.front, level(chest.frame.forward, {1, 0, 0}));
  lay_hand(body, arm, mode == HandMode::kFlat ? front : -front);
}

void place_foot(const Body& body, const Joints& joints, Side side, FootMode mode,
                const LimbFrame& shank, Sines& sines, LegPoints& leg) {
  // Towards the toes, and towards the sole.
  Vec forward = shank.front;
  Vec down = shank.along;
  if (mode == FootMode::kFlat) {
    forward = level(shank.front, level(shank.along, {1, 0, 0}));
    down = {0, -1, 0};
  } else {
    turn(down, forward, sines.of(joints.get(Joint::kAnkle, side)));
  }
  const double k = body.ankle / 0.039;
  leg.heel = leg.ankle + forward * (-0.020 * k) + down * (0.019 * k);
  leg.ball = leg.ankle + forward * (0.068 * k) + down * (0.024 * k);
  Vec toes = forward;
  Vec under = down;
  if (mode == FootMode::kOnToes) {
    // Where the toes go once the heel lifts: level, away from the sole.
    toes = level(forward + down * -0.5, {1, 0, 0});
    under = {0, -1, 0};
  } else {
    double up = joints.get(Joint::kToes, side);
    if (mode == FootMode::kFlat) {
      up = 0;
    } else if (up == 0) {
      // A pointed foot curls its toes.
      constexpr double kPointed = -40;
      up = std::clamp((joints.get(Joint::kAnkle, side) - kPointed) * 2, -25.0, 0.0);
    }
    turn(toes, under, sines.of(-up));
  }
  leg.toe = leg.ball + toes * (0.033 * k) + under * (0.004 * k);
}

void place_leg(const Body& body, const Joints& joints, Side side, FootMode mode,
               const TrunkSlice& pelvis, Sines& sines, LegPoints& leg) {
  const double sign = side == Side::kRight ? 1 : -1;
  leg.hip = pelvis.at + pelvis.frame.right * (sign * (body.hip_width * 0.5 - 0.049 * body.stature));
  LimbFrame limb =
      swung(pelvis.frame, side, joints.get(Joint::kHip, side), joints.get(Joint::kHipOut, side),
            joints.get(Joint::kHipTurn, side), sines);
  leg.knee = leg.hip + limb.along * body.thigh();
  turn(limb.along, limb.front, sines.of(-joints.get(Joint::kKnee, side)));
  leg.ankle = leg.knee + limb.along * body.shank();
  leg.front = limb.front;
  place_foot(body, joints, side, mode, limb, sines, leg);
}

// Forwards, to the right and about itself, by a share of the three angles.
void bend(Frame& frame, double forwards, double side, double about, Sines& sines) {
  turn(frame.up, frame.forward, sines.of(forwards));
  turn(frame.up, frame.right, sines.of(side));
  turn(frame.right, frame.forward, sines.of(about));
}

}  // namespace

void Skeleton::move(const Vec& by) {
  for (TrunkSlice& slice : trunk) slice.at += by;
  neck += by;
  head += by;
  for (ArmPoints& arm : arms) {
    for (Vec* v : {&arm.shoulder, &arm.elbow, &arm.wrist, &arm.knuckles, &arm.tip}) *v += by;
  }
  for (LegPoints& leg : legs) {
    for (Vec* v : {&leg.hip, &leg.knee, &leg.ankle, &leg.heel, &leg.ball, &leg.toe}) *v += by;
  }
}

void lay_hand(const Body& body, ArmPoints& arm, const Vec& forward) {
  // The heel of the hand is thicker than the fingers; all of it rests on the ground.
  const double k = body.stature;
  arm.knuckles = arm.wrist + forward * (body.hand * 0.5) + Vec{0, -0.0005 * k, 0};
  arm.tip = arm.wrist + forward * (body.hand * 0.94) + Vec{0, -0.006 * k, 0};
}

void Skeleton::tip_to_viewer() {
  const auto tip = [](Vec& v) { v = {v.x, -v.z, v.y}; };
  for (TrunkSlice& slice : trunk) {
    for (Vec* v : {&slice.at, &slice.frame.forward, &slice.frame.up, &slice.frame.right}) tip(*v);
  }
  for (Vec* v : {&neck, &head, &head_frame.forward, &head_frame.up, &head_frame.right}) tip(*v);
  for (ArmPoints& a : arms) {
    for (Vec* v : {&a.shoulder, &a.elbow, &a.wrist, &a.knuckles, &a.tip, &a.front}) tip(*v);
  }
  for (LegPoints& l : legs) {
    for (Vec* v : {&l.hip, &l.knee, &l.ankle, &l.heel, &l.ball, &l.toe, &l.front}) tip(*v);
  }
}

Skeleton pose_skeleton(const Body& body, const Joints& joints, const Stance& stance,
                       const Modes& modes) {
  Sines sines;
  return pose_skeleton(body, joints, stance, modes, sines);
}

Skeleton pose_skeleton(const Body& body, const Joints& joints, const Stance& stance,
                       const Modes& modes, Sines& sines) {
  sines.begin();
  Skeleton out;
  Frame frame;
  turn(frame.up, frame.forward, sines.of(stance.lean.in_degrees()));
  // Tilt is about the gymnast's own front, so that it is the picture's turn in a frontal view.
  turn(frame.up, frame.right, sines.of(stance.tilt.in_degrees()));
  // The view: about the upright axis of the picture.
  const auto [s, c] = sines.of(stance.yaw.in_degrees());
  const auto seen = [s = s, c = c](Vec& v) { v = {v.x * c - v.z * s, v.y, v.x * s + v.z * c}; };
  for (Vec* v : {&frame.forward, &frame.up, &frame.right}) seen(*v);

  constexpr double kWeights = std::accumulate(kBend.begin(), kBend.end(), 0.0);
  const double step = body.trunk() / static_cast<double>(kSlices - 1);
  Vec at;
  for (std::size_t i = 0; i < kSlices; ++i) {
    if (i > 0) {
      const double share = kBend[i - 1] / kWeights;
      bend(frame, joints.get(Joint::kSpine) * share, joints.get(Joint::kSpineSide) * share,
           joints.get(Joint::kSpineTurn) * share, sines);
      at += frame.up * step;
    }
    out.trunk[i] = {at, frame, kDepth[i] * body.stature, kBreadth[i] * body.stature};
  }
  const TrunkSlice& chest = out.trunk.back();
  for (const Side side : kSides) {
    const auto i = static_cast<std::size_t>(side);
    place_arm(body, joints, side, modes.hand[i], chest, sines, out.arms[i]);
    place_leg(body, joints, side, modes.foot[i], out.trunk.front(), sines, out.legs[i]);
  }
  // The neck bends half at its foot and half under the skull.
  out.neck = chest.at;
  const double neck = body.chin - body.shoulder;
  for (int half = 0; half < 2; ++half) {
    bend(frame, joints.get(Joint::kNeck) / 2, joints.get(Joint::kNeckSide) / 2,
         joints.get(Joint::kNeckTurn) / 2, sines);
    if (half == 0) at += frame.up * neck;
  }
  out.head = at + frame.up * (body.head * 0.5) + frame.forward * (0.012 * body.stature);
  out.head_frame = frame;
  return out;
}

LegCentres centres_of_leg(const Masses& m, const Vec& hip, const Vec& knee, const Vec& ankle,
                          const Vec& ball) {
  LegCentres out{mix(hip, knee, m.thigh.from_near_end),
                 mix(knee, ankle, m.shank.from_near_end),
                 mix(ankle, ball, m.foot.from_near_end),
                 {}};
  const double share = m.thigh.share + m.shank.share + m.foot.share;
  out.whole = (out.thigh * m.thigh.share + out.shank * m.shank.share + out.foot * m.foot.share) *
              (1 / share);
  return out;
}

Vec centre_of_mass(const Body& body, const Skeleton& skeleton) {
  const Masses& m = body.masses;
  const Vec trunk = [&] {
    // The middle of the trunk's line, which is that of hip and shoulder when it is straight.
    Vec sum;
    for (std::size_t i = 0; i + 1 < kSlices; ++i) {
      sum += mix(skeleton.trunk[i].at, skeleton.trunk[i + 1].at, m.trunk.from_near_end);
    }
    return sum * (1.0 / static_cast<double>(kSlices - 1));
  }();
  const double eye = (body.eye() - (body.chin + body.head * 0.5));
  Vec out = trunk * m.trunk.share + (skeleton.head + skeleton.head_frame.up * eye -
                                     skeleton.head_frame.forward * (0.012 * body.stature)) *
                                        m.head.share;
  for (const Side side : kSides) {
    const ArmPoints& arm = skeleton.arm(side);
    const LegPoints& leg = skeleton.leg(side);
    out += mix(arm.shoulder, arm.elbow, m.upper_arm.from_near_end) * m.upper_arm.share;
    out += mix(arm.elbow, arm.wrist, m.forearm.from_near_end) * m.forearm.share;
    out += mix(arm.wrist, arm.tip, m.hand.from_near_end) * m.hand.share;
    out += centres_of_leg(m, leg.hip, leg.knee, leg.ankle, leg.ball).whole *
           (m.thigh.share + m.shank.share + m.foot.share);
  }
  return out;
}

}  // namespace chalkleaf::figure
