#include "page/layout.h"

#include <catch2/catch.hpp>
#include <functional>
#include <random>

#include "page/shapes.h"
#include "support/test_fonts.h"

using namespace chalkleaf;
using namespace chalkleaf::page;

namespace {

struct LaidOut {
  type::Typesetter typesetter{support::test_fonts()};
  Layout layout{typesetter};

  Block text(const std::string& words, double size = 10, Align align = Align::kStart) {
    type::Inline one;
    one.text = words;
    one.style =
        support::test_fonts().style("card", type::Weight::kRegular, type::Slant::kUpright).value();
    one.size = Length::pt(size);
    return {TextBlock{{one}, Length::pt(size * 1.2), align, Owner::of(1)}};
  }
  static Block box(double width, double height) {
    PathItem path;
    path.steps =
        rounded_rectangle({Length(), Length(), Length::pt(width), Length::pt(height)}, Length());
    path.fill = kBlack;
    return {DrawingBlock{{Length::pt(width), Length::pt(height)}, {path}, {}}};
  }
};

const PathItem& path(const Fragment& fragment, std::size_t i) {
  return std::get<PathItem>(fragment.items.at(i));
}
const TextItem& words(const Fragment& fragment, std::size_t i) {
  return std::get<TextItem>(fragment.items.at(i));
}

}  // namespace

TEST_CASE_METHOD(LaidOut, "a paragraph is as high as its lines, and ends where it should") {
  const Fragment one = layout.place(text("Lower back pressed down"), Length::pt(400));
  CHECK(one.size.height == Length::pt(12));
  const Fragment narrow = layout.place(text("Lower back pressed down"), Length::pt(60));
  CHECK(narrow.size.height >= Length::pt(24));
  const Length natural = layout.natural_width(text("Dish"));
  const Fragment right = layout.place(text("Dish", 10, Align::kEnd), Length::pt(100));
  CHECK(words(right, 0).baseline.x == Length::pt(100) - natural);
}

TEST_CASE_METHOD(LaidOut, "a stack adds heights and gaps; its last child can go to the bottom") {
  StackBlock stack{{box(10, 10), box(10, 20)}, Length::pt(5), false};
  CHECK(layout.place({stack}, Length::pt(50)).size.height == Length::pt(35));
  stack.last_at_bottom = true;
  const Fragment tall = layout.place({stack}, Length::pt(50), Length::pt(100));
  CHECK(tall.size.height == Length::pt(100));
  CHECK(path(tall, 1).steps.front().a.y == Length::pt(80));
}

TEST_CASE_METHOD(LaidOut, "text goes on below what it began beside, and no word of it is lost") {
  const std::string said =
      "Lie on your back and lift shoulders and legs until you look like a shallow dish";
  AroundBlock around;
  around.left.push_back(box(30, 30));
  around.left_width = Length::pt(30);
  around.gap = Length::pt(5);
  around.children.push_back(text("Dish hold"));
  around.children.push_back(text(said));
  const Fragment made = layout.place({around}, Length::pt(120));
  std::string all;
  bool below = false;
  for (const Item& item : made.items) {
    const auto* run = std::get_if<TextItem>(&item);
    if (run == nullptr) continue;
    all += run->text;
    if (!run->text.empty() && run->text.back() != ' ') all += ' ';
    if (run->baseline.y < Length::pt(30)) CHECK(run->baseline.x >= Length::pt(35));
    if (run->baseline.x < Length::pt(35)) below = true;
  }
  CHECK(below);
  CHECK(all == "Dish hold " + said + " ");
  CHECK(layout.measure({around}, Length::pt(120)).size.height == made.size.height);
}

TEST_CASE_METHOD(LaidOut, "a mark is kept as the words that are read in its place") {
  Block block = text("+");
  std::get<TextBlock>(block.content).read_as.push_back({0, "Harder:"});
  CHECK(words(layout.place(block, Length::pt(50)), 0).text == "Harder:");
}

TEST_CASE_METHOD(LaidOut,
                 "a paragraph of several owners has each its words, also around a figure") {
  Block one = text("Clear the floor of toys.");
  auto& paragraph = std::get<TextBlock>(one.content);
  type::Inline room = paragraph.text.front();
  room.text = "\u00A0\u00A0\u00A0";
  type::Inline second = paragraph.text.front();
  second.text = "An adult stays.";
  paragraph.text = {paragraph.text.front(), room, second};
  paragraph.owners = {{0, Owner::of(3)}, {1, Owner::of(7)}};
  paragraph.inlaid = {{1, std::get<DrawingBlock>(box(4, 6).content)}};
  paragraph.inlaid.front().drawing.baseline = Length::pt(5);
  const auto check = [](const Fragment& made) {
    std::string of_three;
    std::string of_seven;
    std::size_t boxes = 0;
    for (const Item& item : made.items) {
      if (std::holds_alternative<PathItem>(item)) ++boxes;
      const auto* words = std::get_if<TextItem>(&item);
      if (words == nullptr) continue;
      (words->owner.node == NodeId{3} ? of_three : of_seven) += words->text;
    }
    CHECK(of_three == "Clear the floor of toys.");
    CHECK(of_seven == "An adult stays.");  // the room of the box is no text
    return boxes;
  };
  const Fragment wide = layout.place(one, Length::pt(400));
  CHECK(check(wide) == 1);
  // The box stands on the line of its words.
  const auto& first = words(wide, 0);
  CHECK(path(wide, 1).steps.front().a.y == first.baseline.y - Length::pt(5));
  for (const double width : {60.0, 90.0, 120.0}) {
    AroundBlock around;
    around.left.push_back(box(20, 20));
    around.left_width = Length::pt(20);
    around.children = {one};
    CHECK(check(layout.place({around}, Length::pt(width))) == 2);
  }
}

TEST_CASE_METHOD(LaidOut, "no line ends with the dot between two things") {
  Block one = text("Soft knees");
  auto& paragraph = std::get<TextBlock>(one.content);
  type::Inline dot = paragraph.text.front();
  dot.text = std::string(kSeparator);
  type::Inline more = paragraph.text.front();
  more.text = "quiet feet";
  paragraph.text = {paragraph.text.front(), dot, more};
  const auto dots = [&](double width) {
    std::size_t out = 0;
    for (const Item& item : layout.place(one, Length::pt(width)).items)
      out += std::get<TextItem>(item).text.find("·") != std::string::npos ? 1 : 0;
    return out;
  };
  CHECK(dots(400) == 1);
  CHECK(dots(60) == 0);
}

TEST_CASE_METHOD(LaidOut, "a row gives fixed and natural tracks theirs and shares out the rest") {
  RowBlock row;
  row.gap = Length::pt(10);
  row.cells.push_back({Track::fixed(Length::pt(30)), box(5, 5)});
  row.cells.push_back({Track::flexible(1), box(5, 5)});
  row.cells.push_back({Track::flexible(2), box(5, 5)});
  const Fragment out = layout.place({row}, Length::pt(200));
  // 200 − 30 − 2 × 10 = 150: 50 and 100.
  CHECK(path(out, 1).steps.front().a.x == Length::pt(40));
  CHECK(path(out, 2).steps.front().a.x == Length::pt(100));
}

TEST_CASE_METHOD(LaidOut, "first lines of a row share one baseline") {
  RowBlock row;
  row.align = RowAlign::kBaseline;
  row.cells.push_back({Track::flexible(), text("17:00", 9)});
  row.cells.push_back({Track::flexible(), text("Dish hold", 18)});
  const Fragment out = layout.place({row}, Length::pt(200));
  CHECK(words(out, 0).baseline.y == words(out, 1).baseline.y);
}

TEST_CASE_METHOD(LaidOut, "stretched boxes have the height of the tallest") {
  BoxBlock small;
  small.border = Stroke{kBlack, Length::pt(1), false, {}};
  small.content.push_back(box(5, 5));
  BoxBlock large = small;
  large.content.front() = box(5, 50);
  RowBlock row;
  row.align = RowAlign::kStretch;
  row.cells.push_back({Track::flexible(), {small}});
  row.cells.push_back({Track::flexible(), {large}});
  const Fragment out = layout.place({row}, Length::pt(200));
  const auto lowest = [](const PathItem& item) {
    Length y;
    for (const PathStep& step : item.steps) y = std::max(y, step.a.y);
    return y;
  };
  CHECK(lowest(path(out, 0)) == lowest(path(out, 2)));
}

TEST_CASE_METHOD(LaidOut, "what does not fit a line goes to the next") {
  WrapBlock wrap;
  wrap.gap = Length::pt(10);
  wrap.line_gap = Length::pt(4);
  for (int i = 0; i < 5; ++i) wrap.children.push_back(box(30, 10));
  const Fragment out = layout.place({wrap}, Length::pt(115));  // 3 × 30 + 2 × 10 = 110
  CHECK(out.size.height == Length::pt(24));
  CHECK(path(out, 3).steps.front().a == Point{Length(), Length::pt(14)});
}

TEST_CASE("a circle of four curves is round to a thousandth") {
  // The middle of each quarter lies on the circle: the Bézier point at t = 1/2 is (a + 3b + 3c + d)
  // / 8.
  const auto steps = circle({Length::pt(100), Length::pt(100)}, Length::pt(50));
  Point from = steps.front().a;
  int quarters = 0;
  for (const PathStep& step : steps) {
    if (step.kind == PathStep::Kind::kCurve) {
      const double x = (from.x + step.a.x * 3 + step.b.x * 3 + step.c.x).in_pt() / 8 - 100;
      const double y = (from.y + step.a.y * 3 + step.b.y * 3 + step.c.y).in_pt() / 8 - 100;
      CHECK(x * x + y * y == Approx(2500).epsilon(0.001));
      ++quarters;
    }
    from = step.kind == PathStep::Kind::kCurve ? step.c : step.a;
  }
  CHECK(quarters == 4);
}

TEST_CASE_METHOD(LaidOut,
                 "a picture is as large as it asks, or as its column lets it, in its shape") {
  const PictureBlock block{
      {Length::pt(120), Length::pt(90)}, "line.png", Owner::of(1), Align::kStart};
  const auto placed = [&](Align align, double width) {
    PictureBlock one = block;
    one.align = align;
    Fragment fragment = layout.place({one}, Length::pt(width));
    REQUIRE(fragment.items.size() == 1);
    const auto& item = std::get<PictureItem>(fragment.items[0]);
    CHECK(item.source == "line.png");
    CHECK(item.owner == Owner::of(1));
    CHECK(item.pixels == nullptr);
    CHECK(fragment.size == Size{Length::pt(width), item.place.height});
    CHECK(fragment.baseline == item.place.height);
    return item.place;
  };
  const auto box = [](double x, double width, double height) {
    return Rect{Length::pt(x), Length(), Length::pt(width), Length::pt(height)};
  };
  CHECK(placed(Align::kStart, 200) == box(0, 120, 90));
  CHECK(placed(Align::kCentre, 200) == box(40, 120, 90));
  CHECK(placed(Align::kEnd, 200) == box(80, 120, 90));
  CHECK(placed(Align::kStart, 60) == box(0, 60, 45));
  CHECK(layout.natural_width({block}) == Length::pt(120));

  Fragment moved = layout.place({block}, Length::pt(200));
  move_by(moved.items[0], Length::pt(7), Length::pt(9));
  const Rect place = std::get<PictureItem>(moved.items[0]).place;
  CHECK(place == Rect{Length::pt(7), Length::pt(9), Length::pt(120), Length::pt(90)});
}

TEST_CASE_METHOD(LaidOut, "what is measured is what is placed") {
  std::mt19937 random(7);  // NOLINT(cert-msc51-cpp): the same blocks each time
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  const auto points = [&](int n) { return Length::pt(below(n)); };
  std::function<Block(int)> any = [&](int depth) -> Block {
    std::vector<Block> inside;
    for (int i = depth > 3 ? 0 : below(4); i > 0; --i) inside.push_back(any(depth + 1));
    switch (inside.empty() ? 4 + below(3) : below(4)) {
      case 0:
        return {StackBlock{std::move(inside), points(9), below(2) == 0}};
      case 1: {
        RowBlock row;
        row.gap = points(9);
        row.align = static_cast<RowAlign>(below(5));
        for (Block& one : inside) {
          const int track = below(3);
          row.cells.push_back({track == 0   ? Track::fixed(points(80))
                               : track == 1 ? Track::natural()
                                            : Track::flexible(),
                               std::move(one)});
        }
        return {std::move(row)};
      }
      case 2: {
        WrapBlock wrap;
        wrap.gap = points(9);
        wrap.line_gap = points(5);
        wrap.children = std::move(inside);
        return {std::move(wrap)};
      }
      case 3: {
        BoxBlock frame;
        frame.padding = {points(5), points(5), points(5), points(5)};
        frame.fill = kBlack;
        frame.content.push_back(std::move(inside.front()));
        return {std::move(frame)};
      }
      case 4:
        return box(below(60), below(60));
      case 5:
        return {SpaceBlock{points(20)}};
      default:
        return text(std::string("a word of some length or other")
                        .substr(0, static_cast<std::size_t>(1 + below(30))),
                    6 + below(9));
    }
  };
  std::size_t marks = 0;
  for (int i = 0; i < 400; ++i) {
    const Block block = any(0);
    const Length width = Length::pt(30 + below(300));
    const Length least = below(2) == 0 ? Length() : points(200);
    Layout fresh(typesetter);
    const Fragment measured = fresh.measure(block, width, least);
    CHECK(measured.items.empty());
    const std::size_t problems = fresh.problems().size();
    const Fragment placed = Layout(typesetter).place(block, width, least);
    CHECK(measured.size.width == placed.size.width);
    CHECK(measured.size.height == placed.size.height);
    CHECK(measured.baseline == placed.baseline);
    CHECK(measured.last_baseline == placed.last_baseline);
    CHECK(fresh.place(block, width, least).items.size() == placed.items.size());
    CHECK(fresh.problems().size() == problems * 2);  // as many again, none twice in one pass
    marks += placed.items.size();
  }
  CHECK(marks > 400);
}
