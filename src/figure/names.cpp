// The words of pose files: keys, things, places.
#include <algorithm>
#include <array>

#include "figure/pose.h"

namespace chalkleaf::figure {
namespace {

constexpr std::array<std::string_view, kProps> kPropNames = {
    "floor",   "line",  "beam",  "mat",  "bench", "block", "chair", "wall",      "bar",
    "doorway", "stick", "towel", "band", "ball",  "rope",  "books", "crash mat", "box"};

constexpr std::array<std::string_view, kTargets> kTargetNames = {
    "hips", "thighs", "knees",     "shins",  "ankles", "heels", "toes",         "head",
    "ears", "chest",  "shoulders", "elbows", "belly",  "hands", "under thighs", "bar"};

template <class T, std::size_t N>
std::optional<T> find(const std::array<std::string_view, N>& names, std::string_view text) {
  for (std::size_t i = 0; i < N; ++i) {
    const bool one = names[i].ends_with('s') && names[i].substr(0, names[i].size() - 1) == text;
    if (names[i] == text || one) return static_cast<T>(i);
  }
  return std::nullopt;
}

}  // namespace

const std::vector<std::string>& figure_keys() {
  static const std::vector<std::string> keys = {
      "from",     "view",  "touches", "joints",  "lean",  "tilt",    "turn", "height",
      "hands on", "holds", "ground",  "adjust",  "range", "still",   "alt",  "also",
      "frames",   "show",  "tempo",   "returns", "moves", "circles", "turns"};
  return keys;
}

std::string_view prop_name(Prop prop) { return kPropNames[static_cast<std::size_t>(prop)]; }
const std::vector<std::string>& prop_names() {
  static const std::vector<std::string> names(kPropNames.begin(), kPropNames.end());
  return names;
}
std::optional<Prop> read_prop(std::string_view text) { return find<Prop>(kPropNames, text); }

std::string_view target_name(Target target) {
  return kTargetNames[static_cast<std::size_t>(target)];
}
const std::vector<std::string>& target_names() {
  static const std::vector<std::string> names(kTargetNames.begin(), kTargetNames.end());
  return names;
}
std::optional<Target> read_target(std::string_view text) {
  return find<Target>(kTargetNames, text);
}

}  // namespace chalkleaf::figure
