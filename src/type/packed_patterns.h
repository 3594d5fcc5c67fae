// Hyphenation patterns as libhyphen has them once it has read them, as bytes.
//
// Reading the text of a language's patterns took longer than setting a sheet with them. The states
// stay where the bytes are; only libhyphen's list of them is made anew. What libhyphen then does is
// what it does with patterns it has read itself. Internal to the room. Tested by
// tests/type/hyphenation_test.cpp.
#pragma once

#include <hyphen.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::type {

std::string packed_patterns(const HyphenDict& dict);

/// A dictionary over packed bytes, which must outlive it.
class PackedPatterns {
 public:
  /// Null when the bytes are none. They must begin at a multiple of eight.
  static std::unique_ptr<PackedPatterns> open(std::string_view bytes);
  HyphenDict* dict() { return &levels_.front().dict; }

 private:
  struct Level {
    HyphenDict dict{};
    std::unique_ptr<HyphenState[]> states;
  };
  std::vector<Level> levels_;
};

}  // namespace chalkleaf::type
