// How messages about pose files name a word, and what they propose instead.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/text.h"

namespace chalkleaf::figure {

inline std::string quoted(std::string_view word) { return "‘" + std::string(word) + "’"; }

inline std::string hint_for(std::string_view word, const std::vector<std::string>& known) {
  const auto meant = closest(word, known);
  return meant ? "did you mean " + quoted(*meant) + "?" : "one of: " + join_list(known, "or");
}

}  // namespace chalkleaf::figure
