// The joints of the figure, their names in pose files, and how far they bend.
//
// Angles are in degrees from standing with hanging arms; bending that closes the front of a joint
// (flexion; at the ankle, toes up) counts up from 0. Ranges are checked in figure/truth.h.
// Tested by tests/figure/truth_test.cpp.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::figure {

enum class Side : std::size_t { kRight, kLeft };
inline constexpr std::array<Side, 2> kSides = {Side::kRight, Side::kLeft};

/// What each limb has two of comes last, and is counted once here.
enum class Joint : std::size_t {
  kSpine,         ///< forwards, spread evenly over the trunk; arching is below 0
  kSpineSide,     ///< to the right
  kSpineTurn,     ///< the chest to the left, over the pelvis
  kNeck,          ///< forwards
  kNeckSide,      ///< to the right
  kNeckTurn,      ///< to the left
  kShoulder,      ///< forwards and up: 90 forward, 180 overhead
  kShoulderOut,   ///< sideways: 90 level with the shoulder
  kShoulderTurn,  ///< about the arm, outwards
  kShoulderLift,  ///< the blade up to the ear; pressed down is below 0
  kElbow,
  kWrist,    ///< towards the palm's side of a hanging arm's front
  kHip,      ///< forwards and up
  kHipOut,   ///< sideways
  kHipTurn,  ///< about the leg, outwards
  kKnee,
  kAnkle,  ///< toes up; pointed is below 0
  kToes,   ///< toes up against the foot
};
inline constexpr std::size_t kJoints = 18;
inline constexpr std::size_t kFirstLimbJoint = static_cast<std::size_t>(Joint::kShoulder);

/// `hip out`
std::string_view joint_name(Joint joint);
/// All names a pose file may use, without a side.
const std::vector<std::string>& joint_names();
inline bool has_sides(Joint joint) { return static_cast<std::size_t>(joint) >= kFirstLimbJoint; }

/// A joint, and of which side; both when there is none (or it has no sides).
struct JointName {
  Joint joint = Joint::kSpine;
  std::optional<Side> side;
};
/// Reads `hip`, `left hip out`, `near knee` (near is right, far is left).
std::optional<JointName> read_joint_name(std::string_view text);
/// Takes `near `, `far `, `left ` or `right ` off the front.
std::optional<Side> take_side(std::string_view& text);

/// All angles of a pose, in degrees.
class Joints {
 public:
  double get(Joint joint, Side side = Side::kRight) const { return values_[place(joint, side)]; }
  void set(Joint joint, Side side, double degrees) { values_[place(joint, side)] = degrees; }
  /// On both sides.
  void set(Joint joint, double degrees) {
    for (const Side side : kSides) set(joint, side, degrees);
  }
  /// Part of the way from `a` to `b`: 0 is a, 1 is b.
  static Joints between(const Joints& a, const Joints& b, double t);
  /// The left side's angles on the right and the other way round.
  Joints mirrored() const;
  bool operator==(const Joints&) const = default;

 private:
  static std::size_t place(Joint joint, Side side) {
    return static_cast<std::size_t>(joint) * 2 + static_cast<std::size_t>(side);
  }
  std::array<double, kJoints * 2> values_{};
};

}  // namespace chalkleaf::figure
