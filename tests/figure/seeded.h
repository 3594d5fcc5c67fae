// Random poses that are the same on every machine: the generator is the standard's, the ranges are
// ours (its distributions may differ between libraries).
#pragma once

#include <random>

#include "figure/ranges.h"

namespace chalkleaf::figure {

class Seeded {
 public:
  explicit Seeded(unsigned seed) : engine_(seed) {}
  double from_to(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967295.0);
  }
  std::size_t below(std::size_t end) { return engine_() % end; }
  bool coin() { return engine_() % 2 == 0; }
  /// Every joint anywhere nobody's would break.
  Joints joints() {
    Joints out;
    for (std::size_t i = 0; i < kJoints; ++i) {
      const auto joint = static_cast<Joint>(i);
      const Range& range = range_of(joint);
      if (!has_sides(joint)) {
        out.set(joint, from_to(range.possible_low, range.possible_high));
        continue;
      }
      for (const Side side : kSides) {
        out.set(joint, side, from_to(range.possible_low, range.possible_high));
      }
    }
    return out;
  }

 private:
  std::mt19937 engine_;
};

}  // namespace chalkleaf::figure
