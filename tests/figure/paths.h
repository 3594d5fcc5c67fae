// Paths as polygons: what the tests measure areas and extents by.
#pragma once

#include <cmath>
#include <vector>

#include "figure/scene.h"

namespace chalkleaf::figure {

/// The places of a path, each curve in `pieces`; one list for each of its parts.
inline std::vector<std::vector<Spot>> flattened(const Steps& steps, int pieces = 64) {
  std::vector<std::vector<Spot>> out;
  for (const Step& step : steps) {
    switch (step.kind) {
      case Step::Kind::kMove:
        out.push_back({step.a});
        break;
      case Step::Kind::kLine:
        out.back().push_back(step.a);
        break;
      case Step::Kind::kCurve: {
        const Spot from = out.back().back();
        for (int i = 1; i <= pieces; ++i) {
          const double t = static_cast<double>(i) / pieces;
          const double u = 1 - t;
          out.back().push_back(from * (u * u * u) + step.a * (3 * u * u * t) +
                               step.b * (3 * u * t * t) + step.c * (t * t * t));
        }
        break;
      }
      case Step::Kind::kClose:
        break;
    }
  }
  return out;
}

/// The area of a polygon, above 0 anticlockwise (Gauss's formula).
inline double area(const std::vector<Spot>& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Spot& a = polygon[i];
    const Spot& b = polygon[(i + 1) % polygon.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

/// The end points of all steps.
inline std::vector<Spot> ends_of(const Scene& scene) {
  std::vector<Spot> out;
  for (const Shape& shape : scene.shapes) {
    for (const Step& step : shape.steps) {
      if (step.kind == Step::Kind::kCurve) out.push_back(step.c);
      if (step.kind == Step::Kind::kMove || step.kind == Step::Kind::kLine) out.push_back(step.a);
    }
  }
  return out;
}

}  // namespace chalkleaf::figure
