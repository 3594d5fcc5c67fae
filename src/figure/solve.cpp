#include "figure/solve.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace chalkleaf::figure {
namespace {

/// One thing to be met: a part at a height. `both` sides move alike.
struct Equation {
  const Contact* contact = nullptr;
  Side side = Side::kRight;
  bool both = false;
};

// Whether both limbs that a part belongs to do the same, so that they rest alike.
bool rests_alike(const Pose& pose, Part part) {
  const bool arm = part == Part::kHands || part == Part::kFingersBack || part == Part::kForearms ||
                   part == Part::kElbows;
  const Joints& j = pose.joints;
  if (pose.tilt.value_or(0) != 0) return false;
  if (arm && (j.get(Joint::kSpineSide) != 0 || j.get(Joint::kSpineTurn) != 0)) return false;
  constexpr auto kFirstOfLeg = static_cast<std::size_t>(Joint::kHip);
  const std::size_t first = arm ? kFirstLimbJoint : kFirstOfLeg;
  const std::size_t end = arm ? kFirstOfLeg : kJoints;
  for (std::size_t i = first; i < end; ++i) {
    const auto joint = static_cast<Joint>(i);
    if (j.get(joint, Side::kRight) != j.get(joint, Side::kLeft)) return false;
  }
  return true;
}

std::vector<Equation> equations_of(const Pose& pose) {
  std::vector<Equation> out;
  for (const Contact& contact : pose.contacts) {
    if (!bears_from_below(contact.on)) continue;
    if (!is_limb(contact.part) || contact.side) {
      out.push_back({&contact, contact.side.value_or(Side::kRight), false});
    } else if (rests_alike(pose, contact.part)) {
      out.push_back({&contact, Side::kRight, true});
    } else {
      for (const Side side : kSides) out.push_back({&contact, side, false});
    }
  }
  return out;
}

bool touches(const Pose& pose, Part part) {
  return std::any_of(pose.contacts.begin(), pose.contacts.end(),
                     [&](const Contact& c) { return c.part == part; });
}

// The joint that brings a part to its height without moving what else is settled.
JointName joint_for(const Pose& pose, const Equation& equation) {
  const std::optional<Side> side =
      equation.both ? std::nullopt : std::optional<Side>(equation.side);
  switch (equation.contact->part) {
    case Part::kInsteps:
    case Part::kPointedToes:
    case Part::kToes:
      return {touches(pose, Part::kKnees) ? Joint::kKnee : Joint::kHip, side};
    case Part::kFeet:
    case Part::kHeels:
    case Part::kKnees:
    case Part::kShins:
    case Part::kThighs:
    case Part::kSeat:
      return {Joint::kHip, side};
    case Part::kHands:
    case Part::kFingersBack:
    case Part::kForearms:
    case Part::kElbows:
      return {Joint::kShoulder, side};
    case Part::kHead:
      return {Joint::kNeck, std::nullopt};
    case Part::kBack:
    case Part::kUpperBack:
    case Part::kFront:
    case Part::kSideBody:
      return {Joint::kSpine, std::nullopt};
  }
  return {};
}

/// Finds where f crosses zero between a and b, which it is known to do (false position, the
/// Illinois rule; Dowell & Jarratt 1971).
double root_between(const std::function<double(double)>& f, double a, double fa, double b,
                    double fb) {
  constexpr double kEnough = 1e-7;  // metres
  double at = a;
  for (int i = 0; i < 60; ++i) {
    at = (a * fb - b * fa) / (fb - fa);
    const double value = f(at);
    if (std::fabs(value) < kEnough || std::fabs(b - a) < 1e-9) break;
    if ((value < 0) == (fb < 0)) {
      fa /= 2;
    } else {
      a = b;
      fa = fb;
    }
    b = at;
    fb = value;
  }
  return at;
}

class Solver {
 public:
  Solver(const Pose& pose, const Body& body) : pose_(pose) {
    out_.body = body;
    out_.joints = pose.joints;
    out_.stance = first_stance(pose);
    out_.modes = modes_of(pose);
  }

  Solved run() {
    const std::vector<Equation> equations = equations_of(pose_);
    std::size_t next = 1;
    if (equations.size() > 1 && !pose_.lean && !pose_.tilt) {
      turn_until(equations[0], equations[1]);
      next = 2;
    }
    settle(equations);
    for (std::size_t i = next; i < equations.size(); ++i)
      bend_until(equations, equations[i], i - next);
    settle(equations);
    note_missed(equations);
    return std::move(out_);
  }

 private:
  void stand() {
    out_.skeleton = pose_skeleton(out_.body, out_.joints, out_.stance, out_.modes, sines_);
  }
  double height_of(const Equation& e) const {
    return lowest(out_.body, out_.skeleton, e.contact->part, e.side) -
           surface_height(e.contact->on);
  }
  // Lifts the whole body until the first part rests where it should.
  void settle(const std::vector<Equation>& equations) {
    stand();
    const double up = equations.empty() ? pose_.height - lowest(out_.body, out_.skeleton)
                                        : -height_of(equations.front());
    out_.skeleton.move({0, up, 0});
  }

  void turn_to(double degrees) {
    (is_frontal(pose_) ? out_.stance.tilt : out_.stance.lean) = Angle::degrees(degrees);
    stand();
  }

  // Both parts at their heights: the turn for which their difference is nothing. There are several,
  // one of them with the body above the ground.
  void turn_until(const Equation& first, const Equation& second) {
    const double start = (is_frontal(pose_) ? out_.stance.tilt : out_.stance.lean).in_degrees();
    const auto difference = [&](double degrees) {
      turn_to(degrees);
      return height_of(second) - height_of(first);
    };
    constexpr double kStep = 12;
    constexpr int kSteps = 30;
    double best = start;
    double best_cost = 1e9;
    double before = difference(start - 180);
    for (int i = 1; i <= kSteps; ++i) {
      const double at = start - 180 + i * kStep;
      const double here = difference(at);
      if ((before < 0) != (here < 0)) {
        const double root = root_between(difference, at - kStep, before, at, here);
        turn_to(root);
        // What would stick into the ground counts far more than being turned far.
        const double under =
            std::max(0.0, -lowest(out_.body, out_.skeleton) + (lowest_contact(first)));
        const double cost = under * 1000 + std::fabs(root - start) / 360;
        if (cost < best_cost) {
          best = root;
          best_cost = cost;
        }
      }
      before = here;
    }
    turn_to(best);
  }
  double lowest_contact(const Equation& e) const {
    return height_of(e);  // the ground, seen from a body that is not yet lifted
  }

  // A joint of its own brings the part to its height: the angle nearest to the one written.
  void bend_until(const std::vector<Equation>& equations, const Equation& e, std::size_t which) {
    const JointName name = which < pose_.adjust.size() ? pose_.adjust[which] : joint_for(pose_, e);
    const Side first = name.side.value_or(Side::kRight);
    const double start = out_.joints.get(name.joint, first);
    const auto height = [&](double degrees) {
      if (name.side) {
        out_.joints.set(name.joint, *name.side, degrees);
      } else {
        out_.joints.set(name.joint, degrees);
      }
      settle(equations);
      return height_of(e);
    };
    constexpr double kStep = 6;
    constexpr int kSteps = 20;
    const double at_start = height(start);
    if (std::fabs(at_start) < 1e-6) return;
    double above = at_start;
    double below = at_start;
    double nearest = start;
    double nearest_by = std::fabs(at_start);
    const auto consider = [&](double degrees, double value) {
      if (std::fabs(value) < nearest_by) {
        nearest = degrees;
        nearest_by = std::fabs(value);
      }
    };
    for (int i = 1; i <= kSteps; ++i) {
      const double up = start + i * kStep;
      const double down = start - i * kStep;
      const double value_up = height(up);
      if ((value_up < 0) != (above < 0)) {
        height(root_between(height, up - kStep, above, up, value_up));
        return;
      }
      const double value_down = height(down);
      if ((value_down < 0) != (below < 0)) {
        height(root_between(height, down + kStep, below, down, value_down));
        return;
      }
      above = value_up;
      below = value_down;
      consider(up, value_up);
      consider(down, value_down);
    }
    height(nearest);
  }

  // A tenth of a millimetre: what was found is far nearer, what was not found is told.
  static constexpr double kMet = 1e-4;
  void note_missed(const std::vector<Equation>& equations) {
    for (const Equation& e : equations) {
      const double by = height_of(e);
      if (std::fabs(by) > kMet) out_.missed.push_back({*e.contact, by});
    }
  }

  const Pose& pose_;
  Solved out_;
  Sines sines_;
};

}  // namespace

double surface_height(Prop prop) {
  switch (prop) {
    case Prop::kBench:
      return 0.30;  // common practice, no source; so are the others
    case Prop::kBlock:
      return 0.20;
    case Prop::kChair:
      return 0.40;
    case Prop::kBooks:
      return 0.06;
    case Prop::kCrashMat:
      return 0.30;
    case Prop::kBox:
      return 0.70;
    default:
      return 0;
  }
}

bool bears_from_below(Prop prop) {
  return prop != Prop::kWall && prop != Prop::kBar && prop != Prop::kDoorway;
}

Stance first_stance(const Pose& pose) {
  Stance out;
  switch (pose.view) {
    case View::kSide:
    case View::kAbove:
      break;
    case View::kFront:
      out.yaw = Angle::degrees(90);
      break;
    case View::kBack:
      out.yaw = Angle::degrees(-90);
      break;
    case View::kQuarter:
      out.yaw = Angle::degrees(35);
      break;
  }
  out.yaw = out.yaw + Angle::degrees(pose.turn);
  if (!pose.contacts.empty()) {
    switch (pose.contacts.front().part) {
      case Part::kBack:
      case Part::kUpperBack:
        out.lean = Angle::degrees(-90);
        break;
      case Part::kFront:
      case Part::kForearms:
        out.lean = Angle::degrees(90);
        break;
      case Part::kHands:
      case Part::kFingersBack:
      case Part::kHead:
        // Seen from the front, who bears on the hands is turned in the picture instead.
        if (bears_from_below(pose.contacts.front().on) && !is_frontal(pose)) {
          out.lean = Angle::degrees(180);
        }
        break;
      case Part::kSideBody:
        out.tilt = Angle::degrees(90);
        break;
      default:
        break;
    }
  }
  if (pose.lean) out.lean = Angle::degrees(*pose.lean);
  if (pose.tilt) out.tilt = Angle::degrees(*pose.tilt);
  return out;
}

Modes modes_of(const Pose& pose) {
  Modes out;
  if (pose.holds) out.hand.fill(HandMode::kGrip);
  for (const Contact& contact : pose.contacts) {
    for (const Side side : kSides) {
      if (contact.side && *contact.side != side) continue;
      const auto i = static_cast<std::size_t>(side);
      const bool wall = contact.on == Prop::kWall || contact.on == Prop::kDoorway;
      if (contact.part == Part::kFeet && !wall) out.foot[i] = FootMode::kFlat;
      if (contact.part == Part::kToes && !wall) out.foot[i] = FootMode::kOnToes;
      if (contact.part == Part::kHands) {
        out.hand[i] = wall                       ? HandMode::kFlatUp
                      : contact.on == Prop::kBar ? HandMode::kGrip
                                                 : HandMode::kFlat;
      }
      if (contact.part == Part::kForearms) out.hand[i] = HandMode::kFlatOn;
      if (contact.part == Part::kFingersBack) out.hand[i] = HandMode::kFlatBack;
    }
  }
  return out;
}

Solved solve(const Pose& pose, const Body& body) { return Solver(pose, body).run(); }

}  // namespace chalkleaf::figure
