// See the header.
#include "plan/rotations.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"

namespace chalkleaf::plan {

namespace {

// `5 x 35 min`
bool has_turns(std::string_view text) {
  const auto digit = [&](std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
  };
  for (std::size_t at = 1; at + 1 < text.size(); ++at) {
    const bool sign = text[at] == 'x' || text[at] == '*';
    if (!sign) continue;
    std::size_t before = at - 1;
    while (before > 0 && text[before] == ' ') --before;
    std::size_t behind = at + 1;
    while (behind < text.size() && text[behind] == ' ') ++behind;
    if (!digit(before) || !digit(behind)) continue;
    while (digit(behind)) ++behind;
    while (behind < text.size() && text[behind] == ' ') ++behind;
    if (text.substr(behind).starts_with("min")) return true;
  }
  return false;
}

}  // namespace

bool is_rotation(std::string_view title) {
  const std::string lower = replace_all(lower_ascii(title), "\u00D7", "x");
  const auto says = [&](std::string_view word) { return lower.find(word) != std::string::npos; };
  if (says("rotation") || says("carousel")) return true;
  return has_turns(lower) && (says("to move") || says("to change") || says("station"));
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
