// Holes and marks against ISO 838, in its own millimetres.
#include "page/filing.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "base/paper.h"
#include "page/shapes.h"

namespace chalkleaf::page {
namespace {

// ISO 838, from memory: 80 ± 0.5 mm apart, 12 ± 1 mm from the edge.
TEST_CASE("holes are where a punch makes them") {
  for (const Paper paper : kPapers) {
    for (const FiledEdge edge : {FiledEdge::kLeft, FiledEdge::kRight, FiledEdge::kTop}) {
      const Size size = paper_size(paper);
      const auto holes = hole_centres(size, edge);
      const double apart =
          std::hypot((holes[1].x - holes[0].x).in_mm(), (holes[1].y - holes[0].y).in_mm());
      CHECK(apart == Approx(80).margin(0.01));
      for (const Point& hole : holes) {
        const double in = edge == FiledEdge::kTop    ? hole.y.in_mm()
                          : edge == FiledEdge::kLeft ? hole.x.in_mm()
                                                     : (size.width - hole.x).in_mm();
        CHECK(in == Approx(12).margin(0.01));
      }
      const Length middle = edge == FiledEdge::kTop
                                ? (holes[0].x + holes[1].x) / 2 - size.width / 2
                                : (holes[0].y + holes[1].y) / 2 - size.height / 2;
      CHECK(std::abs(middle.in_mm()) < 0.01);
    }
  }
}

TEST_CASE("the left edge is filed, on backs the right, on long sheets on their side the top") {
  const Size a5 = paper_size(Paper::kA5);
  CHECK(filed_edge(a5, PrintedOn::kOneSide, 0) == FiledEdge::kLeft);
  CHECK(filed_edge(a5, PrintedOn::kOneSide, 1) == FiledEdge::kLeft);
  CHECK(filed_edge(a5, PrintedOn::kBothSides, 0) == FiledEdge::kLeft);
  CHECK(filed_edge(a5, PrintedOn::kBothSides, 1) == FiledEdge::kRight);
  CHECK(filed_edge(a5, PrintedOn::kBothSides, 2) == FiledEdge::kLeft);
  CHECK(filed_edge(paper_size(Paper::kA5Landscape), PrintedOn::kOneSide, 0) == FiledEdge::kLeft);
  CHECK(filed_edge(paper_size(Paper::kA4Landscape), PrintedOn::kBothSides, 1) == FiledEdge::kTop);
  CHECK(filed_edge(paper_size(Paper::kLetterLandscape), PrintedOn::kOneSide, 0) == FiledEdge::kTop);
}

TEST_CASE("only the filed margin is widened") {
  const Insets narrow = Insets::all(Length::mm(10));
  const Insets upright = with_filing_margin(paper_size(Paper::kA4), narrow);
  CHECK(upright.left == Length::mm(20));
  CHECK(upright.top == narrow.top);
  CHECK(upright.right == narrow.right);
  const Insets wide = with_filing_margin(paper_size(Paper::kA4Landscape), narrow);
  CHECK(wide.top == Length::mm(20));
  CHECK(wide.left == narrow.left);
  CHECK(with_filing_margin(paper_size(Paper::kA4), Insets::all(Length::mm(30))).left ==
        Length::mm(30));
}

TEST_CASE("backs are moved over, and every page has its mark in the middle of its edge") {
  DisplayList list;
  list.tree.push_back({});
  const Size a5 = paper_size(Paper::kA5);
  const Insets margins = with_filing_margin(a5, Insets::all(Length::mm(10)));
  for (int i = 0; i < 3; ++i) {
    Page page{a5, {}};
    page.items.emplace_back(PictureItem{Owner::none(Artifact::kLayout),
                                        {margins.left, margins.top, Length::mm(5), Length::mm(5)},
                                        "x"});
    list.pages.push_back(std::move(page));
  }
  prepare_for_filing(list, PrintedOn::kBothSides, margins, {{}, Length::pt(0.5), false, {}});
  for (std::size_t i = 0; i < 3; ++i) {
    const Page& page = list.pages[i];
    REQUIRE(page.items.size() == 2);
    const auto& picture = std::get<PictureItem>(page.items[0]);
    CHECK(picture.place.x == (i == 1 ? margins.right : margins.left));
    const auto& mark = std::get<PathItem>(page.items[1]);
    CHECK_FALSE(mark.owner.node.has_value());
    CHECK(mark.steps.front().a.y == a5.height / 2);
    CHECK((mark.steps.front().a.x > a5.width / 2) == (i == 1));
  }
}

}  // namespace
}  // namespace chalkleaf::page
