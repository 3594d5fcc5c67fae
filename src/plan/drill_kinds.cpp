// The kinds of drill of plan/library.h, by name. Tested by tests/plan/drill_file_test.cpp.
#include <algorithm>
#include <array>

#include "plan/library.h"

namespace chalkleaf::plan {
namespace {

// In the order of DrillKind.
constexpr std::array<std::string_view, 18> kNames{
    "",      "raise", "mobilise", "activate", "strength", "shape", "balance", "support", "hang",
    "swing", "jump",  "landing",  "roll",     "turn",     "skill", "stretch", "game",    "rest"};
static_assert(kNames[static_cast<std::size_t>(DrillKind::kRest)] == "rest");

}  // namespace

std::string_view kind_name(DrillKind kind) { return kNames[static_cast<std::size_t>(kind)]; }

const std::vector<std::string>& kind_names() {
  static const std::vector<std::string> names(kNames.begin() + 1, kNames.end());
  return names;
}

std::optional<DrillKind> kind_of_name(std::string_view name) {
  const auto found = std::find(kNames.begin() + 1, kNames.end(), name);
  if (found == kNames.end()) return std::nullopt;
  return static_cast<DrillKind>(found - kNames.begin());
}

// Regions of the body, as a coach divides it, and what is trained besides. Common practice, no
// source.
const std::vector<std::string>& trained_things() {
  static const std::vector<std::string> things{
      "neck",       "shoulders", "chest",  "arms",         "wrists",      "upper back",
      "lower back", "trunk",     "hips",   "front thighs", "back thighs", "inner thighs",
      "calves",     "ankles",    "feet",   "whole body",   "balance",     "coordination",
      "rhythm",     "pulse",     "breath", "landing",      "turning",     "jumping",
      "support",    "hang",      "swing"};
  return things;
}

// Work that is done with speed and force: jumps and take-offs, landings, swings, turns and skills
// that fly, and strength work.
bool is_power(DrillKind kind) {
  switch (kind) {
    case DrillKind::kStrength:
    case DrillKind::kSwing:
    case DrillKind::kJump:
    case DrillKind::kLanding:
    case DrillKind::kSkill:
      return true;
    default:
      return false;
  }
}

}  // namespace chalkleaf::plan
