// See the header.
#include "plan/rotations.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"

namespace chalkleaf::plan {

bool is_rotation(std::string_view title) {
  return lower_ascii(title).find("rotation") != std::string::npos;
}

bool is_rotation_line(std::string_view line) {
  static constexpr std::array<std::string_view, 9> kKeys{
      "groups", "coaches", "stations", "break after", "must", "wish", "rest", "hall", "twice"};
  const std::string lower = lower_ascii(trim(line));
  const std::size_t colon = lower.find(':');
  constexpr std::size_t kLongestKey = 40;
  if (colon > kLongestKey) return false;  // npos, where there is no colon, is longer too
  return std::any_of(kKeys.begin(), kKeys.end(), [&](std::string_view key) {
    if (!lower.starts_with(key)) return false;
    const std::string_view rest =
        trim(std::string_view(lower).substr(key.size(), colon - key.size()));
    const bool numbered = key == "break after" || key == "hall";
    return rest.empty() || numbered;
  });
}

}  // namespace chalkleaf::plan
