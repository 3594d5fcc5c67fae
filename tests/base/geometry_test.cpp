#include "base/geometry.h"

#include <catch2/catch.hpp>

#include "base/paper.h"

using namespace chalkleaf;

TEST_CASE("a millimetre is 72/25.4 points") {
  CHECK(Length::mm(25.4) == Length::pt(72));
  CHECK(Length::mm(10).in_mm() == Approx(10.0).margin(0.0005));
  CHECK(Length::pt(10.5).in_millipoints() == 10500);
}

TEST_CASE("paper sizes are those of ISO 216") {
  // ISO 216: A4 210 × 297 mm, A5 148 × 210 mm; in points 595.2756 × 841.8898 and 419.5276 ×
  // 595.2756.
  const Size a4 = paper_size(Paper::kA4);
  const Size a5 = paper_size(Paper::kA5);
  CHECK(a4.width.in_pt() == Approx(595.2756).margin(0.001));
  CHECK(a4.height.in_pt() == Approx(841.8898).margin(0.001));
  CHECK(a5.width.in_pt() == Approx(419.5276).margin(0.001));
  CHECK(a5.height == a4.width);
}
