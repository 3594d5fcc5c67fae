// Bodies against the published tables: lengths, masses, centres, statures.
#include "figure/body.h"

#include <catch2/catch.hpp>

#include "figure/flesh.h"
#include "figure/skeleton.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

// The height of the whole body's centre of mass over the floor, standing.
double standing_centre(const Body& body, double shoulder) {
  Joints joints;
  joints.set(Joint::kShoulder, shoulder);
  const Skeleton s = pose_skeleton(body, joints, {}, {});
  return centre_of_mass(body, s).y - (s.leg(Side::kRight).ankle.y - body.ankle);
}

double sum_of(const Masses& m) {
  return m.head.share + m.trunk.share +
         2 * (m.upper_arm.share + m.forearm.share + m.hand.share + m.thigh.share + m.shank.share +
              m.foot.share);
}

}  // namespace

// Drillis & Contini 1966, after Winter 2009, fig. 4.1 (secondary copy); lengths at H = 1300 mm are
// the fractions times H.
TEST_CASE("an adult's segments are the published fractions of stature") {
  const Body body = Body::adult(1.3);
  CHECK(body.upper_arm == Approx(0.2418).epsilon(1e-12));
  CHECK(body.forearm == Approx(0.1898).epsilon(1e-12));
  CHECK(body.thigh() == Approx(0.3185).epsilon(1e-12));
  CHECK(body.shank() == Approx(0.3198).epsilon(1e-12));
  CHECK(body.trunk() == Approx(0.3744).epsilon(1e-12));
  const Body one = Body::adult(1);
  CHECK(one.ankle == 0.039);
  CHECK(one.knee == 0.285);
  CHECK(one.hip == 0.530);
  CHECK(one.shoulder == 0.818);
  CHECK(one.chin == 0.870);
  CHECK(one.eye() == Approx(0.936).epsilon(1e-12));
  CHECK(one.hand == 0.108);
  CHECK(one.foot == 0.152);
  CHECK(one.head == 0.130);
  CHECK(one.shoulder_width == 0.259);
  CHECK(one.hip_width == 0.191);
}

// Dempster after Winter, table 4.1.
TEST_CASE("an adult's masses are the published ones, to six digits") {
  const Masses m = adult_masses();
  const auto is = [](const Mass& mass, double share, double from_near_end) {
    CHECK(mass.share == Approx(share).margin(5e-7));
    CHECK(mass.from_near_end == Approx(from_near_end).margin(5e-7));
  };
  is(m.hand, .0060, .506);
  is(m.forearm, .0160, .430);
  is(m.upper_arm, .0280, .436);
  is(m.foot, .0145, .500);
  is(m.shank, .0465, .433);
  is(m.thigh, .1000, .433);
  is(m.head, .0810, 1.000);
  is(m.trunk, .4970, .500);
  CHECK(sum_of(m) == Approx(1).epsilon(1e-12));
}

// Winter 2009, example of a lower limb: metatarsal, ankle, knee and hip as published; the centres
// are worked from table 4.1.
TEST_CASE("a leg's centres of mass are those of the published example") {
  const LegCentres c = centres_of_leg(adult_masses(), {.721, .928, 0}, {.864, .549, 0},
                                      {.849, .110, 0}, {1.011, .013, 0});
  const auto is = [](const Vec& v, double x, double y, double margin) {
    CHECK(v.x == Approx(x).margin(margin));
    CHECK(v.y == Approx(y).margin(margin));
    CHECK(v.z == 0);
  };
  is(c.foot, .930, .0615, 1e-12);
  is(c.shank, .857505, .358913, 5e-7);
  is(c.thigh, .782919, .763893, 5e-7);
  is(c.whole, .817707, .583668, 5e-7);
}

// The same table with the segment heights above: .577399 and .611683 of the stature. The feet hang
// on their own outline here, so the last digits are not the table's alone.
TEST_CASE("the centre of mass of a standing body lies where the table puts it") {
  const Body body = Body::adult(1);
  CHECK(standing_centre(body, 0) == Approx(0.577399).margin(0.0005));
  CHECK(standing_centre(body, 180) == Approx(0.611683).margin(0.0005));
}

// Published reaction-board values are about .55 to .57 of the stature (value from memory): a band
// of .03 round them.
TEST_CASE("the centre of mass of a standing body is where reaction boards find it") {
  for (const double stature : {1.2, 1.5, 1.8}) {
    const double height = standing_centre(Body::adult(stature), 0) / stature;
    CHECK(height > 0.55 - 0.03);
    CHECK(height < 0.57 + 0.03);
  }
  // Children's heads are heavy and their legs short.
  for (int age = 5; age <= 16; ++age) {
    const Body body = Body::of_age(age);
    const double height = standing_centre(body, 0) / body.stature;
    INFO(age);
    CHECK(height > 0.55 - 0.03);
    CHECK(height < 0.57 + 0.05);
    CHECK(standing_centre(body, 180) > standing_centre(body, 0));
  }
}

// Jensen 1986 and 1989.
TEST_CASE("a child's shares sum to one") {
  for (int tenths = 50; tenths <= 170; ++tenths) {
    CHECK(sum_of(child_masses(tenths / 10.0)) == Approx(1).epsilon(1e-12));
  }
}

// Jensen's percents at 6, 12 and 15 years; scaled, because each column sums to a little less or
// more than 100.
TEST_CASE("a child's shares are Jensen's") {
  struct Row {
    double age, head, trunk, upper_arm, forearm, hand, thigh, shank, foot;
  };
  for (const Row& r : {Row{6, 18.2, 43.0, 2.4, 1.3, 0.8, 8.5, 4.6, 1.9},
                       Row{12, 10.1, 41.7, 3.2, 1.7, 0.9, 11.0, 5.3, 2.1},
                       Row{15, 6.7, 41.6, 3.5, 1.7, 0.8, 12.1, 5.6, 2.1}}) {
    const double sum =
        r.head + r.trunk + 2 * (r.upper_arm + r.forearm + r.hand + r.thigh + r.shank + r.foot);
    CHECK(sum == Approx(100).margin(1.5));
    const Masses m = child_masses(r.age);
    CHECK(m.head.share == Approx(r.head / sum).epsilon(1e-12));
    CHECK(m.trunk.share == Approx(r.trunk / sum).epsilon(1e-12));
    CHECK(m.upper_arm.share == Approx(r.upper_arm / sum).epsilon(1e-12));
    CHECK(m.forearm.share == Approx(r.forearm / sum).epsilon(1e-12));
    CHECK(m.hand.share == Approx(r.hand / sum).epsilon(1e-12));
    CHECK(m.thigh.share == Approx(r.thigh / sum).epsilon(1e-12));
    CHECK(m.shank.share == Approx(r.shank / sum).epsilon(1e-12));
    CHECK(m.foot.share == Approx(r.foot / sum).epsilon(1e-12));
  }
}

// CDC 2000, stature-for-age, medians of boys and girls in cm.
TEST_CASE("a child is as tall as the median of its age") {
  struct Row {
    int age;
    double boys, girls;
  };
  for (const Row& r :
       {Row{5, 109.1751, 107.9566}, Row{6, 115.6609, 115.0055}, Row{7, 122.0305, 121.7617},
        Row{8, 128.1237, 127.8263}, Row{9, 133.7345, 133.1304}, Row{10, 138.8234, 138.2112},
        Row{11, 143.7304, 144.2609}, Row{12, 149.3088, 151.4866}, Row{13, 156.4099, 157.3437},
        Row{14, 164.1418, 160.4777}, Row{15, 170.1393, 161.8980}, Row{16, 173.6101, 162.5690}}) {
    INFO(r.age);
    CHECK(median_stature(r.age) == Approx((r.boys + r.girls) / 200).epsilon(1e-12));
    CHECK(Body::of_age(r.age).stature == median_stature(r.age));
  }
  CHECK(median_stature(9.5) == Approx((median_stature(9) + median_stature(10)) / 2).epsilon(1e-12));
  CHECK(median_stature(4) == median_stature(5));
  CHECK(median_stature(40) == median_stature(16));
}

TEST_CASE("a body's parts add up to its stature, at any age") {
  for (int tenths = 40; tenths <= 180; ++tenths) {
    const Body b = Body::of_age(tenths / 10.0);
    CHECK(b.ankle + b.shank() + b.thigh() + b.trunk() + (b.chin - b.shoulder) + b.head ==
          Approx(b.stature).epsilon(1e-12));
    CHECK(b.head / b.stature >= 0.130 - 1e-12);
    CHECK(b.head / b.stature <= 1.0 / 6 + 1e-12);
  }
  CHECK(Body::of_age(16).head == Approx(0.130 * Body::of_age(16).stature).epsilon(1e-12));
}
