// Two pages on a sheet: the order against the trade's table for a booklet of eight, and what moves.
#include "page/impose.h"

#include <catch2/catch.hpp>

#include "base/paper.h"
#include "page/join.h"

namespace chalkleaf::page {
namespace {

const Stroke kLine{{}, Length::pt(0.5), false, {}};

/// Pages with one mark each, of a node each, at (10, 20) mm, and a bookmark there.
DisplayList pages(std::size_t count, Size size) {
  DisplayList list;
  list.info.language = "en";
  list.tree.push_back({});
  for (std::size_t i = 0; i < count; ++i) {
    Node node;
    node.role = Role::kP;
    list.tree.push_back(node);
    Page page{size, {}};
    page.items.emplace_back(
        PictureItem{Owner::of(static_cast<NodeId>(i + 1)),
                    {Length::mm(10), Length::mm(20), Length::mm(5), Length::mm(5)},
                    std::to_string(i + 1)});
    list.pages.push_back(std::move(page));
    list.outline.push_back({"page " + std::to_string(i + 1), 1, i, Length::mm(20)});
  }
  return list;
}

std::vector<const PictureItem*> pictures(const Page& page) {
  std::vector<const PictureItem*> out;
  for (const Item& item : page.items) {
    if (const auto* picture = std::get_if<PictureItem>(&item)) out.push_back(picture);
  }
  return out;
}

// The trade's table for eight pages (common practice, no source): sheet 1 has 8|1 and 2|7 on its
// back, sheet 2 has 6|3 and 4|5. Here pages count from 0.
TEST_CASE("eight pages fall into a booklet as printers lay them") {
  const std::vector<Halves> expected{{7, 0}, {1, 6}, {5, 2}, {3, 4}};
  CHECK(booklet_order(8) == expected);
  CHECK(booklet_order(4) == std::vector<Halves>{{3, 0}, {1, 2}});
  const auto sixteen = booklet_order(16);
  CHECK(sixteen.front() == Halves{15, 0});
  CHECK(sixteen.back() == Halves{7, 8});
}

// Folded and laid into each other, leaves are read front right, back left, from the outer sheet in,
// and then out again.
TEST_CASE("a booklet, folded, is read in order") {
  for (std::size_t count = 1; count <= 40; ++count) {
    const auto order = booklet_order(count);
    const std::size_t all = order.size() * 2;
    CHECK(all % 4 == 0);
    CHECK(all - count < 4);
    std::vector<std::optional<std::size_t>> leafed;
    for (std::size_t sheet = 0; sheet < order.size(); sheet += 2) {
      leafed.push_back(order[sheet].second);
      leafed.push_back(order[sheet + 1].first);
    }
    for (std::size_t sheet = order.size(); sheet > 0; sheet -= 2) {
      leafed.push_back(order[sheet - 1].second);
      leafed.push_back(order[sheet - 2].first);
    }
    for (std::size_t i = 0; i < all; ++i) {
      CHECK(leafed[i] == (i < count ? std::optional(i) : std::nullopt));
    }
  }
  CHECK(booklet_order(0).empty());
}

TEST_CASE("pages stand one after the other, a single one twice") {
  CHECK(two_up_order(3) == std::vector<Halves>{{0, 1}, {2, std::nullopt}});
  CHECK(two_up_order(1) == std::vector<Halves>{{0, 0}});
  CHECK(twice_order(2) == std::vector<Halves>{{0, 0}, {1, 1}});
}

TEST_CASE("pages touch the middle of the sheet, and their marks go with them") {
  const Size a5 = paper_size(Paper::kA5);
  const Size sheet = paper_size(Paper::kA4Landscape);
  const DisplayList out = impose(pages(2, a5), two_up_order(2), {sheet, MiddleMark::kCut, kLine});
  REQUIRE(out.pages.size() == 1);
  CHECK(out.pages[0].size == sheet);
  const auto both = pictures(out.pages[0]);
  REQUIRE(both.size() == 2);
  CHECK(both[0]->place.x == sheet.width / 2 - a5.width + Length::mm(10));
  CHECK(both[1]->place.x == sheet.width / 2 + Length::mm(10));
  CHECK(both[0]->place.y == Length::mm(20));
  CHECK(both[1]->owner == Owner::of(2));
  REQUIRE(out.outline.size() == 2);
  CHECK(out.outline[1].page == 0);
  CHECK(out.outline[1].y == Length::mm(20));
}

TEST_CASE("pages on their side stand above each other") {
  const Size half = paper_size(Paper::kHalfLetterLandscape);
  const Size sheet = paper_size(Paper::kLetter);
  const DisplayList out = impose(pages(2, half), two_up_order(2), {sheet, MiddleMark::kCut, kLine});
  const auto both = pictures(out.pages[0]);
  REQUIRE(both.size() == 2);
  CHECK(both[0]->place.x == Length::mm(10));
  CHECK(both[1]->place.y == sheet.height / 2 + Length::mm(20));
  CHECK(out.outline[1].y == sheet.height / 2 + Length::mm(20));
}

TEST_CASE("a page that is set twice is content once") {
  const DisplayList out = impose(pages(2, paper_size(Paper::kA5)), twice_order(2),
                                 {paper_size(Paper::kA4Landscape), MiddleMark::kCut, kLine});
  REQUIRE(out.pages.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    const auto both = pictures(out.pages[i]);
    REQUIRE(both.size() == 2);
    CHECK(both[0]->owner == Owner::of(static_cast<NodeId>(i + 1)));
    CHECK_FALSE(both[1]->owner.node.has_value());
    CHECK(both[1]->source == both[0]->source);
  }
}

TEST_CASE("the middle is marked at both ends, by artifacts, a fold by dashes") {
  for (const MiddleMark mark : {MiddleMark::kCut, MiddleMark::kFold}) {
    const Size sheet = paper_size(Paper::kA4Landscape);
    const DisplayList out =
        impose(pages(4, paper_size(Paper::kA5)), booklet_order(4), {sheet, mark, kLine});
    for (const Page& page : out.pages) {
      std::vector<const PathItem*> marks;
      for (const Item& item : page.items) {
        if (const auto* path = std::get_if<PathItem>(&item)) marks.push_back(path);
      }
      REQUIRE(marks.size() == 2);
      for (const PathItem* path : marks) {
        CHECK_FALSE(path->owner.node.has_value());
        CHECK(path->stroke.value().dashes.empty() == (mark == MiddleMark::kCut));
        for (const PathStep& step : path->steps) {
          CHECK(step.a.x == sheet.width / 2);
          CHECK((step.a.y <= Length::mm(5) || step.a.y >= sheet.height - Length::mm(5.001)));
        }
      }
    }
  }
}

TEST_CASE("the tree and the bookmarks of a booklet keep the order of reading") {
  DisplayList list = pages(6, paper_size(Paper::kA5));
  const std::size_t nodes = list.tree.size();
  const DisplayList out = impose(std::move(list), booklet_order(6),
                                 {paper_size(Paper::kA4Landscape), MiddleMark::kFold, kLine});
  REQUIRE(out.pages.size() == 4);
  CHECK(out.tree.size() == nodes);
  // Pages 1 to 6 lie on sides 1, 2, 3, 4, 4, 3.
  const std::vector<std::size_t> sides{0, 1, 2, 3, 3, 2};
  for (std::size_t i = 0; i < 6; ++i) {
    CHECK(out.outline[i].title == "page " + std::to_string(i + 1));
    CHECK(out.outline[i].page == sides[i]);
    bool found = false;
    for (const PictureItem* picture : pictures(out.pages[sides[i]]))
      found = found || picture->owner == Owner::of(static_cast<NodeId>(i + 1));
    CHECK(found);
  }
}

TEST_CASE("joined documents keep their own trees, marks and bookmarks") {
  const Size a5 = paper_size(Paper::kA5);
  DisplayList other = pages(1, a5);
  other.info.language = "nl";
  std::vector<DisplayList> documents;
  documents.push_back(pages(2, a5));
  documents.push_back(std::move(other));
  DocumentInfo info;
  info.title = "Both";
  info.language = "en";
  const DisplayList out = join(std::move(documents), info);
  CHECK(out.info.title == "Both");
  REQUIRE(out.pages.size() == 3);
  REQUIRE(out.tree.size() == 1 + 3 + 2);
  CHECK(out.tree[0].role == Role::kDocument);
  CHECK(out.tree[1].role == Role::kSect);
  CHECK(out.tree[1].language.empty());
  CHECK(out.tree[3].parent == 1);
  CHECK(out.tree[4].role == Role::kSect);
  CHECK(out.tree[4].parent == 0);
  CHECK(out.tree[4].language == "nl");
  CHECK(out.tree[5].parent == 4);
  CHECK(pictures(out.pages[1])[0]->owner == Owner::of(3));
  CHECK(pictures(out.pages[2])[0]->owner == Owner::of(5));
  REQUIRE(out.outline.size() == 3);
  CHECK(out.outline[2].page == 2);
}

}  // namespace
}  // namespace chalkleaf::page
