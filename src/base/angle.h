// Angles, and a sine and cosine that are the same on every machine.
//
// The C library picks another sine on a processor with fused multiply-add, and the last bit of a
// drawing must not depend on that: ours are plain sums and products of doubles (IEEE 754), to
// about 1e-15. Tested by tests/base/angle_test.cpp.
#pragma once

#include <compare>

namespace chalkleaf {

/// An angle. Whole turns are kept: 370 degrees is not 10.
class Angle {
 public:
  constexpr Angle() = default;
  static constexpr Angle degrees(double d) { return Angle(d); }
  constexpr double in_degrees() const { return degrees_; }

  constexpr auto operator<=>(const Angle&) const = default;
  constexpr Angle operator+(Angle o) const { return Angle(degrees_ + o.degrees_); }
  constexpr Angle operator-(Angle o) const { return Angle(degrees_ - o.degrees_); }
  constexpr Angle operator-() const { return Angle(-degrees_); }
  constexpr Angle operator*(double factor) const { return Angle(degrees_ * factor); }

 private:
  explicit constexpr Angle(double d) : degrees_(d) {}
  double degrees_ = 0;
};

double sine(Angle angle);
double cosine(Angle angle);
/// Both, for little more than one.
struct SineCosine {
  double sine = 0;
  double cosine = 1;
};
SineCosine sine_cosine(Angle angle);
/// The direction of (x, y) from the positive x axis, more than -180 to 180 degrees; 0 for (0, 0).
Angle direction_of(double x, double y);

}  // namespace chalkleaf
