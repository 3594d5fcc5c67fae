// Lengths on paper, and the points and boxes made of them.
//
// A Length is a whole number of thousandths of a point (1 pt = 1/72 in), the precision the PDF is
// written with: sums are exact, equal on every machine, and what is laid out is what is printed. y
// runs down the page; it is flipped once, in `pdf`. Tested by tests/base/geometry_test.cpp.
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace chalkleaf {

/// A distance on paper in thousandths of a point.
class Length {
 public:
  constexpr Length() = default;
  static constexpr Length millipoints(std::int64_t n) { return Length(n); }
  static Length pt(double points) { return Length(std::llround(points * 1000.0)); }
  static Length mm(double millimetres) {
    return Length(std::llround(millimetres * 72'000.0 / 25.4));
  }

  constexpr std::int64_t in_millipoints() const { return units_; }
  constexpr double in_pt() const { return static_cast<double>(units_) / 1000.0; }
  constexpr double in_mm() const { return static_cast<double>(units_) * 25.4 / 72'000.0; }

  constexpr auto operator<=>(const Length&) const = default;
  constexpr Length operator+(Length o) const { return Length(units_ + o.units_); }
  constexpr Length operator-(Length o) const { return Length(units_ - o.units_); }
  constexpr Length operator-() const { return Length(-units_); }
  constexpr Length operator*(std::int64_t n) const { return Length(units_ * n); }
  constexpr Length operator/(std::int64_t n) const { return Length(units_ / n); }
  Length scaled(double factor) const {
    return Length(std::llround(static_cast<double>(units_) * factor));
  }
  constexpr Length& operator+=(Length o) { return *this = *this + o; }
  constexpr Length& operator-=(Length o) { return *this = *this - o; }

 private:
  explicit constexpr Length(std::int64_t units) : units_(units) {}
  std::int64_t units_ = 0;
};

/// A place on a page, from its top left corner, y down.
struct Point {
  Length x;
  Length y;
  bool operator==(const Point&) const = default;
};

struct Size {
  Length width;
  Length height;
  bool operator==(const Size&) const = default;
};

/// A box: its top left corner and its size.
struct Rect {
  Length x;
  Length y;
  Length width;
  Length height;
  Length right() const { return x + width; }
  Length bottom() const { return y + height; }
  bool operator==(const Rect&) const = default;
};

/// Space inside the four edges of a box.
struct Insets {
  Length top;
  Length right;
  Length bottom;
  Length left;
  static Insets all(Length l) { return {l, l, l, l}; }
};

}  // namespace chalkleaf
