#include "page/shapes.h"

#include <algorithm>

namespace chalkleaf::page {
namespace {

// A quarter circle as one Bézier curve: control points at this part of the radius keep the error
// below 0.03 % of it (4/3 · (√2 − 1)).
constexpr double kQuarterCircle = 0.5522847498;

PathStep move_to(Point p) { return {PathStep::Kind::kMove, p, {}, {}}; }
PathStep line_to(Point p) { return {PathStep::Kind::kLine, p, {}, {}}; }
PathStep curve_to(Point a, Point b, Point c) { return {PathStep::Kind::kCurve, a, b, c}; }
PathStep close() { return {PathStep::Kind::kClose, {}, {}, {}}; }

}  // namespace

std::vector<PathStep> rounded_rectangle(const Rect& r, Length radius) {
  radius = std::min({radius, r.width / 2, r.height / 2});
  const Length right = r.right();
  const Length bottom = r.bottom();
  if (radius <= Length()) {
    return {move_to({r.x, r.y}), line_to({right, r.y}), line_to({right, bottom}),
            line_to({r.x, bottom}), close()};
  }
  const Length k = radius - radius.scaled(kQuarterCircle);  // from the corner to the control point
  return {move_to({r.x + radius, r.y}),
          line_to({right - radius, r.y}),
          curve_to({right - k, r.y}, {right, r.y + k}, {right, r.y + radius}),
          line_to({right, bottom - radius}),
          curve_to({right, bottom - k}, {right - k, bottom}, {right - radius, bottom}),
          line_to({r.x + radius, bottom}),
          curve_to({r.x + k, bottom}, {r.x, bottom - k}, {r.x, bottom - radius}),
          line_to({r.x, r.y + radius}),
          curve_to({r.x, r.y + k}, {r.x + k, r.y}, {r.x + radius, r.y}),
          close()};
}

std::vector<PathStep> straight_line(Point from, Point to) { return {move_to(from), line_to(to)}; }

std::vector<PathStep> circle(Point centre, Length radius) {
  return rounded_rectangle({centre.x - radius, centre.y - radius, radius * 2, radius * 2}, radius);
}

std::vector<PathStep> polygon(const std::vector<Point>& corners) {
  std::vector<PathStep> out;
  for (const Point& corner : corners)
    out.push_back(out.empty() ? move_to(corner) : line_to(corner));
  if (!out.empty()) out.push_back(close());
  return out;
}

}  // namespace chalkleaf::page
