// Simple outlines as paths.
// Tested by tests/page/layout_test.cpp.
#pragma once

#include <vector>

#include "page/display_list.h"

namespace chalkleaf::page {

std::vector<PathStep> rounded_rectangle(const Rect& rect, Length radius);
std::vector<PathStep> straight_line(Point from, Point to);
std::vector<PathStep> circle(Point centre, Length radius);
/// A closed polygon.
std::vector<PathStep> polygon(const std::vector<Point>& corners);

}  // namespace chalkleaf::page
