// See the header.
#include "draft/spoken_dose.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;
using DKind = SpokenDose::Kind;

std::string number_text(double value) { return fmt::format("{:g}", value); }

DKind kind_of(Unit unit) {
  switch (unit) {
    case Unit::kGoes:
      return DKind::kGoes;
    case Unit::kLengths:
      return DKind::kLengths;
    case Unit::kSteps:
      return DKind::kSteps;
    default:
      return DKind::kReps;
  }
}

/// Adds elements to a dose one after the other.
class Resolver {
 public:
  Resolver(const Lexicon& words, SpokenDrill& drill, const Setting& setting)
      : words_(words),
        drill_(drill),
        setting_(setting),
        name_(pieces_of(drill.name + " " + drill.label)) {}

  std::optional<SpokenDose> run() {
    for (const Element& e : drill_.elements) take(e);
    if (!has_amount_) inherit();
    if (none_ && !has_amount_) return std::nullopt;
    if (!has_amount_) {
      if (sets_ > 0) {
        out_.values = {sets_};
        out_.kind = sets_goes_ ? DKind::kGoes : DKind::kReps;
      } else {
        return std::nullopt;
      }
    } else if (sets_ > 0) {
      out_.sets = sets_;
    } else if (setting_.sets > 0 && !out_.is_ladder()) {
      out_.sets = setting_.sets;
    }
    for (const Element& e : setting_.defaults) {
      if (e.kind == EKind::kRest && !out_.rest) out_.rest = e.values.front();
    }
    return std::move(out_);
  }

 private:
  void amount(DKind kind, const std::vector<double>& values) {
    out_.kind = kind;
    out_.values = values;
    has_amount_ = true;
  }

  // `hold everything 30` of the part.
  void inherit() {
    if (sets_ > 0 || none_) return;
    if (setting_.of_each) take(*setting_.of_each);
    for (const Element& e : setting_.defaults) {
      if (e.kind == EKind::kTime && e.held && !has_amount_) take(e);
    }
  }

  // A number alone is seconds of what is held, in a stretch of all that does not move.
  bool is_seconds(const Element& e) const {
    if (e.unit != Unit::kBare || e.leads || e.values.size() > 2 || e.values.front() < 3)
      return false;
    if (e.sides == Role::kEachWay && !e.ways.empty()) return false;
    bool way = false;
    for (const Element& other : drill_.elements) {
      way = way ||
            (other.kind == EKind::kSides && other.sides == Role::kEachWay && other.ways.empty());
    }
    // `tuck, pike, straddle, 5 of each`
    if (way || is_of_each(drill_.elements)) return false;
    const bool held = words_.within(Role::kStatic, name_, 0, name_.size());
    // The label of a held shape does not move it: `circle – straddle 15`.
    const Pieces own = pieces_of(drill_.name);
    const bool three = std::any_of(drill_.elements.begin(), drill_.elements.end(),
                                   [](const Element& other) { return other.ways.size() > 2; });
    const bool own_held = three && words_.within(Role::kStatic, own, 0, own.size());
    const Pieces& said = own_held ? own : name_;
    const bool moves = words_.within(Role::kMoving, said, 0, said.size());
    // In a stretch a small number with its sides counts: `penché 6 per leg`.
    constexpr double kShortHold = 8;
    const bool counted = !held && e.values.front() < kShortHold && has_side_behind(e);
    return !moves && !counted && (held || setting_.stretch);
  }

  void count(const Element& e) {
    if (!e.remark.empty() && e.unit != Unit::kLengths) out_.remarks.push_back(e.remark);
    named_sides(e);
    if (none_ && e.unit == Unit::kTimes) return;
    if (!has_amount_) {
      if (e.unit == Unit::kSets) {
        sets_ = e.values.front();
        return;
      }
      amount(is_seconds(e)       ? DKind::kSeconds
             : is_length_name(e) ? DKind::kLengths
                                 : kind_of(e.unit),
             e.values);
      own_unit_ = e.unit;
      leads_ = e.leads;
      return;
    }
    // `hold 3 s, 5 on each leg`
    const bool with_side =
        e.unit == Unit::kBare && out_.kind == DKind::kSeconds && has_side_behind(e);
    const bool often = with_side || e.unit == Unit::kTimes || e.unit == Unit::kGoes ||
                       e.unit == Unit::kSets ||
                       (e.unit == Unit::kReps && out_.kind == DKind::kSeconds) ||
                       (e.unit == Unit::kLengths && own_unit_ == Unit::kBare);
    if (often && e.values.size() == 1 && sets_ == 0 && !sets_closed_) {
      sets_ = e.values.front();
      sets_goes_ = e.unit == Unit::kGoes;
    } else {
      leftover(e);
    }
  }

  // `20 s right, 20 s left`
  void named_sides(const Element& e) {
    if (e.ways.empty()) return;
    out_.sides = e.sides;
    both_ways_ = e.ways.size() == 1 && e.sides == Role::kEachWay;
    if (e.ways.size() > 2) out_.ways = e.ways;
  }

  void time(const Element& e) {
    constexpr double kLong = 1'200;  // no drill takes twenty minutes: a part does
    const bool pause = words_.is(Role::kBreak, name_, 0, name_.size()) && e.values.front() >= 60;
    if ((e.values.front() >= kLong && !e.held) || pause) {
      if (!e.remark.empty()) drill_.notes.push_back(e.remark);
      return;
    }
    named_sides(e);
    if (has_amount_ && out_.kind == DKind::kReps && e.held && !sets_closed_ &&
        out_.values.size() == 1 &&
        ((own_unit_ == Unit::kTimes && is_close(e)) || leads_ || is_held_name())) {
      sets_ = out_.values.front();  // `x5 hold 5 secs`
      amount(DKind::kSeconds, e.values);
      out_.held = true;
      return;
    }
    // `3 tries, 10 seconds each`, `4 tries, 3 s hold`
    if (has_amount_ && out_.kind == DKind::kGoes && out_.values.size() == 1 && !sets_closed_ &&
        sets_ == 0 && (each_behind(e) || (e.held && is_held_name()))) {
      sets_ = out_.values.front();
      amount(DKind::kSeconds, e.values);
      out_.held = e.held;
      return;
    }
    if (has_amount_) return leftover(e);
    amount(DKind::kSeconds, e.values);
    out_.held = e.held;
  }
  bool is_held_name() const {
    return words_.within(Role::kStatic, name_, 0, name_.size()) &&
           !words_.within(Role::kMoving, name_, 0, name_.size());
  }
  bool each_behind(const Element& e) const {
    return e.each ||
           std::any_of(drill_.elements.begin(), drill_.elements.end(), [&](const Element& other) {
             return other.kind == EKind::kEach && other.begin == e.next;
           });
  }
  // Right behind the count, with no words between.
  bool is_close(const Element& e) const {
    for (std::size_t i = 1; i < drill_.elements.size(); ++i) {
      if (drill_.elements[i].begin == e.begin) return drill_.elements[i - 1].next + 1 >= e.begin;
    }
    return false;
  }

  // `plank 3 x 30`
  bool is_held_set(const Element& e) const {
    constexpr double kLeast = 8;
    return e.unit == Unit::kReps && e.values.front() >= kLeast &&
           words_.within(Role::kHeldOnly, name_, 0, name_.size()) &&
           !words_.within(Role::kMoving, name_, 0, name_.size());
  }

  // `laps x4`: the name is the unit.
  bool is_length_name(const Element& e) const {
    if ((e.unit != Unit::kTimes && e.unit != Unit::kBare) || name_.empty()) return false;
    // `kangaroo hops across x2`
    const bool along = name_.size() > 1 && !has_side_behind(e) &&
                       words_.is(Role::kAlong, name_, name_.size() - 1, name_.size());
    return along || (words_.match(Role::kLength, name_, 0, name_.size()) == name_.size() &&
                     name_.front().text.size() > 2);
  }
  bool has_side_behind(const Element& e) const {
    return std::any_of(drill_.elements.begin(), drill_.elements.end(), [&](const Element& other) {
      return other.kind == EKind::kSides && other.begin == e.next;
    });
  }

  void leftover(const Element& e) {
    (void)e;  // its words are typed below the drill
  }

  void take(const Element& e) {
    switch (e.kind) {
      case EKind::kCount:
        return count(e);
      case EKind::kSetsOf:
        if (has_amount_) return leftover(e);
        amount(e.timed || is_held_set(e) ? DKind::kSeconds : kind_of(e.unit), e.values);
        sets_ = e.sets;
        sets_closed_ = true;
        out_.held = e.held;
        if (!e.remark.empty()) out_.remarks.push_back(e.remark);
        return;
      case EKind::kTime:
        return time(e);
      case EKind::kRest:
        if (!out_.rest) out_.rest = e.values.front();
        return;
      case EKind::kSides:
        // `Circle both arms, 10 each way`: what stands behind the amount counts.
        if (out_.sides && e.ways.empty() && !(both_ways_ && e.sides != Role::kEachWay) &&
            !(has_amount_ && sides_in_name_))
          return;
        sides_in_name_ = !has_amount_;
        out_.sides = e.ways.empty() ? e.sides : Role::kEachWay;
        out_.ways = e.ways;
        return;
      case EKind::kMaxHold:
        return max_hold(e);
      case EKind::kAsMany:
        if (!has_amount_ && !e.values.empty()) {
          amount(DKind::kSeconds, e.values);
          out_.as_many = true;
          out_.remarks.push_back(e.remark);
        }
        return;
      case EKind::kEach:
        if (e.of_one && !out_.sides && words_.within(Role::kOneSided, name_, 0, name_.size()))
          out_.sides = Role::kEachSide;
        return;
      case EKind::kOnOff:
      case EKind::kRounds:
      case EKind::kEmom:
      case EKind::kNothing:
        return;
    }
  }

  void max_hold(const Element& e) {
    const bool held = words_.within(Role::kStatic, name_, 0, name_.size()) ||
                      words_.within(Role::kHold, name_, 0, name_.size()) ||
                      e.remark.find("hold") != std::string::npos;
    if (!held) {
      drill_.notes.push_back(e.remark);
      if (has_amount_ && own_unit_ == Unit::kTimes) has_amount_ = false;  // `x 2 to fatigue`
      none_ = !has_amount_;
      sets_closed_ = true;
      return;
    }
    if (has_amount_ && out_.kind == DKind::kReps && own_unit_ == Unit::kTimes) {
      sets_ = out_.values.front();
      has_amount_ = false;
    }
    if (has_amount_) return;
    amount(DKind::kMaxHold, {});
    if (e.remark.find("hold") == std::string::npos) out_.remarks.push_back(e.remark);
  }

  const Lexicon& words_;
  SpokenDrill& drill_;
  const Setting& setting_;
  Pieces name_;
  SpokenDose out_;
  bool has_amount_ = false;
  bool both_ways_ = false;  ///< `10 forward + 10 side`, which may be said of a leg
  Unit own_unit_ = Unit::kBare;
  double sets_ = 0;
  bool sets_goes_ = false;
  bool sides_in_name_ = false;  ///< the sides were said before the amount
  bool leads_ = false;
  bool none_ = false;  ///< `to fatigue`: no amount at all
  bool sets_closed_ = false;
};

std::string joined(const std::vector<double>& values, std::string_view between) {
  std::string out;
  for (const double value : values) {
    if (!out.empty()) out += between;
    out += number_text(value);
  }
  return out;
}

std::string amount_text(const SpokenDose& dose) {
  const std::string range = joined(dose.values, dose.is_ladder() ? "-" : "–");
  switch (dose.kind) {
    case DKind::kReps:
      return range;
    case DKind::kGoes:
      return range + (dose.values.size() > 1 ? "" : range == "1" ? " go" : " goes");
    case DKind::kSeconds:
      if (dose.as_many) return "AMRAP " + seconds_text(dose.values.front());
      return (dose.held && dose.values.size() == 1 ? "hold " : "") +
             (dose.values.size() == 1 ? seconds_text(dose.values.front()) : range + " s");
    case DKind::kSteps:
      return range + (range == "1" ? " step" : " steps");
    case DKind::kLengths:
      return range + (range == "1" ? " length" : " lengths");
    case DKind::kMaxHold:
      return "max hold";
  }
  return {};
}

std::string sides_text(const SpokenDose& dose) {
  if (!dose.sides) return {};
  if (!dose.ways.empty() && dose.ways.front() != "both") {
    std::string out = " each way: ";
    for (const std::string& way : dose.ways) out += (&way == &dose.ways.front() ? "" : ", ") + way;
    return out;
  }
  switch (*dose.sides) {
    case Role::kEachLeg:
      return " each leg";
    case Role::kEachArm:
      return " each arm";
    case Role::kEachWay:
      return " each way";
    default:
      return " each side";
  }
}

}  // namespace

std::string seconds_text(double seconds) {
  if (seconds >= 120 && std::fmod(seconds, 60) == 0) return number_text(seconds / 60) + " min";
  return number_text(seconds) + " s";
}

std::optional<SpokenDose> resolve(const Lexicon& words, SpokenDrill& drill,
                                  const Setting& setting) {
  return Resolver(words, drill, setting).run();
}

std::string canonical(const SpokenDose& dose) {
  std::string out;
  if (dose.sets > 1) out = number_text(dose.sets) + " x ";
  out += amount_text(dose);
  out += sides_text(dose);
  if (dose.rest && *dose.rest > 0) out += ", rest " + seconds_text(*dose.rest);
  for (const std::string& remark : dose.remarks) {
    if (remark.find_first_of("0123456789") == std::string::npos) out += ", " + remark;
  }
  return out;
}

}  // namespace chalkleaf::draft
