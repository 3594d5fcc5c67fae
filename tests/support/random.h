// Numbers that look like chance and are the same in every run: a seed, then Marsaglia's xorshift64
// (G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (14), 2003, triple 13, 7, 17).
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace chalkleaf::support {

class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed * 2654435761U + 1) {}
  /// From 0 to n - 1; n is at least 1.
  std::size_t below(std::size_t n) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    return static_cast<std::size_t>(state_ % n);
  }
  template <class T>
  const T& pick(const std::vector<T>& from) {
    return from[below(from.size())];
  }

 private:
  std::uint64_t state_;
};

}  // namespace chalkleaf::support
