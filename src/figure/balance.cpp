#include "figure/balance.h"

#include <algorithm>
#include <cmath>

namespace chalkleaf::figure {
namespace {

constexpr double kSlack = 0.005;  // metres: what rounding to centimetres does not show

bool holds_on(const Pose& pose) {
  return std::any_of(
             pose.contacts.begin(), pose.contacts.end(),
             [](const Contact& c) { return c.on == Prop::kBar || c.on == Prop::kDoorway; }) ||
         std::any_of(pose.reaches.begin(), pose.reaches.end(),
                     [](const Reach& r) { return r.target == Target::kBar; });
}

// On which side of the body the wall stands: 1 right, -1 left.
double side_of_wall(const Solved& solved, const Contact& contact) {
  const Skeleton& s = solved.skeleton;
  const TrunkSlice& middle = s.trunk[kSlices / 2];
  const Side side = contact.side.value_or(Side::kRight);
  const double front = middle.frame.forward.x >= 0 ? 1 : -1;
  switch (contact.part) {
    case Part::kBack:
    case Part::kUpperBack:
    case Part::kSeat:
      return -front;
    case Part::kFront:
      return front;
    case Part::kHead:
      return s.head.x >= middle.at.x ? 1 : -1;
    case Part::kHands:
    case Part::kFingersBack:
    case Part::kForearms:
    case Part::kElbows:
      return s.arm(side).wrist.x >= middle.at.x ? 1 : -1;
    default:
      return s.leg(side).ankle.x >= middle.at.x ? 1 : -1;
  }
}

// The way a fall to the right (1) or the left (-1) of the picture is called by who falls.
std::string direction_of_fall(const Solved& solved, double to) {
  const Frame& pelvis = solved.skeleton.trunk.front().frame;
  const double forward = pelvis.forward.x * to;
  const double right = pelvis.right.x * to;
  const double up = pelvis.up.x * to;
  const double most = std::max({std::fabs(forward), std::fabs(right), std::fabs(up)});
  if (most == std::fabs(up)) return up > 0 ? "towards the head" : "towards the feet";
  if (most == std::fabs(right)) return right > 0 ? "to the right" : "to the left";
  if (pelvis.up.y < -0.5) return forward > 0 ? "over the front" : "over the back";
  return forward > 0 ? "forwards" : "backwards";
}

}  // namespace

std::optional<Footing> base_of_support(const Pose& pose, const Solved& solved) {
  std::optional<Footing> out;
  for (const Contact& contact : pose.contacts) {
    if (!bears_from_below(contact.on)) continue;
    for (const Side side : kSides) {
      if (contact.side && *contact.side != side) continue;
      const Footing one = footing(solved.body, solved.skeleton, contact.part, side);
      out = out ? Footing{std::min(out->left, one.left), std::max(out->right, one.right)} : one;
    }
  }
  return out;
}

std::optional<Fall> fall_of(const Pose& pose, const Solved& solved) {
  const auto base = base_of_support(pose, solved);
  if (!base || holds_on(pose)) return std::nullopt;
  const double x = centre_of_mass(solved.body, solved.skeleton).x;
  const double over = x > base->right ? x - base->right : base->left - x;
  if (over <= kSlack) return std::nullopt;
  const double to = x > base->right ? 1 : -1;
  for (const Contact& contact : pose.contacts) {
    if (contact.on == Prop::kWall && side_of_wall(solved, contact) == to) return std::nullopt;
  }
  return Fall{over, direction_of_fall(solved, to)};
}

}  // namespace chalkleaf::figure
