// Artworks in the file, read back by poppler and qpdf.
#include "pdf/artworks.h"

#include <catch2/catch.hpp>

#include "pdf/sample.h"

using namespace chalkleaf;
using namespace chalkleaf::pdf;

namespace {

page::PathItem triangle(Length size) {
  using Kind = page::PathStep::Kind;
  page::PathItem out;
  out.steps = {{Kind::kMove, {size / 10, size / 5}, {}, {}},
               {Kind::kLine, {size, size / 3}, {}, {}},
               {Kind::kCurve, {size, size}, {size / 2, size}, {size / 4, size * 3 / 4}},
               {Kind::kClose, {}, {}, {}}};
  out.fill = Colour{200, 30, 60};
  out.stroke = page::Stroke{Colour{0, 0, 90}, size / 20, true, {size / 10, size / 10}};
  return out;
}

std::shared_ptr<const page::Artwork> art(double side) {
  const Length size = points(side);
  return std::make_shared<const page::Artwork>(Size{size, size},
                                               std::vector<page::PathItem>{triangle(size)});
}

page::NodeId figure(Draft& d) {
  const page::NodeId node = d.node(page::Role::kFigure);
  d[node].alternative_text = "A triangle";
  return node;
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++out;
  return out;
}

}  // namespace

TEST_CASE("an artwork is drawn as its paths would be, at the size of its box") {
  // The same triangle as an artwork of half the size, and as paths of the page's own.
  Draft shown;
  shown.list.pages.back().items.emplace_back(page::ArtItem{
      page::Owner::of(figure(shown)), {points(60), points(90), points(100), points(100)}, art(50)});
  Draft drawn;
  page::PathItem path = triangle(points(100));
  path.owner = page::Owner::of(figure(drawn));
  for (page::PathStep& step : path.steps) {
    for (Point* p : {&step.a, &step.b, &step.c}) *p = {p->x + points(60), p->y + points(90)};
  }
  drawn.list.pages.back().items.emplace_back(path);
  const auto rendered = [](const std::string& name, const page::DisplayList& list) {
    const std::string file = saved(name + ".pdf", written(list));
    const std::string stem = file.substr(0, file.size() - 4);
    REQUIRE(support::run("pdftoppm -r 100 -gray -singlefile " + file + " " + stem).status == 0);
    return stem + ".pgm";
  };
  // Where an edge falls between two pixels a renderer may smooth it a shade otherwise; and the
  // triangle itself is dark on thousands of them.
  const support::Ran ran = support::run(
      "/usr/bin/python3 -c \"from PIL import Image, ImageChops; import sys; "
      "a, b = (Image.open(p) for p in sys.argv[1:]); "
      "print(sum(v > 128 for v in a.point(lambda v: 255 - v).getdata()) > 1000, "
      "max(ImageChops.difference(a, b).getdata()) < 24)\" " +
      rendered("art-shown", shown.list) + " " + rendered("art-drawn", drawn.list) + " 2>&1");
  CHECK(ran.output == "True True\n");
}

TEST_CASE("an artwork stands in the file once, however often and wherever it is shown") {
  Draft d;
  const auto same = art(50);
  const auto show = [&](const std::shared_ptr<const page::Artwork>& one, double x) {
    d.list.pages.back().items.emplace_back(page::ArtItem{
        page::Owner::of(figure(d)), {points(x), points(90), points(40), points(40)}, one});
  };
  show(same, 20);
  show(same, 80);
  show(art(50), 140);  // made again, and alike
  d.add_page();
  show(same, 20);
  const std::string one = written(d.list);
  CHECK(count(one, "/Subtype /Form") == 1);
  show(art(60), 80);
  const std::string two = written(d.list);
  CHECK(count(two, "/Subtype /Form") == 2);
  const std::string path = saved("art-once.pdf", two);
  CHECK(findings(path) == "");
  CHECK(support::run("qpdf --check " + path).status == 0);
}

TEST_CASE("what is written of an artwork is made once") {
  const auto one = art(50);
  Kept kept;
  int made = 0;
  const auto make = [&] {
    ++made;
    return std::string(one->paths().size(), 'x');
  };
  CHECK(kept.bytes(one, make) == "x");
  CHECK(kept.bytes(one, make) == "x");
  CHECK(made == 1);
  CHECK(kept.bytes(art(50), make) == "x");
  CHECK(made == 2);
  CHECK(one.use_count() == 2);  // nothing else comes to have its address
}

// ISO 32000-1, 8.10.1: a form begins with the page's graphics state, so it has to set its own.
TEST_CASE("an artwork has its own colours and lines, whatever the page had before it") {
  const auto shown_after = [](Colour before) {
    Draft d;
    page::PathItem other = triangle(points(30));
    other.owner = page::Owner::none(page::Artifact::kLayout);
    other.fill = before;
    other.stroke->width = points(9);
    other.stroke->round = false;
    other.stroke->dashes = {};
    d.list.pages.back().items.emplace_back(other);
    d.list.pages.back().items.emplace_back(page::ArtItem{
        page::Owner::of(figure(d)), {points(60), points(90), points(100), points(100)}, art(50)});
    const std::string file = saved("art-state.pdf", written(d.list));
    // Only the artwork's part of the page: from 55 pt at 100 dots an inch.
    return support::run("pdftoppm -r 100 -x 76 -y 118 -W 160 -H 160 " + file + " | md5sum").output;
  };
  CHECK(shown_after(Colour{200, 30, 60}) == shown_after(Colour{0, 255, 0}));
}
