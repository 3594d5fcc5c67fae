// Whether a grid keeps a `must` or `wish`. The second opinion on what the solver proposes, too.
// Pure. Tested by tests/rota/holds_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "rota/model.h"

namespace chalkleaf::rota {

/// Where a grid goes against a rule.
struct Against {
  std::string what;  ///< `D is first on vault`
  Span span = {};
};
/// Nothing where the grid keeps it. A rule that could not be read is kept by all grids.
std::optional<Against> breaks(const Rotation& rotation, const Rule& rule);

/// The groups a rule is about: those it names, or all.
std::vector<std::size_t> groups_of(const Rotation& rotation, const Rule& rule);

}  // namespace chalkleaf::rota
