// Arms and hands of one pose in words. See figure/words.h.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "figure/clauses.h"

namespace chalkleaf::figure {
namespace {

class ArmTeller {
 public:
  explicit ArmTeller(const Facts& facts) : f_(facts) {}

  std::string arms() const {
    const ArmFacts& a = f_.arms[0];
    const ArmFacts& b = f_.arms[1];
    const bool holds_bar = f_.posture == Posture::kHang || f_.posture == Posture::kBar;
    const auto bears = [&](const ArmFacts& arm) {
      return arm.bears || arm.against || (holds_bar && arm.on == nullptr);
    };
    if (bears(a) && bears(b)) return bearing_arms();
    const std::string one = bears(a) ? "" : arm_state(a, false);
    const std::string other = bears(b) ? "" : arm_state(b, false);
    if (bears(a) || bears(b)) {
      const ArmFacts& free = bears(a) ? b : a;
      const bool told = f_.posture == Posture::kSupport || holds_bar || !(a.bears || b.bears);
      return (told ? "" : "one " + bearing_part() + " on the floor, ") +
             (free.on != nullptr ? "the other hand " : "the other arm ") +
             replace_all(one.empty() ? other : one, "elbows", "elbow");
    }
    const bool on_both = a.on != nullptr && b.on != nullptr;
    if (on_both && a.on->target == Target::kHands) return clasped();
    if (on_both && a.on->target == b.on->target) return "hands " + arm_state(a, true);
    if (one == other) return "arms " + arm_state(a, true);
    const auto named = [](const ArmFacts& arm, const std::string& state, const char* which) {
      return std::string(which) + (arm.on != nullptr ? " hand " : " arm ") + state;
    };
    return replace_all(named(a, one, "one") + ", " + named(b, other, "the other"), "elbows",
                       "elbow");
  }

 private:
  bool lies() const {
    return f_.posture == Posture::kBack || f_.posture == Posture::kFront ||
           f_.posture == Posture::kSide;
  }

  std::string bent(double elbow) const {
    if (elbow < 28) return "";
    return elbow < 60 ? "slightly bent" : "bent";
  }

  std::string place_name(ArmPlace place) const {
    switch (place) {
      case ArmPlace::kDown:
        return f_.posture == Posture::kHang ? "down" : "by the sides";
      case ArmPlace::kForward:
        return "forward";
      case ArmPlace::kOverhead:
        return "overhead";
      case ArmPlace::kSide:
        return "out to the sides";
      case ArmPlace::kBack:
        return "back";
      case ArmPlace::kForwardUp:
        return "forward and up";
      case ArmPlace::kForwardLow:
        return "low in front";
      case ArmPlace::kSideUp:
        return "up and out";
      case ArmPlace::kSideLow:
        return "low and out";
      case ArmPlace::kAcross:
        return "across the chest";
      case ArmPlace::kBehindHead:
        return "bent behind the head";
    }
    return "";
  }

  std::string target_text(const Reach& reach, bool both) const {
    std::string name(target_name(reach.target));
    switch (reach.target) {
      case Target::kHands:
        return "clasped";
      case Target::kUnderThighs:
        return "under the thighs";
      case Target::kBelly:
      case Target::kChest:
      case Target::kHead:
      case Target::kBar:
        return "on the " + name;
      case Target::kShoulders:
      case Target::kElbows:
        if (!both) name.pop_back();
        return (both ? "on the opposite " : "on the other ") + name;
      default:
        if (!both && name.ends_with('s') && name != "toes") name.pop_back();
        return (both ? "on the " : "on one ") + name;
    }
  }

  // Of one arm, as what comes after `arms` or `one arm`; empty: it bears.
  std::string arm_state(const ArmFacts& a, bool both) const {
    if (a.on != nullptr) return target_text(*a.on, both);
    if (a.bears || a.against) return "";
    std::string out = place_name(a.place);
    if (!both && a.place == ArmPlace::kSide) out = "out to the side";
    if (!both && a.place == ArmPlace::kDown) out = "by the side";
    if (a.place != ArmPlace::kBehindHead) {
      if (const std::string how = bent(a.elbow); !how.empty()) out += ", elbows " + how;
    }
    const bool could_lie = f_.posture == Posture::kBack || f_.posture == Posture::kFront;
    if (could_lie && a.lifted) out += ", lifted off the floor";
    return out;
  }

  std::string clasped() const {
    const TrunkSlice& chest = f_.solved->skeleton.trunk[8];
    const Vec way = f_.solved->skeleton.arms[0].tip - chest.at;
    const double forward = dot(way, chest.frame.forward);
    const double up = dot(way, chest.frame.up);
    const double k = f_.solved->body.stature;
    std::string where = forward < 0 ? "behind the back" : "in front of the chest";
    if (up > 0.2 * k) where = "overhead";
    if (up < -0.15 * k && forward > 0) where = "low in front";
    const bool bent_arms = f_.arms[0].elbow >= 60;
    return "hands together " + where + (bent_arms ? ", elbows bent" : ", arms long");
  }
  std::string bearing_part() const {
    return f_.touches(Part::kForearms) ? "forearm" : f_.touches(Part::kElbows) ? "elbow" : "hand";
  }
  // The base names what bears in a support; elsewhere the arms say so themselves.
  std::string bearing_arms() const {
    std::string where;
    if (f_.posture == Posture::kSit || lies() || f_.posture == Posture::kShoulders) {
      if (!f_.arms[0].against) where = bearing_part() + "s on the floor";
      if (f_.posture == Posture::kSit) where += hands_place();
    }
    if (f_.touches(Part::kForearms) || f_.touches(Part::kElbows)) return where;
    const double elbow = std::max(f_.arms[0].elbow, f_.arms[1].elbow);
    return joined(
        {where, elbow < 20 ? "arms straight" : "arms " + bent(std::max(28.0, elbow)), ahead()});
  }
  std::string hands_place() const {
    const Skeleton& s = f_.solved->skeleton;
    const double along = dot(s.arms[0].wrist - s.trunk[0].at, s.trunk[0].frame.forward);
    return along < -0.12 ? " behind" : along > 0.12 ? " in front" : " beside the hips";
  }
  // How far a support leans over its hands.
  std::string ahead() const {
    if (f_.posture != Posture::kSupport || f_.face_up || f_.arms[0].elbow >= 25) return "";
    const Skeleton& s = f_.solved->skeleton;
    const double to_head = s.trunk[8].at.x >= s.trunk[0].at.x ? 1 : -1;
    const Vec arm = s.arms[0].shoulder - s.arms[0].wrist;
    const double lean = direction_of(arm.y, arm.x * to_head).in_degrees();
    if (lean >= 24) return "shoulders far ahead of the hands";
    if (lean >= 10) return "shoulders ahead of the hands";
    return lean <= -20 ? "shoulders behind the hands" : "";
  }

  const Facts& f_;
};

}  // namespace

std::string arms_clause(const Facts& facts) { return ArmTeller(facts).arms(); }

}  // namespace chalkleaf::figure
