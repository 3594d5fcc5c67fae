#include "figure/truth.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "figure/balance.h"
#include "figure/hints.h"
#include "figure/ranges.h"

namespace chalkleaf::figure {
namespace {

// One decimal at most, never `-0`.
std::string degrees(double value) {
  const double rounded = std::round(value * 10) / 10;
  return fmt::format("{}", rounded == 0 ? 0.0 : rounded);
}

std::string how_far(double metres) {
  const double millimetres = std::max(1.0, std::round(std::fabs(metres) * 1000));
  if (millimetres < 10) return fmt::format("{:.0f} mm", millimetres);
  return fmt::format("{:.0f} cm", millimetres / 10);
}

// Metres: less than half the width of the line that is drawn for the ground.
constexpr double kHidden = 0.005;

std::string_view side_word(Side side) { return side == Side::kRight ? "near" : "far"; }

std::string with_side(std::string_view name, std::optional<Side> side) {
  return side ? fmt::format("{} {}", side_word(*side), name) : std::string(name);
}

// A hand or a foot that bears lies on its ground: the angle written for it is not drawn.
bool is_drawn(const Pose& pose, const Solved& solved, Joint joint, Side side) {
  const auto i = static_cast<std::size_t>(side);
  const HandMode hand = solved.modes.hand[i];
  const FootMode foot = solved.modes.foot[i];
  const bool reaches = std::any_of(pose.reaches.begin(), pose.reaches.end(),
                                   [&](const Reach& r) { return r.hand == side; });
  switch (joint) {
    case Joint::kShoulder:
    case Joint::kShoulderOut:
    case Joint::kShoulderTurn:
    case Joint::kElbow:
      return !reaches;
    case Joint::kWrist:
      return !reaches && (hand == HandMode::kFree || hand == HandMode::kGrip);
    case Joint::kAnkle:
      return foot != FootMode::kFlat;
    case Joint::kToes:
      return foot == FootMode::kFree;
    default:
      return true;
  }
}

// An arm may go all the way round: 360 is hanging again.
double on_its_way_round(Joint joint, double angle) {
  if (joint != Joint::kShoulder) return angle;
  if (angle > 240) return angle - 360;
  return angle < -240 ? angle + 360 : angle;
}

double bend_of_elbow(const ArmPoints& arm) {
  const Vec upper = unit(arm.elbow - arm.shoulder, {0, -1, 0});
  const Vec lower = unit(arm.wrist - arm.elbow, {0, -1, 0});
  return direction_of(dot(upper, lower), length(cross(upper, lower))).in_degrees();
}

// Toes up against the shank, of a foot that lies on the ground.
double bend_of_ankle(const LegPoints& leg) {
  const Vec shank = unit(leg.ankle - leg.knee, {0, -1, 0});
  const Vec way = leg.ball - leg.heel;
  const Vec foot = unit({way.x, 0, way.z}, {1, 0, 0});
  const double along = -dot(foot, shank);
  return direction_of(std::sqrt(std::max(0.0, 1 - along * along)), along).in_degrees();
}

// `near foot`, `toes`.
std::string called(Part part, std::optional<Side> side) {
  std::string name(part_name(part));
  if (!side) return name;
  if (part == Part::kFeet) name = "foot";
  const bool always_many =
      part == Part::kToes || part == Part::kPointedToes || part == Part::kFingersBack;
  if (!always_many && name.ends_with('s')) name.pop_back();
  return with_side(name, side);
}
std::string_view ends(std::string_view part) {
  return part.ends_with('s') || part == "feet" || part.ends_with("fingers back") ? "end" : "ends";
}

std::string giving_joint(const Contact& contact) {
  switch (contact.part) {
    case Part::kHead:
      return "neck";
    case Part::kSeat:
    case Part::kBack:
    case Part::kUpperBack:
    case Part::kFront:
    case Part::kSideBody:
      return "spine";
    case Part::kHands:
    case Part::kFingersBack:
    case Part::kForearms:
    case Part::kElbows:
      return with_side("shoulder", contact.side);
    default:
      return with_side("knee", contact.side);
  }
}

class Checker {
 public:
  Checker(const Figure& figure, std::size_t which, const Shown& shown, Diagnostics& diagnostics)
      : figure_(figure),
        which_(which),
        pose_(figure.poses[which]),
        shown_(shown),
        solved_(shown.solved),
        diagnostics_(diagnostics) {}

  void run() {
    if (pose_.still && pose_.contacts.empty() && pose_.height <= 0) {
      return say(Severity::kError, "figure-contact", pose_.span,
                 "this pose is held, but nothing bears it",
                 "say what bears with `touches:`, give the `height:` of a jump, or write `still: "
                 "no`");
    }
    for (std::size_t i = 0; i < kJoints; ++i) check_joint(static_cast<Joint>(i));
    check_feet();
    for (const Side side : kSides) check_reaching_arm(side);
    check_contacts();
    check_balance();
    check_below_ground();
  }

 private:
  void say(Severity severity, std::string name, Span span, std::string message, std::string hint) {
    Diagnostic out{severity, std::move(name), span, std::move(message), {}, std::move(hint)};
    const std::string whose = figure_.poses.size() > 1 ? fmt::format("pose {} of {}", which_ + 1,
                                                                     quoted(figure_.name.text))
                                                       : quoted(figure_.name.text);
    if (figure_.name.span) out.labels.push_back({figure_.name.span, "in " + whose});
    diagnostics_.add(std::move(out));
  }

  // ---- joints

  struct Bent {
    std::string name;  ///< as pose files name it
    Joint joint = Joint::kSpine;
    double angle = 0;
    Span span;
    std::string because;  ///< what made the angle, when its file did not
  };

  void judge(const Bent& bent) {
    const Range& range = range_of(bent.joint);
    const bool trained = pose_.trained && range.trained_go_further;
    const auto beyond = [&](std::optional<double> low, std::optional<double> high) {
      std::optional<double> out;
      constexpr double kShownSlack = 0.05;  // no more digits are shown
      if (high && bent.angle > *high + kShownSlack) out = high;
      if (low && bent.angle < *low - kShownSlack) out = low;
      return out;
    };
    const std::string is = bent.because.empty() ? "is at " : "comes to ";
    const std::string begin =
        quoted(bent.name) + " " + is + degrees(bent.angle) + " degrees" + bent.because;
    const auto closer = [&](double limit) {
      if (!bent.because.empty()) {
        return fmt::format(
            "change the pose so that it stays within {}, or let another joint give (`adjust:`)",
            degrees(limit));
      }
      return fmt::format("write {} at the {}", degrees(limit), limit < 0 ? "least" : "most");
    };
    if (const auto limit = beyond(range.possible_low, range.possible_high)) {
      return say(Severity::kError, "figure-impossible", bent.span,
                 begin + "; nobody’s goes beyond " + degrees(*limit), closer(*limit));
    }
    if (trained) return;
    if (const auto limit = beyond(range.normal_low, range.normal_high)) {
      std::string hint = closer(*limit);
      if (range.trained_go_further) hint += "; or `range: trained` for a gymnast’s range";
      say(Severity::kWarning, "figure-range", bent.span,
          begin + ", beyond the usual " + degrees(*limit), std::move(hint));
    }
  }

  Span span_of(Joint joint, Side side) const {
    const auto found = pose_.joint_spans.find({joint, side});
    return found == pose_.joint_spans.end() ? pose_.span : found->second;
  }

  Bent drawn(Joint joint, Side side) const {
    const double angle = solved_.joints.get(joint, side);
    Bent out{std::string(joint_name(joint)), joint, on_its_way_round(joint, angle),
             span_of(joint, side), ""};
    if (std::fabs(angle - pose_.joints.get(joint, side)) > 0.05) out.because = " for its contacts";
    return out;
  }

  void check_joint(Joint joint) {
    const bool right = is_drawn(pose_, solved_, joint, Side::kRight);
    const bool left = is_drawn(pose_, solved_, joint, Side::kLeft);
    Bent one = drawn(joint, Side::kRight);
    Bent other = drawn(joint, Side::kLeft);
    if (!has_sides(joint)) return judge(one);
    if (right && left && one.angle == other.angle && one.span == other.span) return judge(one);
    one.name = with_side(one.name, Side::kRight);
    other.name = with_side(other.name, Side::kLeft);
    if (right) judge(one);
    if (left) judge(other);
  }

  // Of a foot flat on the ground the shank decides how far the ankle bends. Under the body's weight
  // it goes further than the published passive values, so only the impossible is said.
  void check_feet() {
    const double limit = range_of(Joint::kAnkle).possible_high;
    std::vector<std::pair<Side, double>> bent;
    for (const Side side : kSides) {
      if (solved_.modes.foot[static_cast<std::size_t>(side)] != FootMode::kFlat) continue;
      const double angle = bend_of_ankle(solved_.skeleton.leg(side));
      if (angle > limit) bent.emplace_back(side, angle);
    }
    const bool alike = bent.size() == 2 && std::fabs(bent[0].second - bent[1].second) < 0.05;
    if (alike) bent.pop_back();
    for (const auto& [side, angle] : bent) {
      const std::string ankle = alike ? "ankle" : with_side("ankle", side);
      say(Severity::kError, "figure-impossible", contact_span(Part::kFeet, side),
          fmt::format("{} comes to {} degrees with the foot flat; nobody’s goes beyond {}",
                      quoted(ankle), degrees(angle), degrees(limit)),
          "bend the knee less, or let the heel lift: `touches: toes`");
    }
  }

  void check_reaching_arm(Side side) {
    for (const Reach& one : pose_.reaches) {
      if (one.hand != side) continue;
      judge({with_side("elbow", side), Joint::kElbow, bend_of_elbow(solved_.skeleton.arm(side)),
             one.span, " for its hand to be there"});
    }
  }

  // ---- contacts

  Span contact_span(Part part, Side side) const {
    for (const Contact& c : pose_.contacts) {
      if (c.part == part && (!c.side || *c.side == side)) return c.span;
    }
    return pose_.span;
  }

  void check_contacts() {
    std::vector<const Contact*> said;
    for (const Solved::Missed& missed : solved_.missed) {
      if (std::fabs(missed.by) < kHidden) continue;
      // Both sides of one contact are one finding.
      const auto same = [&](const Contact* c) { return c->span == missed.contact.span; };
      if (std::any_of(said.begin(), said.end(), same)) continue;
      said.push_back(&missed.contact);
      const Contact& contact = missed.contact;
      const std::string part = called(contact.part, contact.side);
      say(Severity::kError, "figure-contact", contact.span,
          fmt::format("{} {} {} {} the {}", quoted(part), ends(part), how_far(missed.by),
                      missed.by > 0 ? "above" : "below", prop_name(contact.on)),
          fmt::format("change the angles on the way there, leave it out of `touches`, or name "
                      "another joint that can give: `adjust: [{}]`",
                      giving_joint(contact)));
    }
    bool both_said = false;
    for (std::size_t i = 0; i < shown_.out_of_reach.size(); ++i) {
      const OutOfReach& one = shown_.out_of_reach[i];
      if (both_said) continue;
      both_said = i == 0 && shown_.out_of_reach.size() == 2 &&
                  one.reach.span == shown_.out_of_reach[1].reach.span;
      const std::string hand =
          both_said ? "both hands end" : fmt::format("the {} hand ends", side_word(one.reach.hand));
      say(Severity::kError, "figure-contact", one.reach.span,
          fmt::format("{} {} short of {}", hand, how_far(one.by),
                      quoted(with_side(target_name(one.reach.target), one.reach.side))),
          "bring them closer by bending the trunk, the neck or that leg, or put the hand on "
          "something nearer");
    }
  }

  void check_balance() {
    if (!pose_.still) return;
    const auto fall = fall_of(pose_, solved_);
    if (!fall) return;
    say(Severity::kWarning, "figure-falls", pose_.span,
        fmt::format("whoever holds this would fall {}: the centre of mass is {} outside what "
                    "bears",
                    fall->direction, how_far(fall->by)),
        "change `lean` or the joints, add what else bears to `touches`, or write `still: no` for a "
        "moment of a movement");
  }

  void check_below_ground() {
    const bool hangs = std::any_of(pose_.contacts.begin(), pose_.contacts.end(),
                                   [](const Contact& c) { return c.on == Prop::kBar; });
    // Legs hang beside a beam.
    if (hangs || pose_.ground == Prop::kBeam) return;
    const LowestPart low = lowest_part(solved_.body, solved_.skeleton);
    if (low.height >= -0.01) return;
    const std::string part = with_side(low.name, low.side);
    say(Severity::kWarning, "figure-below-ground", pose_.span,
        fmt::format("{} {} {} below the ground", quoted(part),
                    low.name.ends_with('s') ? "are" : "is", how_far(low.height)),
        "add it to `touches` if it bears, or bend what carries it");
  }

  const Figure& figure_;
  std::size_t which_;
  const Pose& pose_;
  const Shown& shown_;
  const Solved& solved_;
  Diagnostics& diagnostics_;
};

}  // namespace

void check(const Figure& figure, const std::vector<Shown>& shown, Diagnostics& diagnostics) {
  for (std::size_t i = 0; i < std::min(shown.size(), figure.poses.size()); ++i) {
    Checker(figure, i, shown[i], diagnostics).run();
  }
}

}  // namespace chalkleaf::figure
