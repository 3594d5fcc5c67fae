// Legs and feet of one pose in words. See figure/words.h.
#include <algorithm>
#include <cmath>

#include "figure/clauses.h"

namespace chalkleaf::figure {
namespace {

bool between(double value, double low, double high) { return value >= low && value <= high; }

class LegTeller {
 public:
  explicit LegTeller(const Facts& facts) : f_(facts) {}

  std::string legs() const {
    Texts out;
    const LegFacts& a = leg(0);
    const LegFacts& b = leg(1);
    const bool alike = std::fabs(a.hip - b.hip) < 12 && std::fabs(a.knee - b.knee) < 18 &&
                       std::fabs(a.out - b.out) < 18 && a.bears == b.bears &&
                       a.against == b.against;
    if (alike) {
      out.push_back(both_legs(a));
    } else if (a.bears != b.bears) {
      const LegFacts& bears = a.bears ? a : b;
      const LegFacts& free = a.bears ? b : a;
      if (bears.knee >= 25 && f_.posture != Posture::kHalfKneel && f_.posture != Posture::kKneel) {
        out.push_back("one knee " + bend_text(bears.knee));
      }
      out.push_back(free_leg(f_.posture == Posture::kStand ? "the other" : "one", free));
    } else {
      two_legs(a, b, out);
    }
    return joined(out);
  }

  // Pointed or pulled up, where they are free to be.
  std::string feet() const {
    switch (f_.posture) {
      case Posture::kStand:
      case Posture::kKneel:
      case Posture::kHalfKneel:
      case Posture::kSupport:
        return "";
      default:
        break;
    }
    const bool flat = f_.touches(Part::kFeet) || f_.touches(Part::kToes);
    if (flat) return "";
    const double ankle = std::max(leg(0).ankle, leg(1).ankle);
    if (ankle <= -35) return "toes pointed";
    return std::min(leg(0).ankle, leg(1).ankle) >= 5 ? "toes pulled up" : "";
  }

 private:
  const LegFacts& leg(std::size_t i) const { return f_.legs[i]; }

  // Of one leg, as what comes after `legs` or `one leg`.
  std::string leg_state(const LegFacts& l) const {
    std::string out = bend_text(l.knee);
    const bool tucked = l.hip >= 85 && l.knee >= 85;
    switch (f_.posture) {
      case Posture::kSit:
        if (l.bears || l.clear < 0.05) {
          return l.knee >= 35 ? out + ", feet on the floor" : out + " in front";
        }
        if (!on_floor_seat()) return out == "straight" ? "straight, lifted in front" : out;
        if (tucked) return "tucked, lifted off the floor";
        return out + ", lifted " + (l.rise >= 35 ? "high" : "off the floor");
      case Posture::kBack:
      case Posture::kShoulders:
      case Posture::kFront:
      case Posture::kSide:
        return lying_leg(l, out);
      case Posture::kHands:
      case Posture::kHead:
      case Posture::kHang:
      case Posture::kAir:
      case Posture::kBalance:
      case Posture::kBar:
        if (tucked) return "tucked to the chest";
        if (f_.posture == Posture::kBalance && l.hip >= 45 && l.rise < 60) {
          return out + (l.rise >= 15 ? ", lifted high in front" : ", level in front");
        }
        if (l.hip >= 100) return out + ", folded to the chest";
        if (l.hip >= 65) return out + ", at a right angle to the body";
        if (l.hip >= 22) return out + ", lifted in front";
        if (l.hip <= -22) return out + ", behind the body";
        return out;
      default:
        return out;
    }
  }
  bool on_floor_seat() const {
    const Contact* seat = f_.contact(Part::kSeat);
    return seat == nullptr || surface_height(seat->on) == 0;
  }
  static std::string bend_text(double knee) {
    if (knee < 18) return "straight";
    if (knee < 50) return "slightly bent";
    if (knee < 110) return "bent";
    return "fully bent";
  }
  std::string lying_leg(const LegFacts& l, const std::string& out) const {
    const bool front = f_.posture == Posture::kFront;
    if (l.bears && l.knee >= 40 && !front) return out + ", feet on the floor";
    if (!front && l.hip >= 85 && l.knee >= 110) return "tucked to the chest";
    if (!front && between(l.hip, 70, 110) && between(l.knee, 70, 110)) {
      return "bent at right angles, knees over the hips";
    }
    if (l.clear < 0.03) return out + " along the floor";
    if (front && l.knee >= 40) return out + ", heels up";
    if (l.knee >= 40) return out + ", feet lifted off the floor";
    if (f_.posture == Posture::kShoulders) {
      return l.hip >= 70 ? out + ", over the head" : out + ", up to the ceiling";
    }
    if (l.hip >= 115) return out + ", over the head";
    if (l.rise >= 65) return out + ", up to the ceiling";
    if (l.rise >= 28) return out + ", lifted half-way";
    return out + ", lifted off the floor";
  }

  // Of a leg that bears nothing, beside one that does.
  std::string free_leg(const std::string& which, const LegFacts& l) const {
    const std::string bent = which + " leg " + bend_text(l.knee);
    if (l.against) return bent + ", against the wall";
    if (f_.posture == Posture::kStand || f_.posture == Posture::kKneel) {
      if (l.hip >= 45 && l.knee >= 60) {
        return which + (l.out >= 25 ? " knee lifted to the side" : " knee lifted in front") +
               (l.hip >= 98   ? ", above hip height"
                : l.hip >= 78 ? " to hip height"
                              : "");
      }
      if (l.knee >= 60 && std::fabs(l.hip) < 45) {
        return bent + (l.knee >= 112 ? ", heel at the seat" : ", foot lifted behind");
      }
      std::string where = "just off the floor";
      if (l.out >= 18) {
        where = "lifted to the side";
      } else if (l.hip >= 15) {
        where = "lifted in front";
      } else if (l.hip <= -10 || f_.rise < 55) {
        where = "lifted behind";
      }
      if (l.rise >= 15) {
        where += ", above hip height";
      } else if (l.rise >= -20) {
        where += " to hip height";
      } else if (l.rise >= -55 && where != "just off the floor") {
        where += " half-way";
      }
      return bent + ", " + where;
    }
    if (f_.posture == Posture::kSupport) {
      if (l.hip >= 70 && l.knee >= 60) return which + " knee drawn to the chest";
      if (feet_together()) return "legs together";
      const std::string high = l.rise >= 30 ? " high" : "";
      return bent + ", lifted" + high + " off the floor";
    }
    return which + " leg " + leg_state(l);
  }
  bool feet_together() const {
    const Skeleton& s = f_.solved->skeleton;
    return length(s.legs[0].ankle - s.legs[1].ankle) < 0.13 * f_.solved->body.stature;
  }

  void two_legs(const LegFacts& a, const LegFacts& b, Texts& out) const {
    switch (f_.posture) {
      case Posture::kStand:
      case Posture::kHalfKneel:
      case Posture::kKneel:
        if (f_.posture == Posture::kStand) wide_step(a, b, out);
        return;
      case Posture::kSupport: {
        const LegFacts& front = a.hip >= b.hip ? a : b;
        if (front.knee >= 45) {
          out.push_back("one foot forward, its knee bent");
        } else {
          out.push_back("one leg forward");
        }
        return;
      }
      default:
        break;
    }
    const std::string one = leg_state(a);
    const std::string other = leg_state(b);
    if (one != other) {
      out.push_back("one leg " + one + ", the other " + other);
      return;
    }
    out.push_back("legs " + one);
    const double split = std::fabs(a.hip - b.hip);
    if (split >= 12) {
      out.push_back(split >= 130  ? "in a full split"
                    : split >= 60 ? "far apart, one in front"
                                  : "one in front of the other");
    }
  }

  // A step to the side.
  static void wide_step(const LegFacts& a, const LegFacts& b, Texts& out) {
    const LegFacts& bent = a.knee >= b.knee ? a : b;
    const LegFacts& other = a.knee >= b.knee ? b : a;
    if (std::max(a.out, b.out) < 12) return;
    out.push_back(bent.knee - other.knee >= 18 ? "feet wide apart, one knee bent"
                                               : "feet wide apart");
  }

  std::string both_legs(const LegFacts& l) const {
    Texts out;
    const bool apart = l.out >= 12;
    std::string knees = l.turn >= 20 && l.out >= 25 && l.knee >= 60 ? "knees out to the sides" : "";
    switch (f_.posture) {
      case Posture::kStand:
        if (between(l.knee, 18, 70)) out.push_back("knees " + bend_text(l.knee));
        if (l.turn >= 20) out.push_back("toes turned out");
        break;
      case Posture::kKneel:
        if (f_.rise > 60 && l.hip >= 25 && l.knee <= 125) out.push_back("hips back");
        break;
      case Posture::kSupport:
        if (between(l.knee, 25, 200) && !f_.touches(Part::kKnees) && !f_.touches(Part::kShins)) {
          out.push_back("knees " + bend_text(l.knee));
        }
        break;
      case Posture::kHalfKneel:
        break;
      default: {
        const std::string state = leg_state(l);
        if (!knees.empty()) {
          out.push_back(l.bears ? knees + ", feet on the floor" : knees);
          knees.clear();
        } else if (apart) {
          out.push_back("legs apart, " + state);
          return joined(out);
        } else {
          out.push_back("legs " + state);
        }
        break;
      }
    }
    if (apart && f_.posture != Posture::kSit) {
      out.push_back(l.out >= 35   ? "feet far apart"
                    : l.out >= 20 ? "feet wide apart"
                                  : "feet apart");
    }
    return joined(out);
  }

  const Facts& f_;
};

}  // namespace

std::string legs_clause(const Facts& facts) { return LegTeller(facts).legs(); }
std::string feet_clause(const Facts& facts) { return LegTeller(facts).feet(); }

}  // namespace chalkleaf::figure
