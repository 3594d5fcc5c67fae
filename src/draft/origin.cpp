// See the header.
#include "draft/origin.h"

#include <algorithm>

namespace chalkleaf::draft {

void Origin::add(std::uint32_t begin, std::uint32_t end, Span at) {
  if (end > begin) pieces_.push_back({begin, end, at});
}

Span Origin::of(const Span& canonical) const {
  if (pieces_.empty()) return {coach_.get(), 0, 0};
  const auto behind =
      std::upper_bound(pieces_.begin(), pieces_.end(), canonical.begin,
                       [](std::uint32_t offset, const Piece& piece) { return offset < piece.end; });
  const Piece& first = behind == pieces_.end() ? pieces_.back() : *behind;
  const auto exact = [](const Piece& piece) {
    return piece.end - piece.begin == piece.at.end - piece.at.begin;
  };
  Span out = first.at;
  if (exact(first) && canonical.begin > first.begin) {
    out.begin += std::min(canonical.begin - first.begin, first.end - first.begin);
  }
  // The last piece that begins before the stretch ends.
  auto last = std::lower_bound(
      pieces_.begin(), pieces_.end(), canonical.end,
      [](const Piece& piece, std::uint32_t offset) { return piece.begin < offset; });
  if (last == pieces_.begin()) return out;
  --last;
  if (last->begin < first.begin) return out;
  const std::uint32_t end = exact(*last) && canonical.end < last->end
                                ? last->at.begin + (canonical.end - last->begin)
                                : last->at.end;
  out.end = std::max(out.begin, end);
  return out;
}

}  // namespace chalkleaf::draft
