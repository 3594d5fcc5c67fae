// One pose in clauses: what bears, trunk, legs, arms, head, things. See figure/words.h.
#include <algorithm>
#include <cmath>
#include <string>

#include "base/text.h"
#include "figure/clauses.h"

namespace chalkleaf::figure {
namespace {

// ---- what bears

std::string one_of(Part part) {
  switch (part) {
    case Part::kFeet:
      return "foot";
    case Part::kPointedToes:
      return "pointed toes";
    case Part::kFingersBack:
      return "hand with fingers back";
    default: {
      std::string name(part_name(part));
      name.pop_back();
      return name;
    }
  }
}

std::string part_text(const Contact& contact) {
  if (contact.side && contact.part == Part::kToes) return "the ball of one foot";
  if (contact.side) return "one " + one_of(contact.part);
  if (contact.part == Part::kFingersBack) return "hands with fingers back";
  if (contact.part == Part::kSideBody) return "one side";
  return std::string(part_name(contact.part));
}

std::string ground_text(const Pose& pose) {
  switch (pose.ground.value_or(Prop::kFloor)) {
    case Prop::kLine:
      return "on a line";
    case Prop::kBeam:
      return "on the beam";
    case Prop::kMat:
      return "on a mat";
    default:
      return "";
  }
}

std::string place_text(const Pose& pose, Prop on) {
  switch (on) {
    case Prop::kWall:
      return "against the wall";
    case Prop::kDoorway:
      return "on the sides of a doorway";
    case Prop::kBar:
      return "on the bar";
    case Prop::kBooks:
      return "on books";
    case Prop::kFloor: {
      const std::string ground = ground_text(pose);
      return ground.empty() ? "on the floor" : ground;
    }
    default:
      return "on a " + std::string(prop_name(on));
  }
}

// `hands and toes on the floor`
std::string contacts_text(const Pose& pose, bool only_things) {
  std::vector<std::pair<Prop, Texts>> by_place;
  for (const Contact& c : pose.contacts) {
    if (only_things && c.on == Prop::kFloor) continue;
    auto at = std::find_if(by_place.begin(), by_place.end(),
                           [&](const auto& one) { return one.first == c.on; });
    if (at == by_place.end()) at = by_place.insert(by_place.end(), {c.on, {}});
    const std::string text = part_text(c);
    if (std::find(at->second.begin(), at->second.end(), text) == at->second.end()) {
      at->second.push_back(text);
    }
  }
  Texts out;
  for (const auto& [prop, parts] : by_place) {
    out.push_back(join_list(parts) + " " + place_text(pose, prop));
  }
  return join_list(out);
}

class Teller {
 public:
  explicit Teller(const Facts& facts) : f_(facts), pose_(*facts.pose) {}

  Told tell() const {
    Told out;
    switch (pose_.view) {
      case View::kSide:
        if (f_.posture == Posture::kSupport || f_.posture == Posture::kOther)
          out.view = "side view";
        break;
      case View::kFront:
        out.view = "front view";
        break;
      case View::kBack:
        out.view = "back view";
        break;
      case View::kQuarter:
        out.view = "half turned to you";
        break;
      case View::kAbove:
        out.view = "seen from above";
        break;
    }
    out.base = base();
    out.trunk = trunk();
    out.legs = legs_clause(f_);
    out.arms = arms_clause(f_);
    out.feet = feet_clause(f_);
    out.head = head();
    out.things = things();
    const std::string lifted = ", lifted off the floor";
    if (out.arms.ends_with(lifted) && out.arms.starts_with("arms ") &&
        out.legs == "legs straight" + lifted) {
      out.arms = out.arms.substr(0, out.arms.size() - lifted.size()) +
                 " and legs straight, both lifted off the floor";
      out.legs.clear();
    }
    return out;
  }

 private:
  const LegFacts& leg(std::size_t i) const { return f_.legs[i]; }

  std::string base() const {
    const std::string ground = ground_text(pose_);
    const auto on_ground = [&](std::string text) {
      if (ground.empty()) return text;
      return text.insert(std::min(text.find(','), text.size()), " " + ground);
    };
    std::string out;
    switch (f_.posture) {
      case Posture::kAir:
        return "in the air";
      case Posture::kHang:
        return "hanging from the bar";
      case Posture::kBar:
        return f_.touches(Part::kHands) && f_.touches(Part::kFront)
                   ? "resting on the bar on hands and hips"
                   : contacts_text(pose_, false);
      case Posture::kStand:
        out = on_ground(stand());
        break;
      case Posture::kKneel:
        out = on_ground(kneel());
        break;
      case Posture::kHalfKneel:
        out = on_ground("kneeling on one knee");
        break;
      case Posture::kSit:
        return sit();
      case Posture::kBack:
        out = on_ground("lying on the back");
        break;
      case Posture::kShoulders:
        out = on_ground("rolled onto the upper back");
        break;
      case Posture::kFront:
        out = on_ground("lying on the front");
        break;
      case Posture::kSide:
        out = on_ground("lying on one side");
        break;
      case Posture::kHands:
        out = on_ground("upside down on the hands");
        break;
      case Posture::kBalance:
      case Posture::kHead:
      case Posture::kSupport:
      case Posture::kOther:
        out = contacts_text(pose_, false);
        if (f_.posture == Posture::kBalance) out = "only the " + out;
        if (f_.posture == Posture::kSupport && f_.face_up) out += ", belly up";
        return out;
    }
    const std::string things = contacts_text(pose_, true);
    return things.empty() ? out : out + ", " + things;
  }

  std::string stand() const {
    const Contact* flat = f_.contact(Part::kFeet);
    const Contact* toes = f_.contact(Part::kToes);
    const Contact* heels = f_.contact(Part::kHeels);
    const auto& contacts = pose_.contacts;
    const bool one = std::none_of(contacts.begin(), contacts.end(), [](const Contact& c) {
      return !c.side && is_limb(c.part) && bears_from_below(c.on);
    });
    const bool both_bear = leg(0).bears && leg(1).bears;
    if (one && !both_bear) {
      return toes != nullptr ? "standing on one leg on tiptoe" : "standing on one leg";
    }
    const Skeleton& s = f_.solved->skeleton;
    const double apart = std::fabs(s.legs[0].ankle.x - s.legs[1].ankle.x);
    const bool side_on = pose_.view == View::kSide || pose_.view == View::kQuarter;
    const std::string how = toes != nullptr && flat == nullptr    ? " on tiptoe"
                            : heels != nullptr && flat == nullptr ? " on the heels"
                                                                  : "";
    if (side_on && apart > 0.2 * f_.solved->body.stature) {
      const double front_knee = std::max(leg(0).knee, leg(1).knee);
      const double other_knee = std::min(leg(0).knee, leg(1).knee);
      if (front_knee > 35) {
        return other_knee > 35 ? "in a lunge, both knees bent" : "in a lunge, back leg straight";
      }
      return "standing with one foot in front of the other" + how;
    }
    const double knee = std::min(leg(0).knee, leg(1).knee);
    if (knee >= 110) return "crouching" + how;
    if (knee >= 70) return "squatting" + how;
    if (side_on && apart > 0.06) return "standing" + how + ", one foot in front of the other";
    return "standing" + how;
  }

  std::string kneel() const {
    const bool back = leg(0).hip > 60 && leg(0).knee > 125;
    return back ? "sitting on the heels" : "kneeling";
  }

  std::string sit() const {
    const Contact* seat = f_.contact(Part::kSeat);
    std::string out = "sitting";
    if (seat != nullptr && seat->on != Prop::kFloor) {
      out += " " + place_text(pose_, seat->on);
    } else if (const std::string ground = ground_text(pose_); !ground.empty()) {
      out += " " + ground;
    }
    return out;
  }

  std::string trunk() const {
    Texts out;
    const double spine = f_.joint(Joint::kSpine);
    const double side = f_.joint(Joint::kSpineSide);
    const double turn = f_.joint(Joint::kSpineTurn);
    switch (f_.posture) {
      case Posture::kStand:
      case Posture::kSit:
      case Posture::kKneel:
      case Posture::kHalfKneel:
        out.push_back(lean());
        break;
      case Posture::kSupport:
        out.push_back(line());
        break;
      case Posture::kShoulders:
        if (f_.rise < -55) out.push_back("hips high above the shoulders");
        break;
      case Posture::kHang:
        if (f_.rise < 40) {
          out.push_back(f_.rise < -30 ? "upside down" : "body level with the floor");
        }
        break;
      case Posture::kBack:
        if (f_.touches(Part::kFeet) && hips_lifted()) out.push_back("hips lifted");
        break;
      default:
        break;
    }
    if (spine >= 60) {
      out.push_back("back deeply rounded");
    } else if (spine >= 17) {
      out.push_back("back rounded");
    } else if (spine <= -50) {
      out.push_back("back deeply arched");
    } else if (spine <= -12) {
      out.push_back("back arched");
    }
    if (std::fabs(side) >= 10) {
      out.push_back(std::string(std::fabs(side) >= 40 ? "bent far " : "bent ") + "to the " +
                    (side > 0 ? "right" : "left"));
    }
    if (std::fabs(turn) >= 12) {
      out.push_back(std::string("chest turned to the ") + (turn > 0 ? "left" : "right"));
    }
    return joined(out);
  }
  bool hips_lifted() const {
    if (f_.touches(Part::kUpperBack)) return true;
    const Skeleton& s = f_.solved->skeleton;
    return s.trunk[0].at.y > s.trunk[8].at.y + 0.08;
  }

  // Forwards or back from upright.
  std::string lean() const {
    const double from_upright = 90 - f_.rise;
    const bool back = f_.solved->skeleton.trunk[5].frame.forward.y > 0;
    if (back) {
      return from_upright >= 40 ? "leaning far back" : from_upright >= 14 ? "leaning back" : "";
    }
    const double fold = from_upright;
    if (fold >= 110) return "folded right down over the legs";
    if (fold >= 75) return "folded forward, back level";
    if (fold >= 45) return "leaning far forward";
    return fold >= 12 ? "leaning forward" : "";
  }

  // Of the body between hands and feet.
  std::string line() const {
    double hip = 0;
    double knee = 0;
    double bearing = 0;
    for (const LegFacts& l : f_.legs) {
      if (!l.bears) continue;
      hip += l.hip;
      knee += l.knee;
      bearing += 1;
    }
    if (bearing == 0) return "";
    hip /= bearing;
    knee /= bearing;
    const bool on_knees = f_.touches(Part::kKnees) || f_.touches(Part::kShins);
    const double spine = f_.joint(Joint::kSpine);
    if (std::fabs(hip) <= 20 && std::fabs(spine) <= 25 && (knee < 25 || on_knees)) {
      return on_knees ? "body in one line from head to knees" : "body in one line";
    }
    if (on_knees && hip >= 60 && hip <= 115) return "hips over the knees";
    if (hip >= 115) return "hips folded";
    if (hip >= 45 && !f_.face_up) return "hips high";
    return "";
  }

  std::string head() const {
    Texts out;
    const double neck = f_.joint(Joint::kNeck);
    const double side = f_.joint(Joint::kNeckSide);
    const double turn = f_.joint(Joint::kNeckTurn);
    const double lift = std::max(f_.joint(Joint::kShoulderLift, Side::kRight),
                                 f_.joint(Joint::kShoulderLift, Side::kLeft));
    const double press = std::min(f_.joint(Joint::kShoulderLift, Side::kRight),
                                  f_.joint(Joint::kShoulderLift, Side::kLeft));
    if (lift >= 12) out.push_back("shoulders lifted to the ears");
    if (press <= -12) out.push_back("shoulders pressed down");
    if (neck >= 22) out.push_back("chin to the chest");
    if (neck <= -20 && f_.posture != Posture::kSupport) out.push_back("head back");
    if (std::fabs(side) >= 12) {
      out.push_back(std::string("head tilted to the ") + (side > 0 ? "right" : "left"));
    }
    if (std::fabs(turn) >= 15) {
      out.push_back(std::string("head turned to the ") + (turn > 0 ? "left" : "right"));
    }
    return joined(out);
  }

  std::string things() const {
    if (!pose_.holds) return "";
    return "holding a " + std::string(prop_name(*pose_.holds));
  }

  const Facts& f_;
  const Pose& pose_;
};

}  // namespace

std::string joined(const Texts& clauses) {
  std::string out;
  for (const std::string& clause : clauses) {
    if (clause.empty()) continue;
    if (!out.empty()) out += ", ";
    out += clause;
  }
  return out;
}

Told tell(const Pose& pose, const Solved& solved) {
  const Facts facts = facts_of(pose, solved);
  return Teller(facts).tell();
}

}  // namespace chalkleaf::figure
