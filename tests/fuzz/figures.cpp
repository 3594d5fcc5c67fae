// Fuzzes pose files: read, solved, checked, drawn, written as SVG. Whatever the file says, every
// number of the drawing is finite and near the gymnast, and every figure has words.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "base/diagnostic_text.h"
#include "figure/picture.h"
#include "figure/read.h"
#include "figure/svg.h"
#include "figure/truth.h"
#include "source/read.h"

namespace {

using namespace chalkleaf;
using namespace chalkleaf::figure;

constexpr double kFar = 100;  // metres: four frames of the tallest, side by side, are far nearer

void must(bool holds) {
  if (!holds) std::abort();
}
void near_the_gymnast(const Spot& spot) {
  must(std::isfinite(spot.x) && std::isfinite(spot.y));
  must(std::fabs(spot.x) < kFar && std::fabs(spot.y) < kFar);
}

void draw(const Figure& figure, const Body& body, Diagnostics& diagnostics) {
  const std::vector<Shown> shown = show(figure, body);
  must(shown.size() == figure.poses.size());
  check(figure, shown, diagnostics);
  const Scene scene = picture(figure, shown);
  for (const Shape& shape : scene.shapes) {
    must(std::isfinite(shape.width) && std::isfinite(shape.dash));
    for (const Step& step : shape.steps) {
      near_the_gymnast(step.a);
      near_the_gymnast(step.b);
      near_the_gymnast(step.c);
    }
  }
  near_the_gymnast({scene.box.left, scene.box.bottom});
  near_the_gymnast({scene.box.right, scene.box.top});
  must(!scene.box.empty() && !scene.alternative.empty());
  must(svg(scene, Palette{}, figure.name.text).ends_with("</svg>\n"));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Diagnostics diagnostics;
  const std::string text(reinterpret_cast<const char*>(data), size);
  const SourcePtr source = source::load_text("figures.yaml", text, diagnostics);
  if (!source) return 0;
  Descriptions all;
  all.take(source, false, diagnostics);
  // A few of many are enough: each costs the same as the next.
  constexpr std::size_t kDrawn = 40;
  std::size_t drawn = 0;
  for (const Figure& figure : all.resolve(diagnostics)) {
    if (++drawn > kDrawn) break;
    draw(figure, Body::of_age(static_cast<double>(size % 20)), diagnostics);
  }
  for (const Diagnostic& one : diagnostics.sorted()) {
    must(!render(one, MessageStyle::kHuman, Colouring::kPlain).empty());
    must(!render(one, MessageStyle::kJson, Colouring::kPlain).empty());
  }
  return 0;
}
