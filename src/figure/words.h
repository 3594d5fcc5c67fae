// A figure in words, for who cannot see it: made from contacts and angles where its file has none.
//
// English; a club's own language writes `alt`. Tested by tests/figure/words_test.cpp.
#pragma once

#include <string>

#include "figure/pose.h"

namespace chalkleaf::figure {

/// `Standing on one leg, the other knee bent, arms overhead.` Never empty.
std::string alternative_text(const Figure& figure);
/// One pose, without a full stop.
std::string describe(const Pose& pose);

}  // namespace chalkleaf::figure
