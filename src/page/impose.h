// Pages set two on a sheet: beside each other to be cut, or as a booklet to be folded and stapled.
//
// Pure: a display list in, another out. Marks are moved; what they belong to is not, so the
// structure tree keeps the order of reading whatever the order on the sheets. Tested by
// tests/page/impose_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "page/display_list.h"

namespace chalkleaf::page {

/// What stands in the two halves of one side of a sheet: pages from 0, or nothing.
struct Halves {
  std::optional<std::size_t> first;   ///< left, or above
  std::optional<std::size_t> second;  ///< right, or below
  bool operator==(const Halves&) const = default;
};

/// The sides of a saddle-stitched booklet, front and back by turns: printed on both sides and
/// turned over by the short edge, laid into each other as they come, folded, stapled in the fold.
/// Common practice of the printing trade: on every side the two page numbers add up to one more
/// than there are pages, counted up to a multiple of four by blank ones.
std::vector<Halves> booklet_order(std::size_t pages);
/// Pages one after the other; of a single page, two.
std::vector<Halves> two_up_order(std::size_t pages);
/// Every page twice, to be cut into two stacks.
std::vector<Halves> twice_order(std::size_t pages);

enum class MiddleMark { kCut, kFold };
struct ImposeStyle {
  Size sheet;  ///< its longer side is halved
  MiddleMark middle = MiddleMark::kCut;
  Stroke line;  ///< of the marks at both ends of the middle; a fold's is dashed
};

/// Sets the pages so. All touch the middle, so that one cut or fold parts two. A page that is set a
/// second time is an artifact there: who listens to the document hears it once. Pages that `order`
/// leaves out are dropped with their bookmarks.
DisplayList impose(DisplayList list, const std::vector<Halves>& order, const ImposeStyle& style);

}  // namespace chalkleaf::page
