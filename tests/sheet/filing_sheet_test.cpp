// No mark of a sheet lies where a punch makes its holes. The measures are ISO 838's, from memory.
#include <catch2/catch.hpp>

#include "page/filing.h"
#include "sheet_fixture.h"

namespace chalkleaf::sheet {
namespace {

using support::make_sheet;

Rect box_of(const page::Item& item) {
  if (const auto* text = std::get_if<page::TextItem>(&item)) {
    const type::Face* face = support::test_fonts().face(text->face);
    std::int64_t units = 0;
    for (const type::Glyph& glyph : text->glyphs) units += glyph.advance;
    const Length width = text->size.scaled(static_cast<double>(units) / face->units_per_em());
    return {text->baseline.x, text->baseline.y - text->size, width, text->size.scaled(1.3)};
  }
  if (const auto* picture = std::get_if<page::PictureItem>(&item)) return picture->place;
  const auto& path = std::get<page::PathItem>(item);
  Rect out{path.steps.front().a.x, path.steps.front().a.y, {}, {}};
  for (const page::PathStep& step : path.steps) {
    if (step.kind == page::PathStep::Kind::kClose) continue;
    const Point& end = step.kind == page::PathStep::Kind::kCurve ? step.c : step.a;
    const Length right = std::max(out.right(), end.x);
    const Length bottom = std::max(out.bottom(), end.y);
    out.x = std::min(out.x, end.x);
    out.y = std::min(out.y, end.y);
    out.width = right - out.x;
    out.height = bottom - out.y;
  }
  return out;
}

// A hole of 6.5 mm whose centre is 1 mm and 0.25 mm off at most.
bool lies_in_a_hole(const Rect& box, Point centre) {
  const Length reach = Length::mm(3.25 + 1);
  return box.x < centre.x + reach && box.right() > centre.x - reach && box.y < centre.y + reach &&
         box.bottom() > centre.y - reach;
}

std::size_t marks_in_holes(const page::DisplayList& list, page::PrintedOn sides) {
  std::size_t out = 0;
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    const page::Page& page = list.pages[i];
    const auto holes = page::hole_centres(page.size, page::filed_edge(page.size, sides, i));
    for (const page::Item& item : page.items) {
      for (const Point& hole : holes) out += lies_in_a_hole(box_of(item), hole) ? 1 : 0;
    }
  }
  return out;
}

TEST_CASE("nothing is printed where sheets are punched") {
  for (const plan::Filing filing : {plan::Filing::kOneSide, plan::Filing::kBothSides}) {
    for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
      for (const Paper paper : kPapers) {
        INFO(paper_key(paper) << (kind == Kind::kCoachCard ? " card" : " sheet"));
        plan::Session session = support::session(24);
        session.printing.filing = filing;
        const auto made = make_sheet(kind, session, paper);
        CHECK(made.list.pages.size() > 1);
        CHECK(marks_in_holes(made.list, filing == plan::Filing::kBothSides
                                            ? page::PrintedOn::kBothSides
                                            : page::PrintedOn::kOneSide) == 0);
        support::check_tree(made.list);
      }
    }
  }
}

// Without the margin the holes do go through the text: the test above can fail.
TEST_CASE("a card without a margin for filing has text under the holes") {
  const auto made = make_sheet(Kind::kCoachCard, support::session(24), Paper::kA5);
  CHECK(marks_in_holes(made.list, page::PrintedOn::kOneSide) > 0);
}

}  // namespace
}  // namespace chalkleaf::sheet
