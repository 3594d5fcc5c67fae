#include "sheet/figure_art.h"

#include <algorithm>
#include <cmath>

namespace chalkleaf::sheet {
namespace {

constexpr double kMetre = 100;  // points

class Painter {
 public:
  Painter(const figure::Scene& scene, const figure::Palette& inks) : scene_(scene), inks_(inks) {}

  page::PathItem paint(const figure::Shape& shape) const {
    using Kind = page::PathStep::Kind;
    page::PathItem item;
    item.steps.reserve(shape.steps.size());
    for (const figure::Step& step : shape.steps) {
      switch (step.kind) {
        case figure::Step::Kind::kMove:
          item.steps.push_back({Kind::kMove, spot(step.a), {}, {}});
          break;
        case figure::Step::Kind::kLine:
          item.steps.push_back({Kind::kLine, spot(step.a), {}, {}});
          break;
        case figure::Step::Kind::kCurve:
          item.steps.push_back({Kind::kCurve, spot(step.a), spot(step.b), spot(step.c)});
          break;
        case figure::Step::Kind::kClose:
          item.steps.push_back({Kind::kClose, {}, {}, {}});
          break;
      }
    }
    if (shape.fill) item.fill = ink(*shape.fill);
    if (shape.line) {
      page::Stroke stroke{ink(*shape.line), Length::pt(shape.width * kMetre), true, {}};
      if (shape.dash > 0) {
        stroke.dashes = {Length::pt(shape.dash * kMetre), Length::pt(shape.dash * kMetre)};
      }
      item.stroke = std::move(stroke);
    }
    return item;
  }

 private:
  // To a tenth of a point, which is printed at half its size and less: within a fortieth of a point
  // of where it should be, a tenth of what a printer of 300 dots an inch can show. What is finer
  // makes a file a quarter larger.
  static Length place(double metres) {
    return Length::millipoints(std::llround(metres * kMetre * 10) * 100);
  }
  Point spot(const figure::Spot& s) const {
    return {place(s.x - scene_.box.left), place(scene_.box.top - s.y)};
  }
  Colour ink(figure::Ink which) const { return inks_[static_cast<std::size_t>(which)]; }

  const figure::Scene& scene_;
  const figure::Palette& inks_;
};

}  // namespace

std::shared_ptr<const page::Artwork> artwork_of(const figure::Scene& scene,
                                                const figure::Palette& inks) {
  const Painter painter(scene, inks);
  std::vector<page::PathItem> paths;
  paths.reserve(scene.shapes.size());
  for (const figure::Shape& shape : scene.shapes) paths.push_back(painter.paint(shape));
  const Size size{Length::pt(std::max(scene.box.width(), 0.01) * kMetre),
                  Length::pt(std::max(scene.box.height(), 0.01) * kMetre)};
  return std::make_shared<const page::Artwork>(size, std::move(paths));
}

std::shared_ptr<const page::Artwork> FigureArt::of(const figure::Scene& scene,
                                                   const figure::Palette& inks) {
  const std::pair key{&scene, inks};
  {
    const std::lock_guard lock(mutex_);
    const auto known = made_.find(key);
    if (known != made_.end()) return known->second;
  }
  // Outside the lock: two threads may make the same thing; the first that is kept serves both.
  auto made = artwork_of(scene, inks);
  const std::lock_guard lock(mutex_);
  return made_.emplace(key, std::move(made)).first->second;
}

}  // namespace chalkleaf::sheet
