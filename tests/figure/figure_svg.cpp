// Writes every figure of some files as SVG, and says where the ground is in each.
//
// usage: figure_svg FOLDER FILE.yaml…     FOLDER/0.svg, 1.svg …; prints for each: its number; how
// far below the drawing's upper edge the ground is, in metres, or `none`; `stands` or `flies`; name
#include <fmt/format.h>

#include <fstream>
#include <iterator>

#include "base/diagnostic_text.h"
#include "figure/picture.h"
#include "figure/props.h"
#include "figure/read.h"
#include "figure/svg.h"
#include "source/read.h"

int main(int argc, char** argv) {
  using namespace chalkleaf;
  using namespace chalkleaf::figure;
  Diagnostics diagnostics;
  Descriptions all;
  std::vector<SourcePtr> sources;
  for (int i = 2; i < argc; ++i) {
    std::ifstream file(argv[i], std::ios::binary);
    std::string text((std::istreambuf_iterator<char>(file)), {});
    sources.push_back(source::load_text(argv[i], std::move(text), diagnostics));
    if (sources.back()) all.take(sources.back(), false, diagnostics);
  }
  // Inks that a picture can be read back by: near black for all that stands, paper white.
  Palette palette;
  palette.fill(Colour{0x20, 0x20, 0x20});
  palette[static_cast<std::size_t>(Ink::kPaper)] = kWhite;
  std::size_t number = 0;
  for (const Figure& figure : all.resolve(diagnostics)) {
    const Scene scene = picture(figure, Body::of_age(9));
    std::ofstream out(fmt::format("{}/{}.svg", argv[1], number), std::ios::binary);
    out << svg(scene, palette, figure.name.text);
    const Pose& last = figure.poses.back();
    const std::string ground = has_ground(last) && last.view != View::kAbove
                                   ? fmt::format("{:.4f}", scene.box.top - scene.ground)
                                   : "none";
    fmt::print("{} {} {} {}\n", number, ground, last.contacts.empty() ? "flies" : "stands",
               figure.name.text);
    ++number;
  }
  for (const Diagnostic& one : diagnostics.sorted()) {
    fmt::print(stderr, "{}", render(one, MessageStyle::kShort, Colouring::kPlain));
  }
  return number > 0 && !diagnostics.has_errors() ? 0 : 1;
}
