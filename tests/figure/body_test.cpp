#include "figure/body.h"

#include <catch2/catch.hpp>

#include "figure/skeleton.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

// Drillis & Contini 1966, after Winter 2009, fig. 4.1 (secondary copy); lengths at H = 1300 mm are
// the fractions times H.
TEST_CASE("an adult's segments are the published fractions of stature") {
  const Body body = Body::adult(1.3);
  CHECK(body.upper_arm == Approx(0.2418).epsilon(1e-6));
  CHECK(body.forearm == Approx(0.1898).epsilon(1e-6));
  CHECK(body.thigh() == Approx(0.3185).epsilon(1e-6));
  CHECK(body.shank() == Approx(0.3198).epsilon(1e-6));
  CHECK(body.trunk() == Approx(0.3744).epsilon(1e-6));
}

// Dempster after Winter, table 4.1, with the segment heights above.
TEST_CASE("the centre of mass of a standing body lies where the table puts it") {
  const Body body = Body::adult(1);
  const auto height = [&](double shoulder) {
    Joints joints;
    joints.set(Joint::kShoulder, shoulder);
    const Skeleton s = pose_skeleton(body, joints, {}, {});
    return centre_of_mass(body, s).y - (s.leg(Side::kRight).ankle.y - body.ankle);
  };
  // The feet hang on their own outline here, so the last digits are not the table's alone.
  CHECK(height(0) == Approx(0.577399).margin(0.0005));
  CHECK(height(180) == Approx(0.611683).margin(0.0005));
}

// Jensen 1986 and 1989.
TEST_CASE("a child's shares sum to one") {
  for (int tenths = 50; tenths <= 170; ++tenths) {
    const Masses m = child_masses(tenths / 10.0);
    const double sum = m.head.share + m.trunk.share +
                       2 * (m.upper_arm.share + m.forearm.share + m.hand.share + m.thigh.share +
                            m.shank.share + m.foot.share);
    CHECK(sum == Approx(1).epsilon(1e-12));
  }
}

// CDC 2000, stature-for-age, medians of boys and girls.
TEST_CASE("a child is as tall as the median of its age") {
  CHECK(Body::of_age(9).stature == Approx((1.337345 + 1.331304) / 2).epsilon(1e-9));
  CHECK(Body::of_age(4).stature == Body::of_age(5).stature);
  CHECK(Body::of_age(9).head / Body::of_age(9).stature > 0.130);
}
