// Where every joint is, once the angles are known: forward kinematics, root to tip.
//
// The skeleton stands at the origin of its view: x to the right of the picture, y up, z towards the
// viewer. Contacts move and turn it as a whole afterwards (figure/solve.h). Tested by
// tests/figure/skeleton_test.cpp.
#pragma once

#include <array>

#include "figure/body.h"
#include "figure/joints.h"
#include "figure/vector.h"

namespace chalkleaf::figure {

/// What a hand or a foot does besides its angle: one that bears weight lies on what it bears on.
enum class FootMode { kFree, kFlat, kOnToes };
enum class HandMode {
  kFree,
  kFlat,      ///< on the ground, fingers forward
  kFlatBack,  ///< on the ground, fingers back
  kFlatUp,    ///< against a wall, fingers up
  kFlatOn,    ///< on the ground, on from the forearm
  kGrip,      ///< round a bar, or what is held
};

struct Modes {
  std::array<FootMode, 2> foot{};
  std::array<HandMode, 2> hand{};
};

/// How the body as a whole stands in the picture, before any contact is solved.
struct Stance {
  Angle lean;  ///< of the pelvis, forwards
  Angle tilt;  ///< sideways, to the gymnast's right
  Angle yaw;   ///< about the upright axis, to the viewer: 0 in profile, facing right; 90 frontal
};

struct ArmPoints {
  Vec shoulder, elbow, wrist, knuckles, tip;
  Vec front;  ///< of the forearm: where the elbow bends to
};
struct LegPoints {
  Vec hip, knee, ankle, heel, ball, toe;
  Vec front;  ///< of the shank
};
/// A slice of the trunk.
struct TrunkSlice {
  Vec at;
  Frame frame;
  double depth = 0;    ///< half of it, front to back, in metres
  double breadth = 0;  ///< half of it, side to side
};

inline constexpr std::size_t kSlices = 11;

struct Skeleton {
  std::array<TrunkSlice, kSlices> trunk;  ///< from the pelvis to the shoulders
  Vec neck;                               ///< where it leaves the shoulders
  Vec head;                               ///< its middle
  Frame head_frame;
  std::array<ArmPoints, 2> arms;
  std::array<LegPoints, 2> legs;

  const ArmPoints& arm(Side s) const { return arms[static_cast<std::size_t>(s)]; }
  const LegPoints& leg(Side s) const { return legs[static_cast<std::size_t>(s)]; }
  ArmPoints& arm(Side s) { return arms[static_cast<std::size_t>(s)]; }
  LegPoints& leg(Side s) { return legs[static_cast<std::size_t>(s)]; }
  void move(const Vec& by);
  /// Turned so that what was up faces the viewer: the body seen from above.
  void tip_to_viewer();
};

/// Remembers the sines of the pose before. Whoever solves changes one angle at a time and poses the
/// whole body again; every other sine is the same, and asked for in the same order.
class Sines {
 public:
  void begin() { next_ = 0; }
  SineCosine of(double degrees) {
    if (next_ == known_.size()) return sine_cosine(Angle::degrees(degrees));
    Known& known = known_[next_++];
    if (known.degrees != degrees) known = {degrees, sine_cosine(Angle::degrees(degrees))};
    return known.value;
  }

 private:
  struct Known {
    double degrees = 0;
    SineCosine value;
  };
  std::array<Known, 96> known_{};
  std::size_t next_ = 0;
};

Skeleton pose_skeleton(const Body& body, const Joints& joints, const Stance& stance,
                       const Modes& modes, Sines& sines);
Skeleton pose_skeleton(const Body& body, const Joints& joints, const Stance& stance,
                       const Modes& modes);

/// The hand from the wrist on, for one that bears weight on level ground.
void lay_hand(const Body& body, ArmPoints& arm, const Vec& forward);

/// Where the centres of a leg's segments are, by Dempster's table. Of the foot from the ankle to
/// the ball (Winter: lateral malleolus to second metatarsal head).
struct LegCentres {
  Vec thigh, shank, foot;
  Vec whole;  ///< of all three, weighed by their shares
};
LegCentres centres_of_leg(const Masses& masses, const Vec& hip, const Vec& knee, const Vec& ankle,
                          const Vec& ball);

/// The whole body's centre of mass.
Vec centre_of_mass(const Body& body, const Skeleton& skeleton);

}  // namespace chalkleaf::figure
