// Figures on the sheets: how large, whose, and what they leave alone.
#include <catch2/catch.hpp>

#include "figure/read.h"
#include "sheet_fixture.h"
#include "support/test_fonts.h"

using namespace chalkleaf;
using namespace chalkleaf::support;
using sheet::Kind;

namespace {

constexpr const char* kShapes = R"(figures:
  tall: {touches: feet, joints: {shoulder: 180}, alt: Stands with arms up.}
  upright: {touches: feet, alt: Stands.}
  low: {touches: [seat, heels], lean: 0, joints: {hip: 90}, alt: Sits with long legs.}
  long: {touches: back, joints: {shoulder: 180}, alt: Lies with arms up.}
  three: {frames: [upright, low, long], show: row, alt: 'Stands, sits, lies.'}
)";

/// A catalogue of few figures, and what is drawn from it.
struct Shapes {
  SourcePtr source;
  std::unique_ptr<const figure::Catalogue> catalogue;
  std::unique_ptr<const figure::Drawings> drawings;
};
const Shapes& shapes() {
  static const Shapes all = [] {
    Shapes out;
    Diagnostics diagnostics;
    out.source = source::load_text("shapes.yaml", kShapes, diagnostics);
    figure::Descriptions descriptions;
    descriptions.take(out.source, false, diagnostics);
    out.catalogue = std::make_unique<const figure::Catalogue>(descriptions.resolve(diagnostics));
    out.drawings = std::make_unique<const figure::Drawings>(*out.catalogue);
    REQUIRE(diagnostics.all().empty());
    return out;
  }();
  return all;
}

/// A session of drills that name these figures; an empty name is a drill without one.
plan::Session with_figures(const std::vector<std::string>& figures, plan::Place place) {
  plan::Session out = session(static_cast<int>(figures.size()), place);
  for (std::size_t i = 0; i < figures.size(); ++i) {
    auto& drill = std::get<plan::Drill>(out.parts[0].steps[i]);
    if (!figures[i].empty()) drill.figures.push_back(words(figures[i]));
  }
  return out;
}
Made home(const std::vector<std::string>& figures, Paper paper = Paper::kA4) {
  return make_sheet(Kind::kHomeSheet, with_figures(figures, plan::Place::kHome), paper, {},
                    shapes().drawings.get());
}
Made card(const plan::Session& session, const figure::Drawings* drawings) {
  return make_sheet(Kind::kCoachCard, session, Paper::kA5, {}, drawings);
}

struct Extent {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
  void take(double x, double y) {
    left = std::min(left, x), right = std::max(right, x);
    top = std::min(top, y), bottom = std::max(bottom, y);
  }
  double width() const { return right - left; }
  double height() const { return bottom - top; }
};
Extent extent_of(const page::PathItem& path) {
  Extent out;
  for (const page::PathStep& step : path.steps) {
    if (step.kind == page::PathStep::Kind::kClose) continue;
    out.take(step.a.x.in_pt(), step.a.y.in_pt());
    if (step.kind != page::PathStep::Kind::kCurve) continue;
    out.take(step.b.x.in_pt(), step.b.y.in_pt());
    out.take(step.c.x.in_pt(), step.c.y.in_pt());
  }
  return out;
}

/// A figure as it stands on its page, in points.
struct Drawn {
  page::NodeId node = 0;
  std::string alternative;
  Extent extent;
  std::vector<std::string> numbers;  ///< the texts that are part of it
};
std::vector<Drawn> figures_of(const page::DisplayList& list) {
  std::vector<Drawn> out;
  for (page::NodeId id = 0; id < list.tree.size(); ++id) {
    if (list.tree[id].role != page::Role::kFigure) continue;
    Drawn one{id, list.tree[id].alternative_text, {}, {}};
    for (const page::Page& page : list.pages) {
      for (const page::Item& item : page.items) {
        if (const auto* art = std::get_if<page::ArtItem>(&item)) {
          if (art->owner.node != id) continue;
          const Rect& at = art->place;
          const Size own = art->art->size();
          const auto x = [&](double v) {
            return (at.x + at.width.scaled(v / own.width.in_pt())).in_pt();
          };
          const auto y = [&](double v) {
            return (at.y + at.height.scaled(v / own.height.in_pt())).in_pt();
          };
          for (const page::PathItem& path : art->art->paths()) {
            const Extent e = extent_of(path);
            one.extent.take(x(e.left), y(e.top));
            one.extent.take(x(e.right), y(e.bottom));
          }
        } else if (const auto* text = std::get_if<page::TextItem>(&item)) {
          if (text->owner.node == id) one.numbers.push_back(text->text);
        }
      }
    }
    out.push_back(std::move(one));
  }
  return out;
}

/// Points a metre of the gymnast's, from the same points in the drawing and on the page.
double scale_of(const Drawn& drawn, const std::string& name) {
  const auto scene = shapes().drawings->find(name, 10, figure::Extent::kWhole);
  Extent metres;
  for (const figure::Shape& shape : scene->shapes) {
    for (const figure::Step& step : shape.steps) {
      if (step.kind == figure::Step::Kind::kClose) continue;
      metres.take(step.a.x, step.a.y);
      if (step.kind != figure::Step::Kind::kCurve) continue;
      metres.take(step.b.x, step.b.y);
      metres.take(step.c.x, step.c.y);
    }
  }
  CHECK(drawn.extent.width() / metres.width() ==
        Approx(drawn.extent.height() / metres.height()).epsilon(0.01));  // not stretched
  return drawn.extent.height() / metres.height();
}

const page::TextItem& text_item(const page::DisplayList& list, const std::string& begin) {
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* text = std::get_if<page::TextItem>(&item);
      if (text != nullptr && text->text.starts_with(begin)) return *text;
    }
  }
  FAIL("no text begins with " << begin);
  throw std::logic_error("unreachable");
}

/// The top of the smallest frame around a spot.
double frame_above(const page::DisplayList& list, Point spot) {
  Extent best;
  double smallest = 1e18;
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* path = std::get_if<page::PathItem>(&item);
      if (path == nullptr || !path->stroke || path->owner.node) continue;
      const Extent e = extent_of(*path);
      const double x = spot.x.in_pt(), y = spot.y.in_pt();
      if (x < e.left || x > e.right || y < e.top || y > e.bottom) continue;
      if (e.width() * e.height() >= smallest) continue;
      smallest = e.width() * e.height();
      best = e;
    }
  }
  REQUIRE(smallest < 1e18);
  return best.top;
}

/// Every text of the pages with its place and size, without figures' numbers.
std::vector<std::string> texts_in_place(const page::DisplayList& list) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    for (const page::Item& item : list.pages[i].items) {
      const auto* text = std::get_if<page::TextItem>(&item);
      if (text == nullptr) continue;
      out.push_back(std::to_string(i) + " " + std::to_string(text->baseline.x.in_pt()) + " " +
                    std::to_string(text->baseline.y.in_pt()) + " " +
                    std::to_string(text->size.in_pt()) + " " + text->text);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a figure on a sheet is a Figure with its words") {
  const Made made = home({"tall", "low"});
  const auto figures = figures_of(made.list);
  REQUIRE(figures.size() == 2);
  CHECK(figures[0].alternative == "Stands with arms up.");
  CHECK(figures[1].alternative == "Sits with long legs.");
  for (const Drawn& one : figures) CHECK(one.extent.height() > 0);
  check_tree(made.list);
  check_inside_paper(made.list);
  CHECK(made.diagnostics.all().empty());
}

TEST_CASE("no figure is higher than the look's, however many drills there are") {
  for (const Paper paper : {Paper::kA4, Paper::kA5}) {
    for (const std::size_t drills : {1U, 2U, 4U, 12U}) {
      INFO(drills);
      const Made made = home(std::vector<std::string>(drills, "tall"), paper);
      const auto figures = figures_of(made.list);
      REQUIRE(figures.size() == drills);
      // The sheet may be set larger as a whole; by how much, its type says.
      const double set = text_item(made.list, "Shape").size.in_pt() / 16;  // `home: drill` is 16 pt
      const double most = classic_theme()->home.figure.in_pt() * set;
      for (const Drawn& one : figures) {
        CHECK(one.extent.height() <= most + 0.05);
        CHECK(one.extent.height() > most * 0.6);  // two thirds, where that saves a page
      }
      check_inside_paper(made.list);
    }
  }
}

// One who lies leaves room above and is drawn larger, but never half as large again and more; the
// control points, by which it is measured here, reach a little further than the line.
TEST_CASE("the figures of a sheet have one scale, those that lie a larger one") {
  const Made made = home({"upright", "low", "low", "upright"});
  const auto figures = figures_of(made.list);
  REQUIRE(figures.size() == 4);
  const double scale = scale_of(figures[0], "upright");
  const double low = scale_of(figures[1], "low");
  CHECK(low > scale);
  CHECK(low < scale * 1.55);
  CHECK(scale_of(figures[2], "low") == Approx(low).epsilon(0.01));
  CHECK(scale_of(figures[3], "upright") == Approx(scale).epsilon(0.01));
}

TEST_CASE("a figure that is too wide for its panel is smaller, and stays in it") {
  const Made made = home({"upright", "three"});
  const auto figures = figures_of(made.list);
  REQUIRE(figures.size() == 2);
  CHECK(scale_of(figures[1], "three") < scale_of(figures[0], "upright") * 0.99);
  CHECK(figures[1].extent.width() < paper_size(Paper::kA4).width.in_pt() / 2);
  check_inside_paper(made.list);
}

TEST_CASE("the frames of a row are numbered, and the numbers are its own") {
  const auto figures = figures_of(home({"three"}).list);
  REQUIRE(figures.size() == 1);
  CHECK(figures[0].numbers == std::vector<std::string>{"1", "2", "3"});
  CHECK(figures_of(home({"tall"}).list)[0].numbers.empty());
}

TEST_CASE("of several figures of one drill each is drawn once, three at most") {
  plan::Session both = with_figures({"tall"}, plan::Place::kHome);
  auto& drill = std::get<plan::Drill>(both.parts[0].steps[0]);
  for (const char* name : {"tall", "low", "long", "upright"}) drill.figures.push_back(words(name));
  const Made made = make_sheet(Kind::kHomeSheet, both, Paper::kA4, {}, shapes().drawings.get());
  const auto figures = figures_of(made.list);
  REQUIRE(figures.size() == 3);
  CHECK(figures[0].alternative == "Stands with arms up.");
  CHECK(figures[1].alternative == "Sits with long legs.");
  CHECK(figures[2].alternative == "Lies with arms up.");
  CHECK(figures[0].extent.right < figures[1].extent.left);
  CHECK(figures[1].extent.right < figures[2].extent.left);
}

TEST_CASE("a panel without a figure begins with its name, beside one that has a figure") {
  const Made made = home({"tall", "", "low", "long"});
  CHECK(figures_of(made.list).size() == 3);
  const auto below_frame = [&](const std::string& name) {
    const page::TextItem& text = text_item(made.list, name);
    return (text.baseline.y.in_pt() - frame_above(made.list, text.baseline)) / text.size.in_pt();
  };
  const double bare = below_frame("Shape number 2");
  CHECK(bare < 2);                                  // padding and one line
  CHECK(below_frame("Shape number 1") > bare + 2);  // below its figure
  CHECK(below_frame("Shape number 3") > bare + 0.5);
}

TEST_CASE("names that no figure has leave a sheet as it is") {
  const Made none = home({"", ""});
  CHECK(figures_of(none.list).empty());
  const Made unknown = home({"nothing of this name", "dihs"});
  CHECK(figures_of(unknown.list).empty());
  CHECK(texts_in_place(unknown.list) == texts_in_place(none.list));
  const Made without =
      make_sheet(Kind::kHomeSheet, with_figures({"tall"}, plan::Place::kHome), Paper::kA4);
  CHECK(figures_of(without.list).empty());
}

TEST_CASE("on a coach card a figure takes nothing from the words") {
  std::size_t drawn = 0;
  for (const std::size_t drills : {1U, 4U, 9U, 20U}) {
    std::vector<std::string> names;
    const char* all[] = {"tall", "low", "long", "three"};
    for (std::size_t i = 0; i < drills; ++i) names.emplace_back(all[i % 4]);
    plan::Session gym = with_figures(names, plan::Place::kGym);
    for (std::size_t i = 0; i < drills; ++i) {
      auto& drill = std::get<plan::Drill>(gym.parts[0].steps[i]);
      if (i % 2 == 0) drill.cues.push_back(words("eyes on the horizon, ribs down, squeeze"));
      if (i % 3 == 0) drill.harder.push_back(words("arms by the ears and toes long"));
    }
    const Made with_figures = card(gym, shapes().drawings.get());
    const Made without = card(gym, nullptr);
    CHECK(with_figures.list.pages.size() == without.list.pages.size());
    CHECK(texts_in_place(with_figures.list) == texts_in_place(without.list));
    CHECK(figures_of(without.list).empty());
    for (const Drawn& one : figures_of(with_figures.list)) {
      CHECK(std::max(one.extent.height(), one.extent.width()) > Length::mm(6).in_pt());
      CHECK(one.numbers.empty());  // a row shows one of its poses there
    }
    drawn += figures_of(with_figures.list).size();
    check_tree(with_figures.list);
    check_inside_paper(with_figures.list);
  }
  CHECK(drawn > 10);
}
TEST_CASE("the figures of the nearest easier and harder choice stand beside them") {
  plan::Session one = with_figures({"tall"}, plan::Place::kHome);
  auto& drill = std::get<plan::Drill>(one.parts[0].steps[0]);
  drill.easier.push_back(words("sit on a cushion"));
  drill.harder.push_back(words("on tiptoe"));
  drill.figure_easier = words("low");
  drill.figure_harder = words("upright");
  const Made made = make_sheet(Kind::kHomeSheet, one, Paper::kA4, {}, shapes().drawings.get());
  const auto figures = figures_of(made.list);
  REQUIRE(figures.size() == 3);
  CHECK(figures[1].alternative == "Sits with long legs.");
  CHECK(figures[2].alternative == "Stands.");
  const auto height = [&](const std::string& text) {
    return text_item(made.list, text).baseline.y.in_pt();
  };
  // The nearest one's: above the next rung, and level with its own.
  CHECK(figures[1].extent.top < height("knees bent"));
  CHECK(figures[1].extent.bottom < height("sit on a cushion"));
  CHECK(figures[2].extent.top < height("on tiptoe"));
  CHECK(figures[2].extent.height() < figures[0].extent.height());
  check_tree(made.list);
  check_inside_paper(made.list);
}
