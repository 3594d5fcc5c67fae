#include "figure/motion.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "figure/props.h"

namespace chalkleaf::figure {
namespace {

struct Traveller {
  std::string name;
  std::function<Vec(const Skeleton&)> at;
};

// Beyond the joint, on in the limb's direction: a foot that comes down flat does not bend its path.
Vec end_of(const Vec& before, const Vec& joint) {
  constexpr double kBeyond = 0.09;  // metres
  return joint + unit(joint - before, {}) * kBeyond;
}

const std::vector<Traveller>& travellers() {
  static const std::vector<Traveller> all = {
      {"near foot", [](const Skeleton& s) { return end_of(s.legs[0].knee, s.legs[0].ankle); }},
      {"far foot", [](const Skeleton& s) { return end_of(s.legs[1].knee, s.legs[1].ankle); }},
      {"near hand", [](const Skeleton& s) { return end_of(s.arms[0].elbow, s.arms[0].wrist); }},
      {"far hand", [](const Skeleton& s) { return end_of(s.arms[1].elbow, s.arms[1].wrist); }},
      {"near knee", [](const Skeleton& s) { return s.legs[0].knee; }},
      {"far knee", [](const Skeleton& s) { return s.legs[1].knee; }},
      {"head", [](const Skeleton& s) { return s.head; }},
      {"hips", [](const Skeleton& s) { return s.trunk[0].at; }},
      {"chest", [](const Skeleton& s) { return s.trunk[8].at; }}};
  return all;
}

// The first part that rests on the same thing in both poses.
std::optional<Contact> shared(const Pose& a, const Pose& b) {
  for (const Contact& one : a.contacts) {
    for (const Contact& other : b.contacts) {
      if (one.part == other.part && one.side == other.side && one.on == other.on) return one;
    }
  }
  return std::nullopt;
}

double distance_of(Spot a, Spot b) {
  const Spot way = a - b;
  return std::sqrt(way.x * way.x + way.y * way.y);
}

double middle_of(const Solved& solved, const Contact& contact) {
  const Footing f =
      footing(solved.body, solved.skeleton, contact.part, contact.side.value_or(Side::kRight));
  return (f.left + f.right) / 2;
}

}  // namespace

void align(const Pose& earlier_pose, const Solved& earlier, const Pose& later_pose, Solved& later) {
  const auto same = shared(earlier_pose, later_pose);
  const Vec hips = earlier.skeleton.trunk[0].at - later.skeleton.trunk[0].at;
  if (same && same->on == Prop::kBar) {
    // A bar stays where it is, in height too.
    return later.skeleton.move(bar_place(earlier_pose, earlier) - bar_place(later_pose, later));
  }
  // What rests on a seat or a back covers more ground in one pose than in another.
  const bool exact = same && is_limb(same->part);
  later.skeleton.move({exact ? middle_of(earlier, *same) - middle_of(later, *same) : hips.x, 0, 0});
}

Solved between(const Pose& pose_a, const Solved& a, const Pose& pose_b, const Solved& b, double t) {
  Solved out = t < 0.5 ? a : b;
  out.joints = Joints::between(a.joints, b.joints, t);
  const auto mixed = [&](Angle x, Angle y) { return x * (1 - t) + y * t; };
  out.stance = {mixed(a.stance.lean, b.stance.lean), mixed(a.stance.tilt, b.stance.tilt),
                mixed(a.stance.yaw, b.stance.yaw)};
  out.skeleton = pose_skeleton(out.body, out.joints, out.stance, out.modes);
  const Vec wanted = mix(a.skeleton.trunk[0].at, b.skeleton.trunk[0].at, t);
  out.skeleton.move(wanted - out.skeleton.trunk[0].at);
  // What stays on the ground stays there on the way.
  if (const auto same = shared(pose_a, pose_b)) {
    const Side side = same->side.value_or(Side::kRight);
    const double up =
        bears_from_below(same->on)
            ? surface_height(same->on) - lowest(out.body, out.skeleton, same->part, side)
            : 0;
    // What lies on a back rolls over it; a hand or a foot stays where it is.
    const double along = is_limb(same->part) ? middle_of(a, *same) - middle_of(out, *same) : 0;
    out.skeleton.move({along, up, 0});
  }
  return out;
}

std::vector<Spot> path_between(const Pose& pose_a, const Solved& a, const Pose& pose_b,
                               const Solved& b, std::string_view part) {
  constexpr int kSteps = 8;
  std::vector<Skeleton> way = {a.skeleton};
  for (int i = 1; i < kSteps; ++i) {
    way.push_back(between(pose_a, a, pose_b, b, static_cast<double>(i) / kSteps).skeleton);
  }
  way.push_back(b.skeleton);
  if (pose_b.view == View::kAbove) {
    for (Skeleton& s : way) s.tip_to_viewer();
  }
  std::vector<Spot> best;
  double farthest = -1;
  for (const Traveller& one : travellers()) {
    std::string_view name = one.name;
    const bool asked = name == part || (take_side(name) && name == part);
    if (!part.empty() && !asked) continue;
    std::vector<Spot> path;
    double travelled = 0;
    for (const Skeleton& s : way) {
      const Vec at = one.at(s);
      if (!path.empty()) travelled += distance_of({at.x, at.y}, path.back());
      path.push_back({at.x, at.y});
    }
    if (travelled > farthest + 1e-6) {
      farthest = travelled;
      best = std::move(path);
    }
  }
  return best;
}

const std::vector<std::string>& travelling_parts() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> out;
    for (const Traveller& one : travellers()) {
      std::string_view name = one.name;
      if (take_side(name)) {
        out.emplace_back(name);
      }
      out.push_back(one.name);
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }();
  return names;
}

}  // namespace chalkleaf::figure
