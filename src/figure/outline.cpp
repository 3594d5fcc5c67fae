// Outlines of the drawing: circles, limbs, smooth curves. Tested by tests/figure/outline_test.cpp.
#include <algorithm>
#include <cmath>

#include "base/angle.h"
#include "figure/scene.h"

namespace chalkleaf::figure {
namespace {

// The longest piece of a circle that is drawn as one curve. A third of a turn misses the circle by
// 0.15 % of its radius; half a turn by 1.8 %. Ends of limbs lie for the most part under the next
// limb, and 1.8 % of the thickest is a fiftieth of a millimetre where a figure is three centimetres
// tall: less than half a dot at 300 dpi.
constexpr double kThird = 120;  // degrees
constexpr double kLimbEnd = 200;

Spot polar(Spot centre, double radius, SineCosine direction) {
  return {centre.x + radius * direction.cosine, centre.y + radius * direction.sine};
}
Spot polar(Spot centre, double radius, Angle direction) {
  return polar(centre, radius, sine_cosine(direction));
}

// An arc from where the path is, anticlockwise, in pieces of at most so many degrees. The control
// points lie 4/3 tan(angle / 4) radii along the tangents.
void add_arc(Steps& steps, Spot centre, double radius, Angle from, Angle sweep, double most) {
  const int pieces = std::max(1, static_cast<int>(std::ceil(sweep.in_degrees() / most - 1e-9)));
  const Angle step = sweep * (1.0 / pieces);
  const SineCosine quarter = sine_cosine(step * 0.25);
  const double k = 4.0 / 3 * quarter.sine / quarter.cosine * radius;
  Angle at = from;
  SineCosine begin = sine_cosine(at);
  for (int i = 0; i < pieces; ++i) {
    at = at + step;
    const SineCosine end = sine_cosine(at);
    const Spot a = polar(centre, radius, begin);
    const Spot b = polar(centre, radius, end);
    steps.push_back({Step::Kind::kCurve,
                     {a.x - k * begin.sine, a.y + k * begin.cosine},
                     {b.x + k * end.sine, b.y - k * end.cosine},
                     b});
    begin = end;
  }
}

}  // namespace

void add_circle(Steps& steps, Spot centre, double radius) {
  // From the top, so that the circle of a mirrored figure is the mirrored circle.
  steps.push_back({Step::Kind::kMove, {centre.x, centre.y + radius}, {}, {}});
  add_arc(steps, centre, radius, Angle::degrees(90), Angle::degrees(360), kThird);
  steps.push_back({Step::Kind::kClose, {}, {}, {}});
}

void add_limb(Steps& steps, Spot from, double from_radius, Spot to, double to_radius) {
  const Spot way = to - from;
  const double distance = std::sqrt(way.x * way.x + way.y * way.y);
  if (distance <= std::fabs(from_radius - to_radius) + 1e-9) {
    return from_radius >= to_radius ? add_circle(steps, from, from_radius)
                                    : add_circle(steps, to, to_radius);
  }
  // Where the outer tangents touch: this far from the direction of the other circle.
  const double cosine_of = (from_radius - to_radius) / distance;
  const Angle apart = direction_of(cosine_of, std::sqrt(std::max(0.0, 1 - cosine_of * cosine_of)));
  const Angle along = direction_of(way.x, way.y);
  const Angle half = Angle::degrees(180);
  steps.push_back({Step::Kind::kMove, polar(from, from_radius, along + apart), {}, {}});
  add_arc(steps, from, from_radius, along + apart, (half - apart) * 2, kLimbEnd);
  steps.push_back({Step::Kind::kLine, polar(to, to_radius, along - apart), {}, {}});
  add_arc(steps, to, to_radius, along - apart, apart * 2, kLimbEnd);
  steps.push_back({Step::Kind::kClose, {}, {}, {}});
}

// Catmull & Rom 1974: the tangent at each spot is that of its neighbours' chord.
void add_smooth(Steps& steps, const std::vector<Spot>& spots) {
  const std::size_t n = spots.size();
  if (n < 3) return;
  steps.push_back({Step::Kind::kMove, spots[0], {}, {}});
  for (std::size_t i = 0; i < n; ++i) {
    const Spot before = spots[(i + n - 1) % n];
    const Spot a = spots[i];
    const Spot b = spots[(i + 1) % n];
    const Spot after = spots[(i + 2) % n];
    steps.push_back(
        {Step::Kind::kCurve, a + (b - before) * (1.0 / 6), b - (after - a) * (1.0 / 6), b});
  }
  steps.push_back({Step::Kind::kClose, {}, {}, {}});
}

void add_line(Steps& steps, const std::vector<Spot>& spots) {
  const std::size_t n = spots.size();
  if (n < 2) return;
  steps.push_back({Step::Kind::kMove, spots[0], {}, {}});
  for (std::size_t i = 0; i + 1 < n; ++i) {
    const Spot before = spots[i == 0 ? 0 : i - 1];
    const Spot a = spots[i];
    const Spot b = spots[i + 1];
    const Spot after = spots[std::min(i + 2, n - 1)];
    if (n == 2) {
      steps.push_back({Step::Kind::kLine, b, {}, {}});
    } else {
      steps.push_back(
          {Step::Kind::kCurve, a + (b - before) * (1.0 / 6), b - (after - a) * (1.0 / 6), b});
    }
  }
}

void add_polygon(Steps& steps, const std::vector<Spot>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    steps.push_back({i == 0 ? Step::Kind::kMove : Step::Kind::kLine, corners[i], {}, {}});
  }
  steps.push_back({Step::Kind::kClose, {}, {}, {}});
}

void add_rounded(Steps& steps, const Box& box, double radius) {
  const double r = std::min({radius, box.width() / 2, box.height() / 2});
  const Angle quarter = Angle::degrees(90);
  const auto corner = [&](Spot centre, double from) {
    const Spot begin = polar(centre, r, Angle::degrees(from));
    steps.push_back({from == -90 ? Step::Kind::kMove : Step::Kind::kLine, begin, {}, {}});
    add_arc(steps, centre, r, Angle::degrees(from), quarter, kThird);
  };
  corner({box.right - r, box.bottom + r}, -90);
  corner({box.right - r, box.top - r}, 0);
  corner({box.left + r, box.top - r}, 90);
  corner({box.left + r, box.bottom + r}, 180);
  steps.push_back({Step::Kind::kClose, {}, {}, {}});
}

void Box::take(const Box& other) {
  if (other.empty()) return;
  if (empty()) {
    *this = other;
    return;
  }
  left = std::min(left, other.left);
  right = std::max(right, other.right);
  bottom = std::min(bottom, other.bottom);
  top = std::max(top, other.top);
}

void Box::take(Spot spot, double around) {
  const double a = std::max(around, 1e-9);
  take(Box{spot.x - a, spot.x + a, spot.y - a, spot.y + a});
}

void Scene::add(Shape shape) {
  if (shape.steps.empty()) return;
  // Control points may lie a little outside the curve; the box is never too small.
  const double around = shape.line ? shape.width / 2 : 0;
  for (const Step& step : shape.steps) {
    if (step.kind == Step::Kind::kClose) continue;
    box.take(step.a, around);
    if (step.kind == Step::Kind::kCurve) {
      box.take(step.b, around);
      box.take(step.c, around);
    }
  }
  shapes.push_back(std::move(shape));
}

void Scene::move(double by_x) {
  for (Shape& shape : shapes) {
    for (Step& step : shape.steps) {
      step.a.x += by_x;
      step.b.x += by_x;
      step.c.x += by_x;
    }
  }
  for (double& frame : frames) frame += by_x;
  box.left += by_x;
  box.right += by_x;
}

}  // namespace chalkleaf::figure
