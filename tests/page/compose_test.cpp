#include "page/compose.h"

#include <catch2/catch.hpp>

#include "page/shapes.h"
#include "support/test_fonts.h"

using namespace chalkleaf;
using namespace chalkleaf::page;

namespace {

// A black box of this height; its left edge carries the number, so that a test can see which one it
// is.
Block numbered(int number, double height) {
  PathItem item;
  item.owner = Owner::of(static_cast<NodeId>(number));
  item.steps =
      rounded_rectangle({Length(), Length(), Length::pt(10), Length::pt(height)}, Length());
  item.fill = kBlack;
  return {DrawingBlock{{Length::pt(10), Length::pt(height)}, {item}, {}}};
}

Slab slab(int number, double height, bool keep = false) {
  return {numbered(number, height), {}, keep};
}

// A page of 100 pt between margins of 10 pt.
Flow flow_of(std::vector<Section> sections) {
  Flow flow;
  flow.paper = {Length::pt(120), Length::pt(120)};
  flow.margins = Insets::all(Length::pt(10));
  flow.sections = std::move(sections);
  flow.tree.resize(100);
  flow.info.title = "t";
  flow.info.language = "en";
  return flow;
}

std::vector<std::vector<std::uint32_t>> pages_of(const Composed& composed) {
  std::vector<std::vector<std::uint32_t>> out;
  for (const Page& page : composed.list.pages) {
    out.emplace_back();
    for (const Item& item : page.items)
      out.back().push_back(std::get<PathItem>(item).owner.node.value_or(0));
  }
  return out;
}

using Pages = std::vector<std::vector<std::uint32_t>>;

}  // namespace

TEST_CASE("slabs fill pages and are never split") {
  type::Typesetter typesetter(support::test_fonts());
  const auto composed = compose(flow_of({{{slab(1, 60), slab(2, 30), slab(3, 20)}}}), typesetter);
  CHECK(pages_of(composed) == Pages{{1, 2}, {3}});
  CHECK(composed.free_on_last_page == Length::pt(80));
}

TEST_CASE(
    "a heading keeps its first drill, and a broken section gets its continuation as an artifact") {
  type::Typesetter typesetter(support::test_fonts());
  Section first{{slab(1, 70), slab(2, 20)}};
  Section second{{slab(3, 10, true), slab(4, 80), slab(5, 40)}};
  Block again = numbered(9, 5);
  std::get<DrawingBlock>(again.content).paths.front().owner = Owner::none(Artifact::kHeader);
  second.continuation = again;
  const auto composed = compose(flow_of({first, second}), typesetter);
  // 3 does not stay alone at the foot of page one; page three begins with the continuation (0: no
  // node).
  CHECK(pages_of(composed) == Pages{{1, 2}, {3, 4}, {0, 5}});
}

TEST_CASE("a slab has its own continuation, and headings inside it are found in the outline") {
  type::Typesetter typesetter(support::test_fonts());
  Block again = numbered(9, 5);
  std::get<DrawingBlock>(again.content).paths.front().owner = Owner::none(Artifact::kHeader);
  Section section{{slab(1, 90), slab(2, 60), slab(3, 60)}};
  section.slabs[1].continuation = std::make_shared<const Block>(again);
  section.slabs[2].inner = {{Length::pt(25), OutlineEntry{"Beams", 2, 0, {}}}};
  const auto composed = compose(flow_of({section}), typesetter);
  CHECK(pages_of(composed) == Pages{{1}, {0, 2}, {3}});
  REQUIRE(composed.list.outline.size() == 1);
  CHECK(composed.list.outline[0].page == 2);
  CHECK(composed.list.outline[0].y == Length::pt(35));
}

TEST_CASE("space before a slab is dropped at the top of a page") {
  type::Typesetter typesetter(support::test_fonts());
  Section section{{slab(1, 90), slab(2, 95)}};
  section.slabs[0].space_before = Length::pt(50);
  section.slabs[1].space_before = Length::pt(50);
  const auto composed = compose(flow_of({section}), typesetter);
  CHECK(pages_of(composed) == Pages{{1}, {2}});
  CHECK(std::get<PathItem>(composed.list.pages[1].items[0]).steps.front().a.y == Length::pt(10));
}

TEST_CASE("what is taller than a page is set alone and reported as an error") {
  type::Typesetter typesetter(support::test_fonts());
  const Source source("p.md", "- Very long drill");
  Section section{{slab(1, 20), slab(2, 300), slab(3, 20)}};
  section.slabs[1].origin = {&source, 2, 17};
  const auto composed = compose(flow_of({section}), typesetter);
  CHECK(pages_of(composed) == Pages{{1}, {2}, {3}});
  Diagnostics diagnostics;
  report(composed, "coach card", diagnostics);
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(diagnostics.all()[0].name == "text-overflow");
  CHECK(diagnostics.all()[0].severity == Severity::kError);
  CHECK(diagnostics.all()[0].span.text() == "Very long drill");
}

TEST_CASE("every page has its foot, which knows how many there are") {
  type::Typesetter typesetter(support::test_fonts());
  Flow flow = flow_of({{{slab(1, 60), slab(2, 60), slab(3, 60)}}});
  std::vector<std::pair<std::size_t, std::size_t>> asked;
  flow.foot = [&](std::size_t page, std::size_t pages) {
    asked.emplace_back(page, pages);
    return numbered(50, 10);
  };
  const auto composed = compose(std::move(flow), typesetter);
  REQUIRE(composed.list.pages.size() == 3);
  CHECK(asked.back() == std::pair<std::size_t, std::size_t>{2, 3});
  for (const Page& page : composed.list.pages) {
    CHECK(std::get<PathItem>(page.items.back()).steps.front().a.y == Length::pt(100));
  }
}

TEST_CASE("outline entries know their page") {
  type::Typesetter typesetter(support::test_fonts());
  Section section{{slab(1, 90), slab(2, 90)}};
  section.slabs[1].outline = OutlineEntry{"Beam", 2, 0, {}};
  const auto composed = compose(flow_of({section}), typesetter);
  REQUIRE(composed.list.outline.size() == 1);
  CHECK(composed.list.outline[0].page == 1);
  CHECK(composed.list.outline[0].y == Length::pt(10));
}

TEST_CASE("a script that no font has is told of once, signs each") {
  Composed composed;
  const auto missing = [&](const std::string& character, const std::string& script) {
    composed.problems.push_back({type::TextProblem::Kind::kMissingGlyph, character, {}, script});
  };
  missing("\u0915", "Devanagari");
  missing("\u2042", "");
  missing("\u0916", "Devanagari");
  missing("\u4E2D", "Han");
  missing("\u2043", "");
  Diagnostics diagnostics;
  report(composed, "coach card", diagnostics);
  std::vector<std::string> messages;
  for (const Diagnostic& one : diagnostics.all()) messages.push_back(one.message);
  CHECK(
      messages ==
      std::vector<std::string>{
          "no font of the coach card has the Devanagari character ‘\u0915’ (U+0915); a box is "
          "printed in the place of each that is missing",
          "no font of the coach card has the character ‘\u2042’ (U+2042); a box is printed in its "
          "place",
          "no font of the coach card has the Han character ‘\u4E2D’ (U+4E2D); a box is printed in "
          "the place of each that is missing",
          "no font of the coach card has the character ‘\u2043’ (U+2043); a box is printed in its "
          "place"});
  CHECK(diagnostics.all()[0].hint ==
        "add a font for Devanagari to fonts/catalogue.yaml, or write it in other letters");
}

namespace {

// Of what is set, whether the node is still there: its text is the number it had.
std::vector<std::string> texts(const Composed& composed) {
  std::vector<std::string> out;
  for (const Page& page : composed.list.pages) {
    for (const Item& item : page.items) {
      const Owner owner = owner_of(item);
      out.push_back(composed.list.tree.at(owner.node.value()).actual_text);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("of two ways to set a slab the one that fills the page is taken, with its nodes alone") {
  type::Typesetter typesetter(support::test_fonts());
  const auto made = [&](double last) {
    // 1 and 2 each in 45, or both in 60.
    Section section{{slab(1, 45), slab(2, 45), slab(4, last)}};
    section.slabs[0].nodes = {1, 2};
    section.slabs[1].nodes = {2, 3};
    section.slabs[0].alternatives.push_back({numbered(3, 60), 2, 0, {}, {3, 4}});
    Flow flow = flow_of({section});
    flow.tree.resize(5);
    for (std::size_t i = 0; i < 5; ++i) flow.tree[i].actual_text = std::to_string(i);
    return compose(std::move(flow), typesetter);
  };
  const Composed together = made(40);  // one page instead of two
  CHECK(texts(together) == std::vector<std::string>{"3", "4"});
  CHECK(together.list.tree.size() == 3);
  CHECK(together.list.pages.size() == 1);
  const Composed apart = made(95);  // fuller
  CHECK(texts(apart) == std::vector<std::string>{"1", "2", "4"});
  CHECK(apart.list.tree.size() == 4);
}

TEST_CASE("what a page has left goes between its slabs and into them, up to what looks calm") {
  type::Typesetter typesetter(support::test_fonts());
  const auto place = [](const Composed& composed, std::size_t page, std::size_t item) {
    return std::get<PathItem>(composed.list.pages[page].items[item]).steps.front().a.y.in_pt() - 10;
  };
  const auto with_spaces = [&](double second) {
    Section section{{slab(1, 20), slab(2, second), slab(3, 20, true), slab(4, 20), slab(5, 95)}};
    for (Slab& one : section.slabs) one.space_before = Length::pt(4);
    return compose(flow_of({section}), typesetter);
  };
  // 1, 2, 3 and 4 take 96 with their spaces: 2 go above 2 and 3 each, none between 3 and 4, which
  // belong together.
  const Composed tight = with_spaces(24);
  CHECK(place(tight, 0, 1) == Approx(20 + 4 + 2));
  CHECK(place(tight, 0, 2) == Approx(20 + 4 + 2 + 24 + 4 + 2));
  CHECK(place(tight, 0, 3) == Approx(20 + 4 + 2 + 24 + 4 + 2 + 20 + 4));
  // Of a larger foot no gap takes more than half of itself.
  const Composed loose = with_spaces(10);
  CHECK(place(loose, 0, 1) == Approx(20 + 4 + 2));
  CHECK(place(loose, 0, 2) == Approx(20 + 4 + 2 + 10 + 4 + 2));
  // The last page is left as it is.
  Section last{{slab(1, 20), slab(2, 20)}};
  last.slabs[1].space_before = Length::pt(4);
  CHECK(place(compose(flow_of({last}), typesetter), 0, 1) == Approx(24));
}
