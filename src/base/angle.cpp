#include "base/angle.h"

#include <cmath>

namespace chalkleaf {
namespace {

constexpr double kPi = 3.14159265358979323846;

// Taylor's series about 0; the first term left out is below 1e-17 for |x| <= pi/4.
double sine_near_zero(double x) {
  const double s = x * x;
  double sum = 0;
  for (int n = 17; n >= 1; n -= 2) sum = 1 - s / ((n + 1) * (n + 2)) * sum;
  return x * sum;
}
double cosine_near_zero(double x) {
  const double s = x * x;
  double sum = 0;
  for (int n = 18; n >= 0; n -= 2) sum = 1 - s / ((n + 1) * (n + 2)) * sum;
  return sum;
}

// -180 to 180 degrees. std::remainder is exact, and slow; so is a difference of two numbers of
// which one is at most twice the other (Sterbenz 1974).
double in_one_turn(double degrees) {
  const double size = std::fabs(degrees);
  if (size <= 180) return degrees;
  if (size < 540) return degrees > 0 ? degrees - 360 : degrees + 360;
  return std::remainder(degrees, 360.0);
}

// Quarter turns and what is left, at most 45 degrees either way.
struct Reduced {
  int quarter = 0;
  double rest = 0;  // radians
};
Reduced reduced(double degrees) {
  const double in_turn = in_one_turn(degrees);
  const double quarters = std::round(in_turn / 90.0);
  return {(static_cast<int>(quarters) + 4) % 4, (in_turn - quarters * 90.0) * (kPi / 180.0)};
}

// The arc tangent of 0 to 1: halved twice, so that the series of Gregory runs out quickly.
double arc_tangent(double t) {
  for (int i = 0; i < 2; ++i) t = t / (1 + std::sqrt(1 + t * t));
  const double s = t * t;
  double sum = 0;
  for (int n = 27; n >= 1; n -= 2) sum = 1.0 / n - s * sum;
  return 4 * t * sum;
}

}  // namespace

double sine(Angle angle) {
  const Reduced r = reduced(angle.in_degrees());
  const double value = r.quarter % 2 == 0 ? sine_near_zero(r.rest) : cosine_near_zero(r.rest);
  return r.quarter < 2 ? value : -value;
}

double cosine(Angle angle) {
  const Reduced r = reduced(angle.in_degrees());
  const double value = r.quarter % 2 == 0 ? cosine_near_zero(r.rest) : sine_near_zero(r.rest);
  return r.quarter == 0 || r.quarter == 3 ? value : -value;
}

SineCosine sine_cosine(Angle angle) {
  const Reduced r = reduced(angle.in_degrees());
  const double s = sine_near_zero(r.rest);
  const double c = cosine_near_zero(r.rest);
  switch (r.quarter) {
    case 0:
      return {s, c};
    case 1:
      return {c, -s};
    case 2:
      return {-s, -c};
    default:
      return {-c, s};
  }
}

Angle direction_of(double x, double y) {
  const double ax = std::fabs(x);
  const double ay = std::fabs(y);
  if (ax == 0 && ay == 0) return {};
  double radians = ay <= ax ? arc_tangent(ay / ax) : kPi / 2 - arc_tangent(ax / ay);
  if (x < 0) radians = kPi - radians;
  if (y < 0) radians = -radians;
  return Angle::degrees(radians * (180.0 / kPi));
}

}  // namespace chalkleaf
