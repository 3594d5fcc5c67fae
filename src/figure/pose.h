// A figure as its file describes it: one pose or several, what touches what, what is held.
//
// Plain values with the place of each in the file. Read by figure/read.h, solved by figure/solve.h.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/span.h"
#include "figure/flesh.h"
#include "figure/joints.h"

namespace chalkleaf::figure {

/// The keys that describe a figure.
const std::vector<std::string>& figure_keys();

/// Text of a file and where it stands.
struct Word {
  std::string text;
  Span span;
  bool empty() const { return text.empty(); }
};

/// From where the gymnast is seen.
enum class View { kSide, kFront, kBack, kQuarter, kAbove };

/// Things with real sizes (figure/props.h).
enum class Prop {
  kFloor,
  kLine,
  kBeam,
  kMat,
  kBench,
  kBlock,
  kChair,
  kWall,
  kBar,
  kDoorway,
  kStick,
  kTowel,
  kBand,
  kBall,
  kRope,
  kBooks,
  kCrashMat,
  kBox,
};
inline constexpr std::size_t kProps = 18;
std::string_view prop_name(Prop prop);
const std::vector<std::string>& prop_names();
std::optional<Prop> read_prop(std::string_view text);

/// `hands: wall`: a part of the body and what it rests on or against.
struct Contact {
  Part part = Part::kFeet;
  std::optional<Side> side;  ///< none: both, of a limb
  Prop on = Prop::kFloor;
  Span span;
};

/// Where a hand can be put: on the gymnast's own body.
enum class Target {
  kHips,
  kThighs,
  kKnees,
  kShins,
  kAnkles,
  kHeels,
  kToes,
  kHead,
  kEars,
  kChest,
  kShoulders,  ///< the other one
  kElbows,     ///< the other one
  kBelly,
  kHands,  ///< the other one: clasped
  kUnderThighs,
  kBar,
};
inline constexpr std::size_t kTargets = 16;
std::string_view target_name(Target target);
const std::vector<std::string>& target_names();
std::optional<Target> read_target(std::string_view text);

/// `hands on: knees`
struct Reach {
  Side hand = Side::kRight;
  Target target = Target::kHips;
  std::optional<Side> side;  ///< of what is reached for; none: the hand's own
  Span span;
};

/// One pose.
struct Pose {
  View view = View::kSide;
  Joints joints;
  std::map<std::pair<Joint, Side>, Span> joint_spans;  ///< those its file sets
  std::vector<Contact> contacts;                       ///< none: in the air
  std::vector<JointName> adjust;  ///< joints that may give, in order; none: chosen by the contact
  std::optional<double> lean;     ///< degrees; none: solved, or by what it rests on
  std::optional<double> tilt;     ///< degrees; none: solved in a frontal view
  double turn = 0;                ///< degrees about the upright axis, away from the view
  double height = 0;              ///< metres above the ground, of what is in the air
  std::vector<Reach> reaches;
  std::optional<Prop> holds;   ///< in the hands
  std::optional<Prop> ground;  ///< what the floor is: line, beam, mat, block …
  bool still = true;           ///< it is held; false: on its way, and may be out of balance
  bool trained = false;        ///< range of a gymnast at shoulder, hip, trunk and ankle
  Span span;                   ///< where it is described
};
/// Seen from the front or from behind.
inline bool is_frontal(const Pose& pose) {
  return pose.view == View::kFront || pose.view == View::kBack;
}

/// How a movement is shown.
enum class Show {
  kArrow,  ///< the last pose, the first as a ghost, an arrow between
  kRow,    ///< every pose, numbered, beside each other
};

enum class Speed { kEven, kFast, kSlow };

struct Figure {
  Word name;
  std::string family;       ///< of its file: a heading of the contact sheet
  std::vector<Pose> poses;  ///< one, or the key poses of a movement in order; never empty
  Show show = Show::kArrow;
  std::vector<Speed> tempo;        ///< there, and back
  bool returns = false;            ///< the movement goes back to its start
  std::vector<std::string> moves;  ///< parts whose paths are drawn; none: the one that travels most
  std::vector<std::string> circles;  ///< parts that go round where they are: `near hand`, `hips`
  std::string turns;                 ///< what turns about the upright axis: head, chest or body
  Word alternative;                  ///< a text for who cannot see it; empty: made from the pose
  std::vector<Word> also;            ///< other names it is found by
};

}  // namespace chalkleaf::figure
