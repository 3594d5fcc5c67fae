#include "figure/props.h"

#include <algorithm>
#include <cmath>

#include "figure/draw.h"

namespace chalkleaf::figure {
namespace {

constexpr double kEdgeWidth = 0.012;

bool on(const Pose& pose, Prop prop) {
  return std::any_of(pose.contacts.begin(), pose.contacts.end(),
                     [&](const Contact& c) { return c.on == prop; });
}

// All places where the body rests on it, left to right.
Footing place_on(const Pose& pose, const Solved& solved, Prop prop) {
  Footing out{1e9, -1e9};
  for (const Contact& contact : pose.contacts) {
    if (contact.on != prop) continue;
    for (const Side side : kSides) {
      if (contact.side && *contact.side != side) continue;
      const Footing one = footing(solved.body, solved.skeleton, contact.part, side);
      out = {std::min(out.left, one.left), std::max(out.right, one.right)};
    }
  }
  return out;
}

void thing(Scene& scene, Steps steps, Ink fill = Ink::kProp) {
  scene.add({steps, fill, std::nullopt, 0, 0});
  scene.add({std::move(steps), std::nullopt, Ink::kEdge, kEdgeWidth, 0});
}
void board(Scene& scene, const Box& box, double radius) {
  Steps steps;
  // The edge line is drawn inside, so that its outer side is where the thing ends.
  const double in = kEdgeWidth / 2;
  add_rounded(steps, {box.left + in, box.right - in, box.bottom + in, box.top - in}, radius);
  thing(scene, std::move(steps));
}
void line(Scene& scene, const std::vector<Spot>& spots, Ink ink, double width) {
  Steps steps;
  add_line(steps, spots);
  scene.add({std::move(steps), std::nullopt, ink, width, 0});
}

void legs(Scene& scene, double left, double right, double top) {
  for (const double x : {left, right}) {
    line(scene, {{x, 0.012}, {x, top}}, Ink::kEdge, 0.022);
  }
}

void draw_chair(const Pose& pose, const Solved& solved, Scene& scene) {
  const double height = surface_height(Prop::kChair);
  const Footing at = place_on(pose, solved, Prop::kChair);
  const double middle = (at.left + at.right) / 2;
  const bool sits = std::any_of(pose.contacts.begin(), pose.contacts.end(), [](const Contact& c) {
    return c.on == Prop::kChair && c.part == Part::kSeat;
  });
  // Who sits leans towards the back; hands come from the other side of it.
  const double body = solved.skeleton.trunk[5].at.x;
  const double back = sits ? -1 : body < middle ? 1 : -1;
  const double left = middle - 0.20;
  const double right = middle + 0.20;
  const double post = back < 0 ? left + 0.015 : right - 0.015;
  line(scene, {{post, height}, {post + back * 0.05, 0.86}}, Ink::kEdge, 0.022);
  board(scene, {post + back * 0.02 - 0.02, post + back * 0.04 + 0.03, 0.62, 0.86}, 0.02);
  legs(scene, left + 0.025, right - 0.025, height - 0.02);
  board(scene, {left, right, height - 0.045, height}, 0.015);
}

void draw_bench(const Pose& pose, const Solved& solved, Scene& scene) {
  const Footing at = place_on(pose, solved, Prop::kBench);
  const double top = surface_height(Prop::kBench);
  const double middle = (at.left + at.right) / 2;
  const double half = std::max(0.14, (at.right - at.left) / 2 + 0.04);
  legs(scene, middle - half + 0.04, middle + half - 0.04, top - 0.02);
  board(scene, {middle - half, middle + half, top - 0.06, top}, 0.012);
}

void draw_block(const Pose& pose, const Solved& solved, Prop prop, Scene& scene) {
  const Footing at = place_on(pose, solved, prop);
  const double top = surface_height(prop);
  const double middle = (at.left + at.right) / 2;
  const double half = std::max(prop == Prop::kBooks ? 0.12 : 0.22, (at.right - at.left) / 2 + 0.03);
  if (prop == Prop::kCrashMat) {
    const double wide = std::max(0.5, (at.right - at.left) / 2 + 0.12);
    return board(scene, {middle - wide, middle + wide, 0, top}, 0.05);
  }
  if (prop == Prop::kBox) {
    Steps sides;
    add_polygon(sides, {{middle - half * 1.15, kEdgeWidth / 2},
                        {middle + half * 1.15, kEdgeWidth / 2},
                        {middle + half, top - 0.06},
                        {middle - half, top - 0.06}});
    thing(scene, std::move(sides));
    return board(scene, {middle - half, middle + half, top - 0.09, top}, 0.03);
  }
  if (prop == Prop::kBlock) return board(scene, {middle - half, middle + half, 0, top}, 0.02);
  board(scene, {middle - half, middle + half, 0, top / 2}, 0.006);
  board(scene, {middle - half + 0.015, middle + half - 0.02, top / 2, top}, 0.006);
}

double highest(const Skeleton& s) {
  double out = std::max(s.head.y, 0.6);
  for (const ArmPoints& a : s.arms) out = std::max({out, a.shoulder.y, a.elbow.y, a.tip.y});
  for (const LegPoints& l : s.legs) {
    out = std::max({out, l.hip.y, l.knee.y, l.ankle.y, l.heel.y, l.toe.y});
  }
  return out;
}

// Behind who faces the viewer.
void draw_wall_behind(const Solved& solved, Scene& scene) {
  const Skeleton& s = solved.skeleton;
  Box box;
  for (const ArmPoints& a : s.arms) {
    box.take({a.tip.x, a.tip.y}, 0.1);
    box.take({a.elbow.x, a.elbow.y}, 0.1);
  }
  for (const LegPoints& l : s.legs) box.take({l.toe.x, l.toe.y}, 0.1);
  box.take({s.head.x, s.head.y}, 0.2);
  box.bottom = 0;
  Steps steps;
  add_rounded(steps, box, 0.01);
  scene.add({std::move(steps), Ink::kProp, std::nullopt, 0, 0});
}

/// The upright plane of a wall, and on which side of it the room is.
void draw_wall(const Pose& pose, const Solved& solved, Scene& scene) {
  const Skeleton& s = solved.skeleton;
  const Flesh f(solved.body);
  // The outermost place of every part that touches it, on the side away from the body's middle.
  const double middle = s.trunk[5].at.x;
  std::vector<double> touched;
  double side = 0;
  for (const Contact& contact : pose.contacts) {
    if (contact.on != Prop::kWall && contact.on != Prop::kDoorway) continue;
    const ArmPoints& arm = s.arm(contact.side.value_or(Side::kRight));
    const LegPoints& leg = s.leg(contact.side.value_or(Side::kRight));
    std::vector<std::pair<double, double>> discs;
    switch (contact.part) {
      case Part::kHands:
      case Part::kFingersBack:
        discs = {{arm.wrist.x, f.palm}, {arm.tip.x, f.fingers}};
        break;
      case Part::kForearms:
      case Part::kElbows:
        discs = {{arm.elbow.x, f.elbow}, {arm.wrist.x, f.palm}};
        break;
      case Part::kBack:
      case Part::kUpperBack:
      case Part::kSeat:
        // A back is behind.
        for (const TrunkSlice& slice : s.trunk) {
          discs.emplace_back(slice.at.x, reach_of(slice, {1, 0, 0}));
        }
        side = s.trunk[5].frame.forward.x > 0 ? -1 : 1;
        break;
      case Part::kFront:
        for (const TrunkSlice& slice : s.trunk) {
          discs.emplace_back(slice.at.x, reach_of(slice, {1, 0, 0}));
        }
        side = s.trunk[5].frame.forward.x > 0 ? 1 : -1;
        break;
      default:
        discs = {{leg.heel.x, f.heel}, {leg.ball.x, f.ball}, {leg.toe.x, f.toe}};
        break;
    }
    if (side == 0) side = discs.front().first >= middle ? 1 : -1;
    for (const auto& [x, radius] : discs) touched.push_back(x + side * radius);
  }
  if (touched.empty()) return;
  const double plane = side > 0 ? *std::max_element(touched.begin(), touched.end())
                                : *std::min_element(touched.begin(), touched.end());
  const double top = highest(s) + 0.12;
  const double depth = 0.07;
  Steps steps;
  add_rounded(steps,
              side > 0 ? Box{plane, plane + depth, 0, top} : Box{plane - depth, plane, 0, top},
              0.008);
  scene.add({std::move(steps), Ink::kProp, std::nullopt, 0, 0});
  const double edge = plane + side * kEdgeWidth / 2;
  line(scene, {{edge, 0.006}, {edge, top - 0.006}}, Ink::kEdge, kEdgeWidth);
}

void draw_bar(const Pose& pose, const Solved& solved, Scene& scene) {
  const Vec at = bar_place(pose, solved);
  if (is_frontal(pose)) {
    line(scene, {{at.x - 0.62, at.y}, {at.x + 0.62, at.y}}, Ink::kEdge, 0.04);
    return;
  }
  // End on: it runs through the fists, so it is drawn over them.
  Steps steps;
  add_circle(steps, {at.x, at.y}, 0.028);
  scene.add({steps, std::nullopt, Ink::kPaper, 0.02, 0});
  scene.add({std::move(steps), Ink::kEdge, std::nullopt, 0, 0});
}

// Under what bears first, the middle of both sides of it.
double middle_of_first(const Pose& pose, const Solved& solved) {
  if (pose.contacts.empty()) return solved.skeleton.trunk[0].at.x;
  const Contact& first = pose.contacts.front();
  Footing all{1e9, -1e9};
  for (const Side side : kSides) {
    if (first.side && *first.side != side) continue;
    const Footing one = footing(solved.body, solved.skeleton, first.part, side);
    all = {std::min(all.left, one.left), std::max(all.right, one.right)};
  }
  return (all.left + all.right) / 2;
}

}  // namespace

bool has_ground(const Pose& pose) { return !on(pose, Prop::kBar) && pose.view != View::kAbove; }

Vec bar_place(const Pose& pose, const Solved& solved) {
  const Skeleton& s = solved.skeleton;
  const Flesh f(solved.body);
  bool hips = false;
  for (const Contact& contact : pose.contacts) {
    if (contact.on != Prop::kBar) continue;
    hips = hips || contact.part == Part::kFront || contact.part == Part::kThighs;
  }
  if (hips) {
    const TrunkSlice& pelvis = s.trunk[0];
    return pelvis.at + pelvis.frame.forward * (pelvis.depth + 0.02) - pelvis.frame.up * 0.02;
  }
  return mix(grip_of(s, Side::kRight), grip_of(s, Side::kLeft), 0.5);
}

void draw_things_behind(const Pose& pose, const Solved& solved, Scene& scene) {
  if (on(pose, Prop::kWall) || on(pose, Prop::kDoorway)) {
    // Hands to the side touch a wall's edge; a back has it behind.
    const bool behind = std::none_of(pose.contacts.begin(), pose.contacts.end(), [](const auto& c) {
      return c.on == Prop::kWall && (c.part == Part::kHands || c.part == Part::kFingersBack);
    });
    is_frontal(pose) && behind ? draw_wall_behind(solved, scene) : draw_wall(pose, solved, scene);
  }
  if (on(pose, Prop::kChair)) draw_chair(pose, solved, scene);
  if (on(pose, Prop::kBench)) draw_bench(pose, solved, scene);
  for (const Prop prop : {Prop::kBlock, Prop::kBooks, Prop::kCrashMat, Prop::kBox}) {
    if (on(pose, prop)) draw_block(pose, solved, prop, scene);
  }
  if (on(pose, Prop::kBar) && is_frontal(pose)) draw_bar(pose, solved, scene);
}

void draw_things_held(const Pose& pose, const Solved& solved, Scene& scene) {
  if (on(pose, Prop::kBar) && !is_frontal(pose)) draw_bar(pose, solved, scene);
  if (!pose.holds) return;
  const Vec a = grip_of(solved.skeleton, Side::kRight);
  const Vec b = grip_of(solved.skeleton, Side::kLeft);
  const Spot right{a.x, a.y};
  const Spot left{b.x, b.y};
  const Spot middle = (right + left) * 0.5;
  const Spot way = left - right;
  const double apart = std::sqrt(way.x * way.x + way.y * way.y);
  const auto held = [&](const std::vector<Spot>& spots, double width) {
    line(scene, spots, Ink::kPaper, width + 0.018);
    line(scene, spots, Ink::kHeld, width);
  };
  switch (*pose.holds) {
    case Prop::kStick: {
      if (apart < 0.06) return held({middle, middle + Spot{0.001, 0}}, 0.045);
      const Spot more = way * (0.25 / apart);
      return held({right - more, left + more}, 0.026);
    }
    case Prop::kBand:
    case Prop::kTowel: {
      const double width = *pose.holds == Prop::kTowel ? 0.050 : 0.022;
      if (apart < 0.06) return held({middle, middle + Spot{0.001, 0}}, 0.062);
      const Spot more = *pose.holds == Prop::kTowel ? way * (0.05 / apart) : Spot{};
      return held({right - more, left + more}, width);
    }
    case Prop::kBall: {
      Steps steps;
      add_circle(steps, middle, 0.10);
      scene.add({steps, std::nullopt, Ink::kPaper, 0.02, 0});
      scene.add({std::move(steps), Ink::kHeld, std::nullopt, 0, 0});
      return;
    }
    case Prop::kRope: {
      // On its way under the feet.
      const double low = lowest(solved.body, solved.skeleton) - 0.06;
      if (apart > 0.2) {
        return held({right,
                     {right.x + (right.x > left.x ? 0.16 : -0.16), (right.y + low) / 2},
                     {middle.x, low},
                     {left.x + (right.x > left.x ? -0.16 : 0.16), (left.y + low) / 2},
                     left},
                    0.018);
      }
      return held({middle, {middle.x + 0.30, (middle.y + low) / 2}, {middle.x - 0.02, low}}, 0.018);
    }
    default:
      return;
  }
}

void draw_ground(const Pose& pose, const Solved& solved, double left, double right, Scene& scene) {
  if (!has_ground(pose)) return;
  const Prop ground = pose.ground.value_or(Prop::kFloor);
  const double half = kEdgeWidth / 2;
  switch (ground) {
    case Prop::kLine:
      line(scene, {{left, -half}, {right, -half}}, Ink::kEdge, kEdgeWidth);
      if (is_frontal(pose)) {
        const double at = middle_of_first(pose, solved);
        Steps tape;
        add_rounded(tape, {at - 0.03, at + 0.03, -0.02, 0}, 0.002);
        scene.add({std::move(tape), Ink::kAccent, std::nullopt, 0, 0});
      } else {
        line(scene, {{left + 0.06, -0.011}, {right - 0.06, -0.011}}, Ink::kAccent, 0.022);
      }
      return;
    case Prop::kBeam: {
      if (is_frontal(pose)) {
        // Ten centimetres wide, seen from its end.
        const double middle = middle_of_first(pose, solved);
        board(scene, {middle - 0.05, middle + 0.05, -0.13, 0}, 0.012);
        return;
      }
      board(scene, {left, right, -0.13, 0}, 0.012);
      return;
    }
    case Prop::kMat:
      board(scene, {left, right, -0.05, 0}, 0.02);
      return;
    default:
      line(scene, {{left, -half}, {right, -half}}, Ink::kEdge, kEdgeWidth);
      return;
  }
}

}  // namespace chalkleaf::figure
