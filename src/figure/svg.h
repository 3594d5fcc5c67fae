// A drawing as SVG 1.1, so that a club can use its shapes elsewhere.
//
// Tested by tests/figures.py, which has librsvg read it back.
#pragma once

#include <string>

#include "figure/scene.h"

namespace chalkleaf::figure {

/// 500 units a metre; scales to any size.
std::string svg(const Scene& scene, const Palette& palette, const std::string& title);

}  // namespace chalkleaf::figure
