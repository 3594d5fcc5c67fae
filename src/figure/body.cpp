#include "figure/body.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace chalkleaf::figure {
namespace {

// CDC 2000, stature-for-age, median in cm at the age plus half a month: boys, girls.
struct Stature {
  double boys;
  double girls;
};
constexpr int kFirstStature = 5;
constexpr std::array<Stature, 12> kStatures = {{{109.1751, 107.9566},
                                                {115.6609, 115.0055},
                                                {122.0305, 121.7617},
                                                {128.1237, 127.8263},
                                                {133.7345, 133.1304},
                                                {138.8234, 138.2112},
                                                {143.7304, 144.2609},
                                                {149.3088, 151.4866},
                                                {156.4099, 157.3437},
                                                {164.1418, 160.4777},
                                                {170.1393, 161.8980},
                                                {173.6101, 162.5690}}};

// Jensen 1986 and 1989, percent of body mass.
struct Shares {
  double age;
  double head, trunk, upper_arm, forearm, hand, thigh, shank, foot;
};
constexpr std::array<Shares, 3> kJensen = {{{6, 18.2, 43.0, 2.4, 1.3, 0.8, 8.5, 4.6, 1.9},
                                            {12, 10.1, 41.7, 3.2, 1.7, 0.9, 11.0, 5.3, 2.1},
                                            {15, 6.7, 41.6, 3.5, 1.7, 0.8, 12.1, 5.6, 2.1}}};

double blend(double a, double b, double t) { return a + (b - a) * t; }

// A sixth of the stature at six, a seventh at twelve, Drillis & Contini's share from sixteen on.
double head_share(double years) {
  constexpr double kAdult = 0.130;
  if (years <= 6) return 1.0 / 6;
  if (years <= 12) return blend(1.0 / 6, 1.0 / 7, (years - 6) / 6);
  return blend(1.0 / 7, kAdult, std::min(1.0, (years - 12) / 4));
}

}  // namespace

Body Body::adult(double stature) {
  Body b;
  b.stature = stature;
  b.head = 0.130 * stature;
  b.chin = 0.870 * stature;
  b.shoulder = 0.818 * stature;
  b.hip = 0.530 * stature;
  b.knee = 0.285 * stature;
  b.ankle = 0.039 * stature;
  b.upper_arm = 0.186 * stature;
  b.forearm = 0.146 * stature;
  b.hand = 0.108 * stature;
  b.foot = 0.152 * stature;
  b.shoulder_width = 0.259 * stature;
  b.hip_width = 0.191 * stature;
  b.masses = adult_masses();
  return b;
}

Body Body::of_age(double years) {
  const double stature = median_stature(years);
  const double head = head_share(years) * stature;
  Body b = adult((stature - head) / (1 - 0.130));  // a body whose chin is where this one's is
  b.stature = stature;
  b.head = head;
  b.masses = child_masses(years);
  return b;
}

double median_stature(double years) {
  const double at =
      std::clamp(years - kFirstStature, 0.0, static_cast<double>(kStatures.size()) - 1);
  const auto below = std::min(static_cast<std::size_t>(at), kStatures.size() - 2);
  const auto mean = [](const Stature& s) { return (s.boys + s.girls) / 200; };
  return blend(mean(kStatures[below]), mean(kStatures[below + 1]), at - static_cast<double>(below));
}

Masses adult_masses() {
  return {{0.081, 1.0},   {0.497, 0.5},   {0.028, 0.436},  {0.016, 0.430},
          {0.006, 0.506}, {0.100, 0.433}, {0.0465, 0.433}, {0.0145, 0.5}};
}

Masses child_masses(double years) {
  const double age = std::clamp(years, kJensen.front().age, kJensen.back().age);
  const std::size_t i = age <= kJensen[1].age ? 0 : 1;
  const Shares& a = kJensen[i];
  const Shares& b = kJensen[i + 1];
  const double t = (age - a.age) / (b.age - a.age);
  Masses out = adult_masses();
  out.head.share = blend(a.head, b.head, t);
  out.trunk.share = blend(a.trunk, b.trunk, t);
  out.upper_arm.share = blend(a.upper_arm, b.upper_arm, t);
  out.forearm.share = blend(a.forearm, b.forearm, t);
  out.hand.share = blend(a.hand, b.hand, t);
  out.thigh.share = blend(a.thigh, b.thigh, t);
  out.shank.share = blend(a.shank, b.shank, t);
  out.foot.share = blend(a.foot, b.foot, t);
  const double sum = out.head.share + out.trunk.share +
                     2 * (out.upper_arm.share + out.forearm.share + out.hand.share +
                          out.thigh.share + out.shank.share + out.foot.share);
  for (Mass* mass : {&out.head, &out.trunk, &out.upper_arm, &out.forearm, &out.hand, &out.thigh,
                     &out.shank, &out.foot}) {
    mass->share /= sum;
  }
  return out;
}

}  // namespace chalkleaf::figure
