// A club's figures: its own over the shipped ones, mistakes in their files, drawings from many
// threads.
#include "club/figures.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/in_order.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

constexpr const char* kShipped = R"(family: Shapes
figures:
  dish: {touches: back, joints: {hip: 30}, also: [hollow], alt: The shipped dish.}
  low dish: {from: dish, joints: {hip: 20}}
  arch: {touches: front, alt: The shipped arch.}
)";

MemoryFileSystem disk_with_figures(const std::string& own) {
  if (own.empty()) {
    return {{"/data/themes/figures/shapes.yaml", kShipped}, {"/club/club.yaml", ""}};
  }
  return {{"/data/themes/figures/shapes.yaml", kShipped},
          {"/club/club.yaml", ""},
          {"/club/figures/own.yaml", own}};
}

struct LoadedFigures {
  Figures figures;
  Diagnostics diagnostics;
  std::string messages() const {
    std::string out;
    for (const Diagnostic& d : diagnostics.sorted()) {
      out += render(d, MessageStyle::kShort, Colouring::kPlain);
    }
    return out;
  }
};
LoadedFigures load(const MemoryFileSystem& files, const std::string& club = "/club") {
  LoadedFigures out;
  out.figures = load_figures(files, std::string("/data"), club, "/club", out.diagnostics);
  return out;
}

// Enough to tell two drawings apart: every point of every path.
std::string drawing(const figure::Scene& scene) {
  std::string out = scene.alternative + "\n";
  for (const figure::Shape& shape : scene.shapes) {
    for (const figure::Step& s : shape.steps) {
      for (const double v : {s.a.x, s.a.y, s.b.x, s.b.y, s.c.x, s.c.y}) {
        out += std::to_string(v) + " ";
      }
    }
    out += "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("without figures of its own a club has the shipped ones") {
  for (const std::string club : {"/club", ""}) {
    const LoadedFigures loaded = load(disk_with_figures(""), club);
    CHECK(loaded.messages() == "");
    CHECK(loaded.figures.catalogue->all().size() == 3);
    CHECK(loaded.figures.catalogue->find("Hollow") == loaded.figures.catalogue->find("dish"));
  }
  // A single plan has no club, whatever stands beside it.
  CHECK(load(disk_with_figures("figures: {hug: {touches: feet}}\n"), "")
            .figures.catalogue->find("hug") == nullptr);
}

TEST_CASE("a club's figure goes before the shipped one, and those that begin from it follow") {
  const LoadedFigures loaded = load(
      disk_with_figures("figures:\n  dish: {touches: back, joints: {hip: 80}, alt: Our dish.}\n"
                        "  hug: {from: low dish, alt: Our hug.}\n"));
  CHECK(loaded.messages() == "");
  const figure::Catalogue& catalogue = *loaded.figures.catalogue;
  CHECK(catalogue.all().size() == 4);
  REQUIRE(catalogue.find("dish") != nullptr);
  CHECK(catalogue.find("dish")->alternative.text == "Our dish.");
  CHECK(catalogue.find("dish")->name.span.source->path() == "figures/own.yaml");
  CHECK(catalogue.find("arch")->alternative.text == "The shipped arch.");
  CHECK(catalogue.find("hug")->alternative.text == "Our hug.");
  CHECK(catalogue.find("hollow") == nullptr);  // a name of the one that was replaced
  CHECK(catalogue.find("low dish")->poses[0].joints.get(figure::Joint::kHip, figure::Side::kLeft) ==
        20);
  CHECK(loaded.figures.drawings->find("dish", 10, figure::Extent::kWhole)->alternative ==
        "Our dish.");
}

TEST_CASE("a mistake in a club's file names file, line and column, and costs that figure only") {
  const LoadedFigures loaded = load(disk_with_figures(
      "family: Ours\nfigures:\n  hug:\n    touches: feet\n    joints: {elbows: 20}\n"
      "  reach: {touches: feet, joints: {shoulder: 180}}\n"));
  CHECK(loaded.messages() ==
        "figures/own.yaml:5:14: error: ‘elbows’ is no joint [bad-value]; did you mean ‘elbow’?\n");
  const figure::Catalogue& catalogue = *loaded.figures.catalogue;
  CHECK(catalogue.find("hug") == nullptr);
  CHECK(catalogue.find("reach") != nullptr);
  CHECK(catalogue.find("dish") != nullptr);
  // A drill that names it is not to blame.
  CHECK(names_of(catalogue).has("Hug"));
  CHECK_FALSE(names_of(catalogue).has("hugg"));
  CHECK(loaded.figures.drawings->find("hug", 10, figure::Extent::kWhole) == nullptr);
}

TEST_CASE("a club's poses are judged, the shipped ones are not") {
  const LoadedFigures loaded =
      load(disk_with_figures("figures:\n  far lean: {touches: feet, lean: 40}\n"));
  CHECK(loaded.messages().starts_with("figures/own.yaml:2:3: warning: whoever holds this"));
  CHECK_THAT(loaded.messages(), Catch::Contains("[figure-falls]"));
  MemoryFileSystem files = disk_with_figures("");
  files.put("/data/themes/figures/shapes.yaml",
            "figures:\n  far lean: {touches: feet, lean: 40}\n");
  CHECK(load(files).messages() == "");
}

TEST_CASE("files are read in the order of their names, and others are left alone") {
  MemoryFileSystem files = disk_with_figures("");
  files.put("/club/figures/b.yaml", "figures:\n  hug: {touches: feet}\n");
  files.put("/club/figures/a.yml", "figures:\n  hug: {touches: feet}\n");
  files.put("/club/figures/.hidden.yaml", "nonsense\n");
  files.put("/club/figures/notes.txt", "nonsense\n");
  const LoadedFigures loaded = load(files);
  CHECK(loaded.messages() ==
        "figures/b.yaml:2:3: error: there is a figure ‘hug’ already [duplicate-key]; give one of "
        "them another name\n");
}

TEST_CASE("drawings are the same from one thread and from many, and kept") {
  MemoryFileSystem files = disk_with_figures("");
  std::string many = "figures:\n";
  for (int i = 0; i < 24; ++i) {
    many += "  shape " + std::to_string(i) +
            ": {touches: [feet, hands], joints: {hip: " + std::to_string(60 + i) +
            ", shoulder: 150}}\n";
  }
  files.put("/club/figures/own.yaml", many);
  constexpr std::size_t kDrawings = 24 * 3;
  const auto all_with = [&](std::size_t threads) {
    const LoadedFigures loaded = load(files);
    std::vector<std::string> out;
    const auto make_worker = [&] {
      return [&](std::size_t i) {
        const auto scene = loaded.figures.drawings->find(
            "shape " + std::to_string(i % 24), i % 2 == 0 ? 8 : 12, figure::Extent::kWhole);
        return scene ? drawing(*scene) : "";
      };
    };
    run_in_order<std::string>(kDrawings, threads, make_worker,
                              [&](std::size_t, const std::string& one) { out.push_back(one); });
    // The second time it is the same drawing, not one like it.
    const auto& drawings = *loaded.figures.drawings;
    CHECK(drawings.find("shape 1", 8, figure::Extent::kWhole) ==
          drawings.find("SHAPE 1", 8.2, figure::Extent::kWhole));
    return out;
  };
  const std::vector<std::string> one = all_with(1);
  REQUIRE(one.size() == kDrawings);
  for (const std::string& text : one) CHECK(text.size() > 500);
  CHECK(one[0] != one[1]);
  CHECK(all_with(4) == one);
  CHECK(all_with(9) == one);
}
