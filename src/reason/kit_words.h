// What kit a line means, and how much of it, as a coach writes it: `two hoops each`, `a bath
// towel`, `mat, one between two`. Inside the room. Tested by tests/reason/kit_words_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/model.h"

namespace chalkleaf::reason {

/// The things of which one is enough: `a scarf or a towel` are two. Each as words in the singular,
/// without `a`, `two` and the like; never an empty one.
std::vector<std::vector<std::string>> things_in(std::string_view text);
/// `bath towel`
std::string joined(const std::vector<std::string>& thing);

/// The nouns of lists of kit: what something that is used is looked for in.
class KitNouns {
 public:
  void add(std::string_view text);
  bool empty() const { return nouns_.empty(); }
  /// True when the thing's noun is among them: `bath towel` where `towel` is listed, and `crash
  /// mat` where `mats` are. Rather too often than too seldom.
  bool has(const std::vector<std::string>& thing) const;

 private:
  std::set<std::string> nouns_;
};

/// What stands in every home and hall, and needs no list: a wall, the floor, a chair.
bool is_everywhere(const std::vector<std::string>& thing);

/// `items` for every `gymnasts`: `two each` is 2 for 1, `one between three` 1 for 3.
struct Share {
  std::int64_t items = 1;
  std::int64_t gymnasts = 1;
  std::int64_t needed_by(std::int64_t all) const { return (all * items + gymnasts - 1) / gymnasts; }
};
/// Nothing when the text does not say so plainly.
std::optional<Share> share_in(std::string_view text);

}  // namespace chalkleaf::reason
