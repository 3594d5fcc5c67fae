// Pictures on the sheets: how large, whose, and together with what.
#include <catch2/catch.hpp>

#include "sheet_fixture.h"
#include "support/test_fonts.h"

using namespace chalkleaf;
using namespace chalkleaf::support;
using sheet::Kind;

namespace {

plan::Note picture(int width, int height, const std::string& text = "Two children on a line") {
  plan::Note out;
  out.kind = plan::Note::Kind::kPicture;
  out.words = words(text);
  out.picture = "/c/pictures/on a line.png";
  out.picture_width = width;
  out.picture_height = height;
  return out;
}

plan::Session with_note(const plan::Note& note, int drills = 1) {
  plan::Session out = session(drills);
  out.parts[0].steps.emplace_back(note);
  return out;
}

std::vector<std::pair<std::size_t, page::PictureItem>> pictures_of(const page::DisplayList& list) {
  std::vector<std::pair<std::size_t, page::PictureItem>> out;
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    for (const page::Item& item : list.pages[i].items) {
      if (const auto* one = std::get_if<page::PictureItem>(&item)) out.emplace_back(i, *one);
    }
  }
  return out;
}

page::PictureItem only_picture(const Made& made) {
  const auto all = pictures_of(made.list);
  REQUIRE(all.size() == 1);
  check_inside_paper(made.list);
  check_tree(made.list);
  return all[0].second;
}

}  // namespace

TEST_CASE("a small picture is printed as large as a browser shows it") {
  // CSS Values and Units 3, 5.2: a pixel is 1/96 inch, three quarters of a point.
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    const auto item = only_picture(make_sheet(kind, with_note(picture(200, 80)), Paper::kA4));
    CHECK(item.place.width == Length::pt(150));
    CHECK(item.place.height == Length::pt(60));
    CHECK(item.source == "/c/pictures/on a line.png");
  }
}

TEST_CASE("a large picture is as wide as the column or a third of the page high") {
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    for (const Paper paper : {Paper::kA4, Paper::kA5}) {
      const Size page = paper_size(paper);
      const auto wide = only_picture(make_sheet(kind, with_note(picture(8000, 1000)), paper));
      CHECK(wide.place.width < page.width);
      CHECK(wide.place.width > page.width * 4 / 5);
      CHECK(wide.place.width.in_pt() / wide.place.height.in_pt() == Approx(8).epsilon(0.001));
      const auto high = only_picture(make_sheet(kind, with_note(picture(3000, 4000)), paper));
      CHECK(high.place.height == page.height / 3);
      CHECK(high.place.width.in_pt() / high.place.height.in_pt() == Approx(0.75).epsilon(0.001));
      const auto line = only_picture(make_sheet(kind, with_note(picture(10'000, 1)), paper));
      CHECK(line.place.height >= Length::millipoints(100));
    }
  }
}

TEST_CASE("a picture is a Figure with its text, whatever the coach wrote") {
  const auto described = [](const plan::Note& note) {
    const Made made = make_sheet(Kind::kCoachCard, with_note(note), Paper::kA5);
    const page::PictureItem item = only_picture(made);
    REQUIRE(item.owner.node.has_value());
    const page::Node& node = made.list.tree.at(*item.owner.node);
    CHECK(node.role == page::Role::kFigure);
    return node.alternative_text;
  };
  CHECK(described(picture(20, 20)) == "Two children on a line");
  CHECK(described(picture(20, 20, "")) == "on a line");
  CHECK(described(picture(20, 20, " \t")) == "on a line");
}

TEST_CASE("a picture that was not read is its text") {
  const Made made = make_sheet(Kind::kCoachCard, with_note(picture(0, 0)), Paper::kA5);
  CHECK(pictures_of(made.list).empty());
  CHECK(made.count(page::Role::kFigure) == 0);
  CHECK(made.text().find("Two children on a line") != std::string::npos);
}

TEST_CASE("a picture of a drill stands with it, and one for families on their sheet alone") {
  plan::Session one = session(1);
  auto& drill = std::get<plan::Drill>(one.parts[0].steps[0]);
  drill.notes.push_back(picture(200, 80));
  only_picture(make_sheet(Kind::kCoachCard, one, Paper::kA5));
  const auto on_sheet = only_picture(make_sheet(Kind::kHomeSheet, one, Paper::kA4));
  CHECK(on_sheet.place.width <= Length::pt(150));
  drill.notes[0].reader = plan::Note::For::kFamily;
  CHECK(pictures_of(make_sheet(Kind::kCoachCard, one, Paper::kA5).list).empty());
  CHECK(pictures_of(make_sheet(Kind::kHomeSheet, one, Paper::kA4).list).size() == 1);
}

TEST_CASE("a picture is never parted from the drill before it") {
  // With more and more drills before it, the last of them comes to every place on the page.
  for (int drills = 3; drills < 26; ++drills) {
    const Made made =
        make_sheet(Kind::kCoachCard, with_note(picture(400, 300), drills), Paper::kA5);
    const auto all = pictures_of(made.list);
    REQUIRE(all.size() == 1);
    const std::string last = "number " + std::to_string(drills) + "!";
    std::string page_text;
    for (const page::Item& item : made.list.pages[all[0].first].items) {
      if (const auto* run = std::get_if<page::TextItem>(&item)) page_text += run->text + " ";
    }
    INFO(drills << ": " << page_text);
    CHECK(plain_spaces(page_text).find(last) != std::string::npos);
  }
}
