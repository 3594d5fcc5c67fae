// See the header.
#include "page/filing.h"

#include <algorithm>

#include "page/layout.h"
#include "page/shapes.h"

namespace chalkleaf::page {
namespace {

// 12 + 1 mm to the centre and half of 6.5 mm is 16.25 mm at most; the rest parts text from holes.
constexpr double kMargin = 20;
constexpr double kFromEdge = 12;
constexpr double kHalfApart = 40;
// Between the strip along the edge that many printers leave white (common practice, no source) and
// the text.
constexpr double kMarkFrom = 4;
constexpr double kMarkTo = 9;
// Longer than A5 and half-letter, shorter than A4 and Letter.
constexpr double kLongSheet = 250;

bool is_filed_by_top(Size paper) {
  return paper.width > paper.height && paper.width > Length::mm(kLongSheet);
}

// So far in from the edge, so far along it from its middle.
Point at(Size paper, FiledEdge edge, Length in, Length along) {
  switch (edge) {
    case FiledEdge::kTop:
      return {paper.width / 2 + along, in};
    case FiledEdge::kRight:
      return {paper.width - in, paper.height / 2 + along};
    case FiledEdge::kLeft:
      break;
  }
  return {in, paper.height / 2 + along};
}

}  // namespace

FiledEdge filed_edge(Size paper, PrintedOn sides, std::size_t page) {
  if (is_filed_by_top(paper)) return FiledEdge::kTop;
  return sides == PrintedOn::kBothSides && page % 2 == 1 ? FiledEdge::kRight : FiledEdge::kLeft;
}

std::array<Point, 2> hole_centres(Size paper, FiledEdge edge) {
  const Length in = Length::mm(kFromEdge);
  return {at(paper, edge, in, -Length::mm(kHalfApart)),
          at(paper, edge, in, Length::mm(kHalfApart))};
}

Insets with_filing_margin(Size paper, Insets margins) {
  Length& edge = is_filed_by_top(paper) ? margins.top : margins.left;
  edge = std::max(edge, Length::mm(kMargin));
  return margins;
}

void prepare_for_filing(DisplayList& list, PrintedOn sides, const Insets& margins,
                        const Stroke& mark) {
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    Page& page = list.pages[i];
    const FiledEdge edge = filed_edge(page.size, sides, i);
    if (edge == FiledEdge::kRight) {
      for (Item& item : page.items) move_by(item, margins.right - margins.left, {});
    }
    PathItem line{Owner::none(Artifact::kLayout),
                  straight_line(at(page.size, edge, Length::mm(kMarkFrom), {}),
                                at(page.size, edge, Length::mm(kMarkTo), {})),
                  std::nullopt, mark};
    page.items.emplace_back(std::move(line));
  }
}

}  // namespace chalkleaf::page
