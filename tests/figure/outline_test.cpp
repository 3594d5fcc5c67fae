// Outlines against the formulas of what they outline.
#include <catch2/catch.hpp>

#include "paths.h"

using namespace chalkleaf::figure;

namespace {

constexpr double kPi = 3.14159265358979323846;

double area_of(const Steps& steps) {
  const auto parts = flattened(steps, 256);
  REQUIRE(parts.size() == 1);
  return area(parts[0]);
}
double limb_area(double distance, double r, double s) {
  Steps steps;
  add_limb(steps, {0.3, -0.2}, r, {0.3 + distance * 0.6, -0.2 + distance * 0.8}, s);
  return area_of(steps);
}

}  // namespace

// Three cubic arcs with control points at 4/3 tan(30 degrees) leave a circle by 0.154 % of its
// radius at most, and only outwards (worked again here).
TEST_CASE("a circle of curves is round to 0.155 % of its radius") {
  Steps steps;
  add_circle(steps, {2, -1}, 0.5);
  double least = 1;
  double most = 0;
  const auto parts = flattened(steps, 1000);
  for (const Spot& spot : parts.at(0)) {
    const double off = std::hypot(spot.x - 2, spot.y + 1) / 0.5 - 1;
    least = std::min(least, off);
    most = std::max(most, off);
  }
  CHECK(least > -1e-12);
  CHECK(most < 0.00155);
  CHECK(most > 0.00154);
}

TEST_CASE("a circle's area is that of a circle, anticlockwise") {
  for (const double radius : {0.01, 0.5, 3.0}) {
    Steps steps;
    add_circle(steps, {-1, 4}, radius);
    CHECK(area_of(steps) == Approx(kPi * radius * radius).epsilon(0.002));
  }
}

// Two circles and what their outer tangents enclose: two trapezia and two sectors. The end of a
// limb is one curve, a little fuller than a half circle.
TEST_CASE("a limb's area is that of two circles and their tangents") {
  for (const double r : {0.02, 0.05}) {
    for (const double s : {0.01, 0.03, 0.05}) {
      for (const double distance : {0.06, 0.3}) {
        const double angle = std::acos((r - s) / distance);
        const double tangent = std::sqrt(distance * distance - (r - s) * (r - s));
        const double expected = (r + s) * tangent + (kPi - angle) * r * r + angle * s * s;
        INFO(r << " " << s << " " << distance);
        CHECK(limb_area(distance, r, s) == Approx(expected).epsilon(0.012));
        CHECK(limb_area(distance, r, s) > expected);
      }
    }
  }
}

TEST_CASE("a limb whose one end lies in the other is the larger circle") {
  CHECK(limb_area(0.01, 0.05, 0.02) == Approx(kPi * 0.05 * 0.05).epsilon(0.002));
  CHECK(limb_area(0.01, 0.02, 0.05) == Approx(kPi * 0.05 * 0.05).epsilon(0.002));
  CHECK(limb_area(0, 0.03, 0.03) == Approx(kPi * 0.03 * 0.03).epsilon(0.002));
}

TEST_CASE("a rounded box loses its corners and nothing else") {
  Steps steps;
  add_rounded(steps, {0, 2, 0, 1}, 0.1);
  CHECK(area_of(steps) == Approx(2 - (4 - kPi) * 0.01).epsilon(1e-5));
  Steps pill;
  add_rounded(pill, {0, 2, 0, 1}, 9);  // no rounder than half its height
  CHECK(area_of(pill) == Approx(1 + kPi * 0.25).epsilon(3e-4));
}

TEST_CASE("smooth curves go through their spots") {
  const std::vector<Spot> spots = {{0, 0}, {1, 0.2}, {1.5, 1}, {0.4, 1.3}};
  Steps closed;
  add_smooth(closed, spots);
  REQUIRE(closed.size() == spots.size() + 2);
  for (std::size_t i = 0; i < spots.size(); ++i) {
    CHECK(closed[i + 1].c.x == spots[(i + 1) % spots.size()].x);
    CHECK(closed[i + 1].c.y == spots[(i + 1) % spots.size()].y);
  }
  Steps open;
  add_line(open, spots);
  REQUIRE(open.size() == spots.size());
  CHECK(open.front().a.x == spots.front().x);
  CHECK(open.back().c.x == spots.back().x);
  // Spots on one line stay on it.
  Steps straight;
  add_line(straight, {{0, 0}, {1, 1}, {2, 2}, {4, 4}});
  const auto parts = flattened(straight);
  for (const Spot& spot : parts.at(0)) CHECK(spot.x == Approx(spot.y).margin(1e-12));
}

TEST_CASE("too few spots draw nothing") {
  Steps steps;
  add_line(steps, {});
  add_line(steps, {{1, 1}});
  add_smooth(steps, {{0, 0}, {1, 1}});
  CHECK(steps.empty());
}

TEST_CASE("a scene's box holds its paths and their lines' widths") {
  Scene scene;
  Steps line;
  add_line(line, {{0, 0}, {1, 0}});
  scene.add({line, std::nullopt, Ink::kEdge, 0.2, 0});
  CHECK(scene.box.bottom == Approx(-0.1));
  CHECK(scene.box.top == Approx(0.1));
  CHECK(scene.box.left == Approx(-0.1));
  CHECK(scene.box.right == Approx(1.1));
  scene.move(3);
  CHECK(scene.box.left == Approx(2.9));
  CHECK(scene.shapes[0].steps[0].a.x == 3);
}
