#include "figure/arrows.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "figure/draw.h"
#include "figure/motion.h"
#include "figure/props.h"

namespace chalkleaf::figure {
namespace {

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

double length_of(const std::vector<Spot>& path) {
  double whole = 0;
  for (std::size_t i = 1; i < path.size(); ++i) whole += distance(path[i], path[i - 1]);
  return whole;
}

// Beside the path, away from the body's middle, so that the arrow does not run through the limb; a
// short one as a whole, or it would be bent.
std::vector<Spot> beside(const std::vector<Spot>& path, Spot middle, double by) {
  constexpr double kShort = 0.45;  // metres
  const bool is_short = length_of(path) < kShort;
  const auto away = [&](Spot from) {
    const Spot way = from - middle;
    return way * (by / std::max(1e-6, distance(from, middle)));
  };
  const Spot together = away(path[path.size() / 2]);
  std::vector<Spot> out;
  for (const Spot& spot : path) out.push_back(spot + (is_short ? together : away(spot)));
  return out;
}

// Part of an ellipse, from one direction on (degrees, anticlockwise when `sweep` is above 0).
std::vector<Spot> arc(Spot centre, double wide, double high, double from, double sweep) {
  constexpr int kPieces = 12;
  std::vector<Spot> out;
  for (int i = 0; i <= kPieces; ++i) {
    const Angle at = Angle::degrees(from + sweep * i / kPieces);
    out.push_back({centre.x + wide * cosine(at), centre.y + high * sine(at)});
  }
  return out;
}

/// What can go round: its middle, and the ring's half width and height (of stature).
struct Ring {
  std::string name;
  std::function<Vec(const Skeleton&)> at;
  double wide;
  double high;
};
const std::vector<Ring>& rings() {
  const auto foot = [](const LegPoints& leg) { return mix(leg.ankle, leg.ball, 0.5); };
  static const std::vector<Ring> all = {
      {"near hand", [](const Skeleton& s) { return s.arms[0].knuckles; }, 0.085, 0.085},
      {"far hand", [](const Skeleton& s) { return s.arms[1].knuckles; }, 0.085, 0.085},
      {"near arm", [](const Skeleton& s) { return s.arms[0].shoulder; }, 0.48, 0.48},
      {"far arm", [](const Skeleton& s) { return s.arms[1].shoulder; }, 0.48, 0.48},
      {"near foot", [foot](const Skeleton& s) { return foot(s.legs[0]); }, 0.10, 0.10},
      {"far foot", [foot](const Skeleton& s) { return foot(s.legs[1]); }, 0.10, 0.10},
      {"near knee", [](const Skeleton& s) { return s.legs[0].knee; }, 0.09, 0.09},
      {"far knee", [](const Skeleton& s) { return s.legs[1].knee; }, 0.09, 0.09},
      {"near shoulder", [](const Skeleton& s) { return s.arms[0].shoulder; }, 0.075, 0.075},
      {"far shoulder", [](const Skeleton& s) { return s.arms[1].shoulder; }, 0.075, 0.075},
      {"hips", [](const Skeleton& s) { return s.trunk[1].at; }, 0.17, 0.045},
      {"body", [](const Skeleton& s) { return s.trunk[5].at; }, 0.15, 0.15}};
  return all;
}

// Arrows stay on the side of the ground where the body is.
std::vector<Spot> above_ground(std::vector<Spot> path, bool ground) {
  constexpr double kAir = 0.03;
  if (!ground) return path;
  double lowest = path.front().y;
  for (const Spot& spot : path) lowest = std::min(lowest, spot.y);
  const double up = std::max(0.0, kAir - lowest);
  for (Spot& spot : path) spot.y += up;
  return path;
}

// One part's way through all key poses, and back where the movement returns.
void draw_way(const Figure& figure, const std::vector<Shown>& shown, const std::string& part,
              Scene& scene) {
  const Solved& first = shown.front().solved;
  const Solved& last = shown.back().solved;
  std::vector<Spot> path;
  for (std::size_t i = 0; i + 1 < shown.size(); ++i) {
    const std::vector<Spot> more = path_between(figure.poses[i], shown[i].solved,
                                                figure.poses[i + 1], shown[i + 1].solved, part);
    path.insert(path.end(), more.begin() + (path.empty() ? 0 : 1), more.end());
  }
  if (path.size() < 2) return;
  const Vec a = mix(first.skeleton.trunk[3].at, last.skeleton.trunk[3].at, 0.5);
  const double k = last.body.stature;
  const bool ground = has_ground(figure.poses.back());
  const auto speed = [&](std::size_t i) {
    return i < figure.tempo.size() ? figure.tempo[i] : Speed::kEven;
  };
  const auto way = [&](double away) {
    return above_ground(beside(path, {a.x, a.y}, away * k), ground);
  };
  draw_arrow(part_of(way(0.055), 0.10, 0.97), speed(0), scene);
  if (!figure.returns) return;
  std::vector<Spot> back = way(0.115);
  std::reverse(back.begin(), back.end());
  draw_arrow(part_of(back, 0.10, 0.97), speed(1), scene);
}

}  // namespace

void draw_movement(const Figure& figure, const std::vector<Shown>& shown, Scene& scene) {
  const std::vector<std::string> farthest = {""};
  for (const std::string& part : figure.moves.empty() ? farthest : figure.moves) {
    draw_way(figure, shown, part, scene);
  }
}

void draw_turning(const Figure& figure, const Solved& solved, Scene& scene) {
  const Skeleton& s = solved.skeleton;
  const double k = solved.body.stature;
  const Speed speed = figure.tempo.empty() ? Speed::kEven : figure.tempo.front();
  for (const std::string& part : figure.circles) {
    for (const Ring& ring : rings()) {
      if (ring.name != part && !ring.name.ends_with(" " + part)) continue;
      const Vec at = ring.at(s);
      draw_arrow(arc({at.x, at.y}, ring.wide * k, ring.high * k, 130, -290), speed, scene);
      break;  // `hand` is the near one
    }
  }
  if (figure.turns.empty()) return;
  // In front of the body, as seen from a little above.
  const bool head = figure.turns == "head";
  const bool chest = figure.turns == "chest";
  const Vec at = head    ? s.head + s.head_frame.up * (0.095 * k)
                 : chest ? s.trunk[8].at
                         : s.trunk[2].at;
  const double wide = (head ? 0.10 : chest ? 0.19 : 0.22) * k;
  draw_arrow(arc({at.x, at.y}, wide, wide * (head ? 0.32 : 0.28), 190, 165), speed, scene);
}

const std::vector<std::string>& circling_parts() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> out;
    for (const Ring& ring : rings()) {
      std::string_view name = ring.name;
      if (take_side(name)) out.emplace_back(name);
      out.push_back(ring.name);
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }();
  return names;
}

const std::vector<std::string>& turning_parts() {
  static const std::vector<std::string> names = {"head", "chest", "body"};
  return names;
}

}  // namespace chalkleaf::figure
