// What a solved pose is, before it is put in words: its posture, and where each limb points.
//
// Tested by tests/figure/words_test.cpp.
#pragma once

#include <optional>

#include "figure/solve.h"

namespace chalkleaf::figure {

enum class Posture {
  kAir,
  kHang,       ///< from a bar
  kBar,        ///< on a bar, above it
  kStand,      ///< on feet, toes or heels
  kKneel,      ///< on knees or shins
  kHalfKneel,  ///< on a knee and the other foot
  kSit,
  kBack,
  kShoulders,  ///< on the upper back only
  kFront,
  kSide,
  kHands,    ///< on the hands alone, upside down
  kBalance,  ///< on the hands alone, not upside down
  kHead,     ///< on the head, with or without hands
  kSupport,  ///< on hands or arms, and on legs
  kOther,
};

/// Where a free arm points, of the chest.
enum class ArmPlace {
  kDown,
  kForward,
  kOverhead,
  kSide,
  kBack,
  kForwardUp,
  kForwardLow,
  kSideUp,
  kSideLow,
  kAcross,
  kBehindHead,
};

struct ArmFacts {
  ArmPlace place = ArmPlace::kDown;
  double elbow = 0;      ///< degrees
  bool lifted = false;   ///< of who lies: the arm is clear of the floor
  bool bears = false;    ///< on the ground or on a thing below
  bool against = false;  ///< on a wall
  const Reach* on = nullptr;
};
struct LegFacts {
  double hip = 0, out = 0, turn = 0, knee = 0, ankle = 0;  ///< degrees
  double rise = 0;                                         ///< of hip to ankle, degrees above level
  double clear = 0;                                        ///< metres from the foot to the ground
  bool bears = false;
  bool against = false;
};

struct Facts {
  const Pose* pose = nullptr;
  const Solved* solved = nullptr;
  Posture posture = Posture::kOther;
  double rise = 0;  ///< of the trunk, degrees above level
  bool face_up = false;
  std::array<ArmFacts, 2> arms;
  std::array<LegFacts, 2> legs;

  const Contact* contact(Part part, std::optional<Side> side = std::nullopt) const;
  bool touches(Part part) const { return contact(part) != nullptr; }
  double joint(Joint j, Side side = Side::kRight) const { return solved->joints.get(j, side); }
};

Facts facts_of(const Pose& pose, const Solved& solved);

}  // namespace chalkleaf::figure
