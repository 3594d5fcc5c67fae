#include "support/inspect.h"

#include <catch2/catch.hpp>

#include "page/layout.h"
#include "page/shapes.h"
#include "support/test_fonts.h"

using namespace chalkleaf;
using namespace chalkleaf::page;

namespace {

// A page of 200 by 200 pt with margins of 20; node 1 is a paragraph, 2 another, 3 a figure, 4 a box
// to tick, 5 another.
struct Inspected {
  type::Typesetter typesetter{support::test_fonts()};
  DisplayList list;

  Inspected() {
    list.pages.push_back({{Length::pt(200), Length::pt(200)}, {}});
    list.tree.resize(6);
    list.tree[3].role = Role::kFigure;
    list.tree[4].role = Role::kForm;
    list.tree[5].role = Role::kForm;
  }

  // Its baseline at (x, y): capitals of 10 pt reach about 7 pt above it, descenders 2.5 below.
  void text(const std::string& words, double x, double y, NodeId node = 1) {
    type::Inline one;
    one.text = words;
    one.style =
        support::test_fonts().style("card", type::Weight::kRegular, type::Slant::kUpright).value();
    one.size = Length::pt(10);
    TextBlock block{{one}, Length::pt(12), Align::kStart, Owner::of(node)};
    Fragment set = Layout(typesetter).place({block}, Length::pt(500));
    const Length up = std::get<TextItem>(set.items.front()).baseline.y;
    append_moved(list.pages[0].items, std::move(set.items), Length::pt(x), Length::pt(y) - up);
  }
  void rectangle(Owner owner, double x, double y, double width, double height) {
    PathItem path;
    path.owner = owner;
    path.steps = rounded_rectangle(
        {Length::pt(x), Length::pt(y), Length::pt(width), Length::pt(height)}, Length());
    path.stroke = Stroke{kBlack, Length::pt(1), false, {}};
    list.pages[0].items.emplace_back(std::move(path));
  }
  void frame(double x, double y, double width, double height) {
    rectangle(Owner::none(Artifact::kLayout), x, y, width, height);
  }
  std::vector<std::string> flaws() const {
    std::vector<std::string> out;
    for (const Flaw& flaw : inspect(list, support::test_fonts(), Insets::all(Length::pt(20))))
      out.push_back(describe(flaw));
    return out;
  }
  std::string only() const {
    const auto all = flaws();
    return all.size() == 1 ? all.front() : std::to_string(all.size()) + " flaws";
  }
};

}  // namespace

TEST_CASE_METHOD(Inspected, "a page in order has no flaw") {
  frame(30, 30, 140, 140);
  text("Dish hold", 35, 50);
  text("lower back down", 35, 62, 2);  // the next line
  rectangle(Owner::of(3), 35, 80, 50, 30);
  rectangle(Owner::of(4), 100, 80, 12, 12);
  rectangle(Owner::of(5), 113, 80, 12, 12);
  text("Mon", 128, 90);
  CHECK(flaws().empty());
}

TEST_CASE_METHOD(Inspected, "text on text, on one line or between two") {
  text("Dish hold", 35, 50);
  text("Arch hold", 60, 50, 2);
  CHECK_THAT(only(), Catch::StartsWith("page 1 at 60.0,") &&
                         Catch::EndsWith("text on text: ‘Dish hold’, ‘Arch hold’"));
  list.pages[0].items.clear();
  text("Dish hold", 35, 50);
  text("Arch hold", 35, 57, 1);  // of the same paragraph, too
  CHECK_THAT(only(), Catch::Contains("text on text"));
}

TEST_CASE_METHOD(Inspected, "text on a figure, a picture, a box and a frame's edge") {
  rectangle(Owner::of(3), 60, 40, 50, 30);
  text("Dish hold", 35, 50);
  CHECK_THAT(only(), Catch::Contains("text on a figure: a figure, ‘Dish hold’"));
  list.pages[0].items.clear();
  list.pages[0].items.emplace_back(
      PictureItem{Owner::of(3),
                  {Length::pt(60), Length::pt(40), Length::pt(50), Length::pt(30)},
                  "a.png",
                  nullptr});
  text("Dish hold", 35, 50);
  CHECK_THAT(only(), Catch::Contains("text on a figure: a picture, ‘Dish hold’"));
  list.pages[0].items.clear();
  rectangle(Owner::of(4), 60, 40, 12, 12);
  text("Dish hold", 35, 50);
  CHECK_THAT(only(), Catch::Contains("text on a box: a box, ‘Dish hold’"));
  list.pages[0].items.clear();
  frame(30, 30, 30, 30);  // its right edge
  text("Dish hold", 35, 50);
  CHECK_THAT(only(), Catch::Contains("text on a line"));
}

TEST_CASE_METHOD(Inspected, "boxes on boxes, and a figure on a frame's edge") {
  rectangle(Owner::of(4), 60, 40, 12, 12);
  rectangle(Owner::of(5), 70, 40, 12, 12);
  CHECK_THAT(only(), Catch::Contains("one box on another"));
  list.pages[0].items.clear();
  frame(30, 30, 60, 60);
  rectangle(Owner::of(3), 60, 50, 50, 30);
  CHECK_THAT(only(), Catch::Contains("a figure or box on a line"));
}

TEST_CASE_METHOD(Inspected, "what stands in the margin or off the paper") {
  text("Dish hold", 150, 50);
  CHECK_THAT(only(), Catch::Contains("in the margin: ‘Dish hold’"));
  list.pages[0].items.clear();
  text("Dish hold", 40, 185);
  CHECK_THAT(only(), Catch::Contains("in the margin: ‘Dish hold’"));
  list.pages[0].items.clear();
  rectangle(Owner::of(3), 10, 50, 30, 30);
  CHECK_THAT(only(), Catch::Contains("in the margin: a figure"));
  list.pages[0].items.clear();
  frame(30, 150, 60, 60);
  CHECK_THAT(only(), Catch::Contains("in the margin: a line"));
}
