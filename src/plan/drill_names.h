// When two names mean one drill.
//
// `Dish-holds`, `dish hold` and `Dish hold, palms pressed together` are said of the same drill. A
// name becomes a key without case, accents, plurals, hyphens and spaces; what may be qualification
// (behind a comma, a bracket, `on`, `with` …) can be cut off. No published source: common practice
// in the words of plans. Tested by tests/plan/drill_names_test.cpp.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::plan {

struct NameKey {
  std::string key;                ///< of the whole name
  std::vector<std::size_t> cuts;  ///< sizes of the shorter keys, the longest first
  std::size_t begin = 0;  ///< the size of the key's first words, before `to`, `from`, `with` …
};

/// The key of a name. Only its first bytes count (kLongestName), so that any text is cheap.
NameKey key_of_name(std::string_view name);

inline constexpr std::size_t kLongestName = 240;

}  // namespace chalkleaf::plan
