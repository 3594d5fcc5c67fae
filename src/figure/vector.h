// Places and directions in space, and the frame that a segment of the body carries with it.
//
// Metres. Of a gymnast who stands upright and faces the right edge of the picture, x points
// forward, y up, and z to the right hand, which is towards the viewer.
#pragma once

#include <cmath>

#include "base/angle.h"

namespace chalkleaf::figure {

struct Vec {
  double x = 0;
  double y = 0;
  double z = 0;
  Vec operator+(const Vec& o) const { return {x + o.x, y + o.y, z + o.z}; }
  Vec operator-(const Vec& o) const { return {x - o.x, y - o.y, z - o.z}; }
  Vec operator-() const { return {-x, -y, -z}; }
  Vec operator*(double k) const { return {x * k, y * k, z * k}; }
  Vec& operator+=(const Vec& o) { return *this = *this + o; }
};

inline double dot(const Vec& a, const Vec& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vec cross(const Vec& a, const Vec& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Vec& a) { return std::sqrt(dot(a, a)); }
/// `a` with length 1, or `otherwise` when it has none.
inline Vec unit(const Vec& a, const Vec& otherwise) {
  const double l = length(a);
  return l > 1e-12 ? a * (1 / l) : otherwise;
}
inline Vec mix(const Vec& a, const Vec& b, double t) { return a * (1 - t) + b * t; }

/// Turns the first of two directions that stand upright on each other towards the second, and the
/// second away from it.
inline void turn(Vec& from, Vec& to, SineCosine by) {
  if (by.sine == 0 && by.cosine == 1) return;  // most joints are straight
  const Vec old = from;
  from = old * by.cosine + to * by.sine;
  to = to * by.cosine - old * by.sine;
}
inline void turn(Vec& from, Vec& to, Angle by) { turn(from, to, sine_cosine(by)); }

/// Three directions that stand upright on each other.
struct Frame {
  Vec forward{1, 0, 0};
  Vec up{0, 1, 0};
  Vec right{0, 0, 1};
};

}  // namespace chalkleaf::figure
