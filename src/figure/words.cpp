#include "figure/words.h"

namespace chalkleaf::figure {
std::string describe(const Pose&) { return "x"; }
std::string alternative_text(const Figure& figure) {
  return figure.alternative.empty() ? describe(figure.poses.back()) : figure.alternative.text;
}
}  // namespace chalkleaf::figure
