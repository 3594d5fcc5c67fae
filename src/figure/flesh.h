// What the bones are covered with: round pieces, the same for what touches the floor and for what
// is drawn, so that a drawn foot stands exactly where the solved one does.
//
// Thicknesses are ours, for the eye, as fractions of stature. Tested by
// tests/figure/solve_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "figure/skeleton.h"

namespace chalkleaf::figure {

/// A part of the body that can bear weight, as pose files name it.
enum class Part {
  kFeet,  ///< flat, heel to toes
  kToes,  ///< on the balls, toes bent
  kHeels,
  kInsteps,      ///< the foot's upper side
  kPointedToes,  ///< the tip of a pointed foot
  kKnees,
  kShins,  ///< knee and foot's upper side along the ground
  kSeat,
  kBack,
  kUpperBack,  ///< between the shoulders
  kFront,      ///< belly, hips and chest, whichever is lowest
  kSideBody,   ///< hip and shoulder of the side that is lower
  kHands,
  kFingersBack,  ///< hands whose fingers point back
  kForearms,
  kElbows,
  kHead,
  kThighs,
};
inline constexpr std::size_t kParts = 18;
std::string_view part_name(Part part);
const std::vector<std::string>& part_names();
std::optional<Part> read_part(std::string_view text);
/// One on each side.
bool is_limb(Part part);

/// Half thicknesses, in metres.
struct Flesh {
  double hip, knee, calf, shin, ankle, heel, ball, toe;
  double shoulder, elbow, forearm, wrist, palm, knuckles, fingers;
  double neck;
  double head_high, head_deep, head_wide;
  explicit Flesh(const Body& body);
};

/// The lowest height of a part; of one side's for a limb. The body's own height, not the ground's.
double lowest(const Body& body, const Skeleton& skeleton, Part part, Side side);
/// The lowest height of anything of the body.
double lowest(const Body& body, const Skeleton& skeleton);
/// The part that is lowest, and how low.
struct LowestPart {
  std::string_view name;  ///< as a coach says it; those that can bear by the names of pose files
  std::optional<Side> side;
  double height = 0;
};
LowestPart lowest_part(const Body& body, const Skeleton& skeleton);
/// How far a slice of the trunk reaches in a direction of length 1.
double reach_of(const TrunkSlice& slice, const Vec& direction);
/// The same of the head.
double head_reach(const Flesh& flesh, const Frame& frame, const Vec& direction);

/// Where a part rests, left to right in the picture: the ground under it.
struct Footing {
  double left = 0;
  double right = 0;
};
Footing footing(const Body& body, const Skeleton& skeleton, Part part, Side side);

}  // namespace chalkleaf::figure
