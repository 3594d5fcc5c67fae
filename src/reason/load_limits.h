// How much of each load is a lot, for a session and for a group's week.
// Tested by tests/reason/load_checks_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/model.h"
#include "reason/loads.h"

namespace chalkleaf::reason {

enum class Period { kSession, kWeek };

/// More than this is a lot. Amounts as in LoadSums.
struct LoadLimit {
  Load load = Load::kHandTime;
  int from_age = 0;    ///< of the youngest of the group; up to the next row of this load
  int from_level = 1;  ///< of the group
  std::int64_t session = 0;
  std::int64_t week = 0;

  std::int64_t of(Period period) const { return period == Period::kSession ? session : week; }
};
/// All of them, in the order of loads, ages and levels.
const std::vector<LoadLimit>& load_limits();
/// What all of them rest on.
std::string_view load_limits_source();

/// The row for a group; none for a load that has no limit. Of a group whose ages nobody wrote the
/// widest counts: who is not known is not accused.
std::optional<LoadLimit> load_limit(Load load, const std::optional<plan::Group>& group);
/// `ages 7 to 9, level 1 to 4`: whom a row is for.
std::string limit_text(const LoadLimit& limit);

}  // namespace chalkleaf::reason
