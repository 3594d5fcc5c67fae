// Numbers that look like chance and are the same in every run: a seed, then Marsaglia's xorshift64
// (G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (14), 2003, triple 13, 7, 17).
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <vector>

namespace chalkleaf::support {

/// How often a test of random texts tries: under a sanitizer, where each costs ten times as much,
/// an eighth, unless CHALKLEAF_ALL_ROUNDS is set, as in the nightly run. The plain build tries all.
inline unsigned rounds(unsigned usual) {
#if defined(__has_feature)
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
  if (std::getenv("CHALKLEAF_ALL_ROUNDS") == nullptr) return usual / 8 + 1;
#endif
#endif
  return usual;
}

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
