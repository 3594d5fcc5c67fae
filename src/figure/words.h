// A figure in words, for who cannot see it: made from contacts and angles where its file has none.
//
// English; a club's own language writes `alt`. Tested by tests/figure/words_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "figure/pose.h"
#include "figure/solve.h"

namespace chalkleaf::figure {

struct Shown;

/// `Standing on one leg, the other knee bent, arms overhead.` Never empty.
std::string alternative_text(const Figure& figure);
/// The same of poses that were solved before.
std::string alternative_text(const Figure& figure, const std::vector<Shown>& shown);
/// One pose, without a full stop.
std::string describe(const Pose& pose);

/// One pose in clauses, each without a capital; empty where there is nothing to say.
struct Told {
  std::string view;    ///< `front view`
  std::string base;    ///< `standing on one leg`
  std::string trunk;   ///< `back rounded`
  std::string legs;    ///< `knees bent`
  std::string feet;    ///< `toes pointed`
  std::string arms;    ///< `arms overhead`
  std::string head;    ///< `chin to the chest`
  std::string things;  ///< `holding a stick`
};
Told tell(const Pose& pose, const Solved& solved);

}  // namespace chalkleaf::figure
