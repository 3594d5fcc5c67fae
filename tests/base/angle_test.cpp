#include "base/angle.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace chalkleaf;

namespace {
constexpr double kPi = 3.14159265358979323846;
}

TEST_CASE("sine and cosine agree with the C library's") {
  for (int i = -7300; i <= 7300; ++i) {
    const double degrees = i / 10.0;
    INFO(degrees);
    CHECK(sine(Angle::degrees(degrees)) == Approx(std::sin(degrees * kPi / 180)).margin(1e-13));
    CHECK(cosine(Angle::degrees(degrees)) == Approx(std::cos(degrees * kPi / 180)).margin(1e-13));
  }
}

TEST_CASE("quarter turns are exact") {
  CHECK(sine(Angle::degrees(180)) == 0);
  CHECK(sine(Angle::degrees(90)) == 1);
  CHECK(cosine(Angle::degrees(-90)) == 0);
  CHECK(cosine(Angle::degrees(540)) == -1);
}

TEST_CASE("a direction agrees with the C library's arc tangent") {
  for (int i = -359; i <= 360; ++i) {
    const double x = std::cos(i * kPi / 180) * 3;
    const double y = std::sin(i * kPi / 180) * 3;
    INFO(i);
    CHECK(direction_of(x, y).in_degrees() == Approx(std::atan2(y, x) * 180 / kPi).margin(1e-9));
  }
  CHECK(direction_of(0, 0).in_degrees() == 0);
}

TEST_CASE("both together are the same as each alone, to the last bit, however many turns") {
  for (int i = -40000; i <= 40000; i += 7) {
    const Angle angle = Angle::degrees(i / 32.0);
    INFO(angle.in_degrees());
    const SineCosine both = sine_cosine(angle);
    CHECK(both.sine == sine(angle));
    CHECK(both.cosine == cosine(angle));
    // Whole turns change nothing: i / 32 and 360 are exact.
    CHECK(sine(angle) == sine(Angle::degrees(std::remainder(i / 32.0, 360.0))));
    CHECK(cosine(angle) == cosine(Angle::degrees(std::remainder(i / 32.0, 360.0))));
  }
}
