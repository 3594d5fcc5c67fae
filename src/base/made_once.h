// Bytes that are made when they are first asked for, and kept. Tested by
// tests/pdf/artworks_test.cpp.
#pragma once

#include <mutex>
#include <string>

namespace chalkleaf {

/// Thread-safe. Whoever owns it lends its room to another room's form of itself.
class MadeOnce {
 public:
  /// What the first `make()` gave; later ones are not called.
  template <class Make>
  const std::string& get(Make make) const {
    std::call_once(once_, [&] { bytes_ = make(); });
    return bytes_;
  }

 private:
  mutable std::once_flag once_;
  mutable std::string bytes_;
};

}  // namespace chalkleaf
