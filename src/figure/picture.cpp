#include "figure/picture.h"

#include <algorithm>
#include <cmath>

#include "figure/draw.h"
#include "figure/motion.h"
#include "figure/props.h"
#include "figure/words.h"

namespace chalkleaf::figure {
namespace {

constexpr double kGroundBeyond = 0.10;  // metres of ground at both ends
constexpr double kBetweenFrames = 0.22;

// From above one sees what was upright end on: height becomes nearness.
Solved seen(const Pose& pose, const Solved& solved) {
  Solved out = solved;
  if (pose.view != View::kAbove) return out;
  const auto tip = [](Vec& v) { v = {v.x, -v.z, v.y}; };
  Skeleton& s = out.skeleton;
  for (TrunkSlice& slice : s.trunk) {
    for (Vec* v : {&slice.at, &slice.frame.forward, &slice.frame.up, &slice.frame.right}) tip(*v);
  }
  for (Vec* v : {&s.neck, &s.head, &s.head_frame.forward, &s.head_frame.up, &s.head_frame.right}) {
    tip(*v);
  }
  for (ArmPoints& a : s.arms) {
    for (Vec* v : {&a.shoulder, &a.elbow, &a.wrist, &a.knuckles, &a.tip, &a.front}) tip(*v);
  }
  for (LegPoints& l : s.legs) {
    for (Vec* v : {&l.hip, &l.knee, &l.ankle, &l.heel, &l.ball, &l.toe, &l.front}) tip(*v);
  }
  return out;
}

void draw_pose(const Pose& pose, const Solved& as_solved, Scene& scene) {
  const Solved solved = seen(pose, as_solved);
  draw_things_behind(pose, solved, scene);
  draw_body(solved, Manner::kFull, scene);
  draw_things_held(pose, solved, scene);
}

double distance(Spot a, Spot b) {
  const Spot way = a - b;
  return std::sqrt(way.x * way.x + way.y * way.y);
}

// The part of a path between two shares of its length.
std::vector<Spot> part_of(const std::vector<Spot>& path, double from, double to) {
  double whole = 0;
  for (std::size_t i = 1; i < path.size(); ++i) whole += distance(path[i], path[i - 1]);
  const auto at = [&](double share) {
    double left = whole * share;
    for (std::size_t i = 1; i < path.size(); ++i) {
      const double step = distance(path[i], path[i - 1]);
      if (left <= step && step > 0) return path[i - 1] + (path[i] - path[i - 1]) * (left / step);
      left -= step;
    }
    return path.back();
  };
  std::vector<Spot> out;
  constexpr int kPieces = 8;
  for (int i = 0; i <= kPieces; ++i) out.push_back(at(from + (to - from) * i / kPieces));
  return out;
}

double width_of(Speed speed) {
  switch (speed) {
    case Speed::kFast:
      return 0.030;
    case Speed::kSlow:
      return 0.012;
    case Speed::kEven:
      break;
  }
  return 0.019;
}

// A line along the path with a head at its end.
void draw_arrow(const std::vector<Spot>& path, Speed speed, Scene& scene) {
  const double width = width_of(speed);
  const double head = 0.050 + width;
  double whole = 0;
  for (std::size_t i = 1; i < path.size(); ++i) whole += distance(path[i], path[i - 1]);
  if (whole < head * 1.2) return;
  const std::vector<Spot> shaft = part_of(path, 0, 1 - head * 0.8 / whole);
  const Spot tip = path.back();
  const Spot foot = part_of(path, 0, 1 - head / whole).back();
  const double size = distance(tip, foot);
  const Spot along = (tip - foot) * (1 / size);
  const Spot across{-along.y, along.x};
  Steps line;
  add_line(line, shaft);
  Steps wings;
  add_polygon(wings, {tip, foot + across * (head * 0.52), foot - across * (head * 0.52)});
  scene.add({line, std::nullopt, Ink::kPaper, width + 0.016, 0});
  scene.add({wings, std::nullopt, Ink::kPaper, 0.016, 0});
  const double dash = speed == Speed::kSlow ? 0.035 : 0;
  scene.add({std::move(line), std::nullopt, Ink::kAccent, width, dash});
  scene.add({std::move(wings), Ink::kAccent, std::nullopt, 0, 0});
}

// Beside the path, away from the body's middle, so that the arrow does not run through the limb.
std::vector<Spot> beside(const std::vector<Spot>& path, Spot middle, double by) {
  std::vector<Spot> out;
  for (const Spot& spot : path) {
    const Spot way = spot - middle;
    const double far = std::max(1e-6, distance(spot, middle));
    out.push_back(spot + way * (by / far));
  }
  return out;
}

void draw_movement(const Figure& figure, const std::vector<Shown>& shown, Scene& scene) {
  const Solved& first = shown.front().solved;
  const Solved& last = shown.back().solved;
  std::vector<Spot> path;
  for (std::size_t i = 0; i + 1 < shown.size(); ++i) {
    std::vector<Spot> more = path_between(figure.poses[i], shown[i].solved, figure.poses[i + 1],
                                          shown[i + 1].solved, figure.moves);
    path.insert(path.end(), more.begin() + (path.empty() ? 0 : 1), more.end());
  }
  if (path.size() < 2) return;
  const Vec a = mix(first.skeleton.trunk[3].at, last.skeleton.trunk[3].at, 0.5);
  const double k = last.body.stature;
  const auto speed = [&](std::size_t i) {
    return i < figure.tempo.size() ? figure.tempo[i] : Speed::kEven;
  };
  draw_arrow(part_of(beside(path, {a.x, a.y}, 0.055 * k), 0.10, 0.97), speed(0), scene);
  if (!figure.returns) return;
  std::vector<Spot> back = beside(path, {a.x, a.y}, 0.115 * k);
  std::reverse(back.begin(), back.end());
  draw_arrow(part_of(back, 0.10, 0.97), speed(1), scene);
}

Scene one_picture(const Figure& figure, const std::vector<Shown>& shown) {
  Scene scene;
  const Pose& pose = figure.poses.back();
  const Solved& last = shown.back().solved;
  Box body;
  if (shown.size() > 1) {
    const Solved first = seen(figure.poses.front(), shown.front().solved);
    draw_body(first, Manner::kGhost, scene);
    draw_things_held(figure.poses.front(), first, scene);
  }
  draw_pose(pose, last, scene);
  body = scene.box;
  if (shown.size() > 1) draw_movement(figure, shown, scene);
  scene.box.take(body);
  draw_ground(pose, last, body.left - kGroundBeyond, body.right + kGroundBeyond, scene);
  return scene;
}

Scene row(const Figure& figure, const std::vector<Shown>& shown) {
  Scene scene;
  double right = 0;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    Scene frame;
    draw_pose(figure.poses[i], shown[i].solved, frame);
    const double by = i == 0 ? 0 : right + kBetweenFrames - frame.box.left;
    frame.frames = {(frame.box.left + frame.box.right) / 2};
    const Box box = frame.box;
    draw_ground(figure.poses[i], shown[i].solved, box.left - kGroundBeyond * 0.6,
                box.right + kGroundBeyond * 0.6, frame);
    frame.move(by);
    right = frame.box.right;
    for (Shape& shape : frame.shapes) scene.shapes.push_back(std::move(shape));
    scene.frames.push_back(frame.frames.front());
    scene.box.take(frame.box);
  }
  return scene;
}

}  // namespace

std::vector<Shown> show(const Figure& figure, const Body& body) {
  std::vector<Shown> out;
  for (const Pose& pose : figure.poses) {
    Shown one;
    one.solved = solve(pose, body);
    const Vec bar = bar_place(pose, one.solved);
    one.out_of_reach = reach(pose, bar, one.solved);
    if (!out.empty() && figure.show == Show::kArrow) {
      align(figure.poses[out.size() - 1], out.back().solved, pose, one.solved);
    }
    out.push_back(std::move(one));
  }
  return out;
}

Scene picture(const Figure& figure, const std::vector<Shown>& shown) {
  Scene out = figure.show == Show::kRow && shown.size() > 1 ? row(figure, shown)
                                                            : one_picture(figure, shown);
  out.stature = shown.back().solved.body.stature;
  out.alternative = alternative_text(figure);
  return out;
}

Scene picture(const Figure& figure, const Body& body) {
  return picture(figure, show(figure, body));
}

}  // namespace chalkleaf::figure
