// The code's outlines against its squares; what the words and the link say. That the code can be
// read is tests/qr.py's to show.
#include "sheet/qr_code.h"
#include "sheet_fixture.h"

using namespace chalkleaf;
using namespace chalkleaf::sheet;

namespace {

// How often the outlines wind round a point, by counting the vertical edges to its left.
int winding(const page::PathItem& path, Length x, Length y) {
  int out = 0;
  Point start;
  Point at;
  const auto edge = [&](Point to) {
    if (at.x == to.x && at.x < x) {
      if (at.y <= y && y < to.y) ++out;
      if (to.y <= y && y < at.y) --out;
    }
    at = to;
  };
  for (const page::PathStep& step : path.steps) {
    if (step.kind == page::PathStep::Kind::kMove) {
      start = at = step.a;
    } else {
      edge(step.kind == page::PathStep::Kind::kClose ? start : step.a);
    }
  }
  return out;
}

}  // namespace

// ISO/IEC 18004, table 7: at level M version 1 holds 14 bytes, version 2 26, version 10 213.
TEST_CASE("a code is as large as its text asks") {
  CHECK(qr_code(std::string(14, 'a'))->side == 21);
  CHECK(qr_code(std::string(15, 'a'))->side == 25);
  CHECK(qr_code(std::string(26, 'a'))->side == 25);
  CHECK(qr_code(std::string(213, 'a'))->side == 57);
  CHECK(!qr_code(std::string(3000, 'a')));
}

// ISO/IEC 18004, "finder pattern": three corners have a square in a ring in a ring.
TEST_CASE("its three corners are finders") {
  const auto code = *qr_code("https://alder-quay.example/plans/dish");
  for (const auto& [left, top] :
       {std::pair(0, 0), std::pair(code.side - 7, 0), std::pair(0, code.side - 7)}) {
    for (int y = 0; y < 7; ++y) {
      for (int x = 0; x < 7; ++x) {
        const int ring = std::max(std::abs(x - 3), std::abs(y - 3));
        CHECK(code.is_dark(left + x, top + y) == (ring != 2));
      }
    }
  }
}

TEST_CASE("the outlines hold the dark squares and no others") {
  const auto code = *qr_code("https://alder-quay.example/plans/strong-shapes");
  const Length module = Length::mm(0.6);
  const auto drawing = qr_drawing(code, module, page::Owner::of(3), Colour{1, 2, 3});
  CHECK(drawing.size.width == module * (code.side + 8));
  CHECK(drawing.size.height == drawing.size.width);
  REQUIRE(drawing.paths.size() == 1);
  CHECK(drawing.paths[0].fill == Colour{1, 2, 3});
  for (int y = -kQuietZone; y < code.side + kQuietZone; ++y) {
    for (int x = -kQuietZone; x < code.side + kQuietZone; ++x) {
      const Length px = module * (x + kQuietZone) + module / 2;
      const Length py = module * (y + kQuietZone) + module / 2;
      CHECK((winding(drawing.paths[0], px, py) != 0) == code.is_dark(x, y));
    }
  }
}

TEST_CASE("both sheets have the code, its words and a link below each other in the tree") {
  plan::Session session = support::session(2);
  session.web = {"https://alder-quay.example/plans/strong-shapes", {}};
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    const auto made = support::make_sheet(kind, session, Paper::kA4);
    CHECK(made.count(page::Role::kLink) == 1);
    std::size_t codes = 0;
    for (const page::Node& node : made.list.tree) {
      if (node.role == page::Role::kLink)
        CHECK(node.web_address == "https://alder-quay.example/plans/strong-shapes");
      if (node.alternative_text ==
          "QR code that leads to https://alder-quay.example/plans/strong-shapes")
        ++codes;
    }
    CHECK(codes == 1);
    CHECK_THAT(made.text(), Catch::Contains("alder-quay.example/plans/strong-shapes"));
    support::check_tree(made.list);
  }
  session.web = {};
  CHECK(support::make_sheet(Kind::kCoachCard, session, Paper::kA5).count(page::Role::kLink) == 0);
}
