// When two names mean one drill.
//
// `Dish-holds`, `dish hold` and `Dish hold, palms pressed together` are said of the same drill. A
// name becomes a key without case, accents, plurals, hyphens and spaces; what may be qualification
// (behind a comma, a bracket, `on`, `with` …) can be cut off, unless it changes the movement. No
// published source: common practice in the words of plans. Tested by
// tests/plan/drill_names_test.cpp.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::plan {

/// A shorter key of a name: what it says without its qualification.
struct NameCut {
  std::size_t size = 0;
  std::string_view apparatus = {};  ///< named behind it: only a drill of that place is meant
};

struct NameKey {
  std::string key;            ///< of the whole name
  std::vector<NameCut> cuts;  ///< the longest first
  std::size_t begin = 0;  ///< the size of the key's first words, before `to`, `from`, `with` …
};

/// The one apparatus that words name, such as a part's title or a station of the hall; empty when
/// they name none or several. `Uneven bars` and `HB` are `bar`.
std::string_view apparatus_in(std::string_view words);
/// The keys by which a drill would be called on an apparatus: `Half turn on the beam`, `Beam half
/// turn`. None for the floor, where names mean what they say.
std::vector<std::string> keys_on(std::string_view apparatus, std::string_view key);

/// The key of a name. Only its first bytes count (kLongestName), so that any text is cheap.
NameKey key_of_name(std::string_view name);

inline constexpr std::size_t kLongestName = 240;

}  // namespace chalkleaf::plan
