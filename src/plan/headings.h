// What the title of a part says besides its name: that it is the warm-up, and how long it has.
// Tested by tests/plan/headings_test.cpp.
#pragma once

#include <optional>
#include <string_view>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// Warm-up, cool-down or neither: the words a title begins with.
PartRole role_of(std::string_view title);

/// A heading, and the time written behind the title: `Warm-up (10 min)`, `Warm-up: 10 mins`,
/// `Warm-up – 10 min`.
struct Heading {
  Words title;  ///< without the time
  std::optional<Sourced<Duration>> time;
};
Heading read_heading(const source::Text& text);

}  // namespace chalkleaf::plan
