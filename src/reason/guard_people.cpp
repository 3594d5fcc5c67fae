// Tested by tests/reason/guard_test.cpp.
#include "reason/guard_people.h"

#include <fmt/format.h>

#include <algorithm>

namespace chalkleaf::reason {
namespace {

// Guidance, not law. NSPCC, recommended adult to child ratios: ages 2-3 1:4 (value from memory),
// 4-8 1:6, 9-12 1:8, 13-18 1:10, and always two adults at least.
int adults_needed(int children, int youngest) {
  const int each = youngest < 4 ? 4 : youngest < 9 ? 6 : youngest < 13 ? 8 : 10;
  return std::max(2, (children + each - 1) / each);
}

}  // namespace

void check_people(const People& people, Diagnostics& diagnostics) {
  if (people.children == 0 || !people.youngest || people.adults == 0) return;
  constexpr double kTolerance = 1.25;
  const int needed = adults_needed(people.children, *people.youngest);
  const int surely =
      adults_needed(static_cast<int>(people.children / kTolerance), *people.youngest);
  if (people.adults >= surely) return;
  diagnostics.add({Severity::kError,
                   "too-few-adults",
                   people.span,
                   fmt::format("{} children, the youngest {} years old, need {} adults, and the "
                               "plan speaks of {}",
                               people.children, *people.youngest, needed, people.adults),
                   {},
                   fmt::format("find another adult and write ‘adults: {}’ between the --- "
                               "lines, or take fewer children",
                               needed)});
}

}  // namespace chalkleaf::reason
