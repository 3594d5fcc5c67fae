// For maps of words. Only for this room. Tested through what remembers words.
#pragma once

#include <functional>
#include <string_view>

namespace chalkleaf::type {

/// Lets a map keyed by strings be asked with a view.
struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const {
    return std::hash<std::string_view>{}(text);
  }
};

}  // namespace chalkleaf::type
