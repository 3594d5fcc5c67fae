// Room for the two holes that a sheet is filed by, and the mark a punch is set to.
//
// ISO 838: two holes of 6 ± 0.5 mm, their centres 80 ± 0.5 mm apart and 12 ± 1 mm from the edge,
// symmetrical about the middle of that edge (values from memory: the standard is sold). Pure: pages
// in, pages out. Tested by tests/page/filing_test.cpp and tests/sheet/filing_sheet_test.cpp.
#pragma once

#include <array>

#include "page/display_list.h"

namespace chalkleaf::page {

/// On both sides: the holes are left on the first page, right on its back, and so on.
enum class PrintedOn { kOneSide, kBothSides };
enum class FiledEdge { kLeft, kRight, kTop };

/// Upright and small sheets are filed by their left edge; a sheet on its side that is as long as a
/// binder is high, by its top, so that it does not stand out of the binder. Turned over by that
/// edge, its top stays the top.
FiledEdge filed_edge(Size paper, PrintedOn sides, std::size_t page);
/// Centres of the holes.
std::array<Point, 2> hole_centres(Size paper, FiledEdge edge);
/// Margins at least wide enough that nothing between them lies under a hole, for the first page.
Insets with_filing_margin(Size paper, Insets margins);
/// Pages that were set with those margins: backs are moved to have theirs on the other side, and
/// every page gets the mark.
void prepare_for_filing(DisplayList& list, PrintedOn sides, const Insets& margins,
                        const Stroke& mark);

}  // namespace chalkleaf::page
