// The parts that one pose in words is made of. See figure/words.h.
#pragma once

#include <string>
#include <vector>

#include "figure/posture.h"
#include "figure/words.h"

namespace chalkleaf::figure {

using Texts = std::vector<std::string>;

/// All that are not empty, with commas.
std::string joined(const Texts& clauses);
/// `legs straight, lifted off the floor`
std::string legs_clause(const Facts& facts);
/// `toes pointed`, where feet are free to be.
std::string feet_clause(const Facts& facts);
/// `arms overhead`
std::string arms_clause(const Facts& facts);

}  // namespace chalkleaf::figure
