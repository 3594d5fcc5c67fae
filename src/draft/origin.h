// Where the bytes of a canonical plan stand in the file the coach wrote.
// Tested by tests/draft/write_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace chalkleaf::draft {

class Origin {
 public:
  explicit Origin(SourcePtr coach) : coach_(std::move(coach)) {}

  /// The place of a stretch of the canonical plan in the coach's file. Stretches that are the same
  /// bytes there are exact; others, and what stands between two, are the nearest line's.
  Span of(const Span& canonical) const;
  const SourcePtr& coach() const { return coach_; }
  /// Bytes [begin, end) of the canonical plan stand at `at` in the coach's file.
  void add(std::uint32_t begin, std::uint32_t end, Span at);

 private:
  struct Piece {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    Span at;
  };
  std::uint32_t begin_of(std::uint32_t offset) const;

  SourcePtr coach_;
  std::vector<Piece> pieces_;  ///< in order, not overlapping
};

}  // namespace chalkleaf::draft
