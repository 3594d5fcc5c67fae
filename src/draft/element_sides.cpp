// On which sides a dose is done: `each leg`, `over either shoulder`, `15 s / leg`, `L/R/middle`,
// and equal amounts that name their sides, `20 s right, 20 s left`, `ten forwards and ten
// backwards`. Tested by tests/draft/sides_test.cpp.
#include <algorithm>
#include <array>

#include "draft/element_make.h"
#include "draft/elements.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

Element sides_of(Role role, std::size_t begin, std::size_t next) {
  Element out = made(EKind::kSides, begin, next);
  out.sides = role;
  return out;
}

// As the taught form writes it.
std::string_view way_of(Role role) {
  return role == Role::kLeft ? "left" : role == Role::kRight ? "right" : "middle";
}

constexpr std::array<std::pair<Role, Role>, 4> kLimbs{{{Role::kLegNoun, Role::kEachLeg},
                                                       {Role::kArmNoun, Role::kEachArm},
                                                       {Role::kWayNoun, Role::kEachWay},
                                                       {Role::kSideNoun, Role::kEachSide}}};

}  // namespace

// `leg`, `side`: what an amount is said for.
std::optional<Role> ElementReader::limb(std::size_t at, std::size_t end, std::size_t& next) const {
  for (const auto& [noun, each] : kLimbs) {
    next = skip(noun, at, end);
    if (next > at) return each;
  }
  return std::nullopt;
}

std::optional<Element> ElementReader::each_limb(std::size_t at, std::size_t end) const {
  std::size_t next = at;
  if (is(at, end, Kind::kSlash)) {
    // `30/side`, `15 s / leg`; not the slash of `fwd/back/side`.
    const bool amount =
        at > 0 && (pieces_[at - 1].is(Kind::kNumber) || pieces_[at - 1].is(Kind::kTimes) ||
                   words_.is(Role::kSecond, pieces_, at - 1, at) ||
                   words_.is(Role::kMinute, pieces_, at - 1, at) ||
                   words_.is(Role::kRepetition, pieces_, at - 1, at));
    const auto role = limb(at + 1, end, next);
    const bool tight = !pieces_[at].space_before && !pieces_[at].space_after;
    // `6 lunge jumps/leg`: the amount stands where the clause begins.
    std::size_t begin = at;
    while (begin > 0 && !is_clause_end(begin - 1, end)) --begin;
    if (role && tight && is_clause_end(next, end) && begin < at && is_number(begin, end))
      return sides_of(*role, at, next);
    if (!amount || !role || !(tight || is_clause_end(next, end))) return std::nullopt;
    return sides_of(*role, at, next);
  }
  const std::size_t prep = skip(Role::kSidePrep, at, end);
  std::size_t each = skip(Role::kSideEach, prep, end);
  // `8 a side`, `1 min a leg`: right behind the amount.
  const bool amount = at > 0 && (pieces_[at - 1].is(Kind::kNumber) ||
                                 words_.is(Role::kSecond, pieces_, at - 1, at) ||
                                 words_.is(Role::kMinute, pieces_, at - 1, at));
  if (each == prep && amount && is(at, end, Kind::kWord) && pieces_[at].text == "a") ++each;
  if (each == prep) return std::nullopt;
  std::size_t noun = each;
  if (is(noun, end, Kind::kSlash) && !pieces_[noun].space_before) ++noun;  // `e/side`
  const auto role = limb(noun, end, next);
  if (!role) return std::nullopt;
  return sides_of(*role, at, next);
}

// `other side same`, `then the other leg`, `change feet`: said where a clause begins.
std::optional<Element> ElementReader::other_side(std::size_t at, std::size_t end) const {
  const bool begins = at == 0 || is_clause_end(at - 1, end) ||
                      words_.is(Role::kAnd, pieces_, at - 1, at) ||
                      words_.is(Role::kThen, pieces_, at - 1, at);
  if (!begins) return std::nullopt;
  for (const auto& [role, each] :
       {std::pair{Role::kOtherLeg, Role::kEachSide}, {Role::kOtherSide, Role::kEachSide}}) {
    const std::size_t next = skip(role, at, end);
    if (next > at && is_clause_end(next, end)) return sides_of(each, at, next);
  }
  return std::nullopt;
}

// `L/R/middle`, `right, left, middle`, `R L and middle`, `L + R`
std::optional<Element> ElementReader::side_list(std::size_t at, std::size_t end) const {
  static const std::vector<Role> kSideRoles{Role::kLeft, Role::kRight, Role::kMiddle};
  const auto role_at = [&](std::size_t i) -> std::optional<Role> {
    for (const Role role : kSideRoles) {
      if (!has(role, i, end)) continue;
      // `box split 3 min` is a name.
      if (role == Role::kMiddle && words_.match(Role::kStatic, pieces_, i, end) > 1)
        return std::nullopt;
      return role;
    }
    return std::nullopt;
  };
  const auto first = role_at(at);
  if (!first || *first == Role::kMiddle) return std::nullopt;
  Element out = sides_of(Role::kEachSide, at, at + 1);
  std::vector<Role> seen{*first};
  const auto name = [&](Role role, std::size_t i) {
    if (role == Role::kLeft) return std::string("left");
    if (role == Role::kRight) return std::string("right");
    return pieces_[i].text.size() < 4 ? std::string("middle") : pieces_[i].text;
  };
  out.ways.push_back(name(*first, at));
  for (;;) {
    std::size_t i = out.next;
    while (is(i, end, Kind::kSlash) || is(i, end, Kind::kComma) || has(Role::kAnd, i, end)) ++i;
    auto next = role_at(i);
    // `split – right, left, side`
    if (!next && seen.size() == 2 && has(Role::kSideNoun, i, end) && is_clause_end(i + 1, end))
      next = Role::kMiddle;
    if (!next || std::find(seen.begin(), seen.end(), *next) != seen.end()) break;
    seen.push_back(*next);
    out.ways.push_back(name(*next, i));
    out.next = i + 1;
  }
  if (seen.size() < 2) return std::nullopt;
  if (seen.size() == 2 && std::find(seen.begin(), seen.end(), Role::kMiddle) == seen.end()) {
    out.ways.clear();
    out.sides = Role::kEachSide;
  }
  return out;
}

std::optional<Element> ElementReader::sides(std::size_t at, std::size_t end) const {
  auto found = each_limb(at, end);
  for (const Role role : {Role::kEachSide, Role::kEachLeg, Role::kEachArm, Role::kEachWay}) {
    if (found || is(at, end, Kind::kSlash)) break;
    if (const std::size_t next = skip(role, at, end); next > at) found = sides_of(role, at, next);
  }
  if (!found) found = other_side(at, end);
  if (const std::size_t three = skip(Role::kThreeWays, at, end); !found && three > at) {
    found = sides_of(Role::kEachSide, at, three);
    found->ways = {"right", "left", "middle"};
    return found;
  }
  if (!found) return side_list(at, end);
  // `each leg + middle`
  const std::size_t plus = skip(Role::kAnd, found->next, end);
  if (plus > found->next && has(Role::kMiddle, plus, end) && is_clause_end(plus + 1, end)) {
    found->ways = {"right", "left", "middle"};
    found->next = plus + 1;
  }
  return found;
}

// `20 s right`, `10 with the left hand`, `four one way`, `10x forward`
std::optional<ElementReader::Sided> ElementReader::sided(std::size_t at, std::size_t end) const {
  if (is(at, end, Kind::kTimes)) ++at;  // `x 5 R, x 5 L`
  const auto read = numbers(at, end);
  if (!read || read->values.size() != 1) return std::nullopt;
  Sided out;
  out.value = read->values.front();
  std::size_t i = read->next;
  if (is(i, end, Kind::kTimes)) ++i;
  if (const auto seconds = unit_seconds(i, end)) {
    out.seconds = *seconds;
  } else if (const auto unit_said = unit(i, end)) {
    const bool letter = unit_said->next == i + 1 && pieces_[i].text.size() == 1;  // `5 L 5 R`
    if (!letter) {
      out.unit = unit_said->unit;
      i = unit_said->next;
    }
  }
  constexpr std::size_t kMostBetween = 5;  // `2 times the block with the right`
  const std::size_t words = i;
  while (i < end && i < words + kMostBetween &&
         (is(i, end, Kind::kWord) || (is(i, end, Kind::kNumber) && pieces_[i].in_words))) {
    for (const Role role :
         {Role::kOneWay, Role::kLeft, Role::kRight, Role::kForwardBack, Role::kMiddle}) {
      const std::size_t next = skip(role, i, end);
      if (next == i) continue;
      // With words between, only a side that is spelled out: `10 hops on the l`.
      if (i > words && !has(Role::kSidePrep, i - 1, end) && pieces_[i].text.size() < 3) break;
      out.role = role;
      out.word = text(i, next);
      out.next = next;
      std::size_t noun_end = next;
      if (const auto of = limb(next, end, noun_end)) {
        out.limb = *of;
        out.next = noun_end;
      }
      return out;
    }
    const bool times = out.unit == Unit::kReps || out.unit == Unit::kGoes;
    const bool between = has(Role::kSidePrep, i, end) || (i > words && times);
    if (!between && !times) return std::nullopt;
    ++i;
  }
  return std::nullopt;
}

std::size_t ElementReader::past_joints(std::size_t at, std::size_t end) const {
  while (is(at, end, Kind::kComma) || is(at, end, Kind::kSlash) || has(Role::kAnd, at, end) ||
         has(Role::kThen, at, end))
    ++at;
  return at;
}

Element ElementReader::amount_of(const Sided& first, std::size_t at, const Sided& last) {
  Element out = made(first.seconds > 0 ? EKind::kTime : EKind::kCount, at, last.next);
  out.unit = first.unit == Unit::kBare || first.unit == Unit::kOwn ? Unit::kReps : first.unit;
  out.values = {first.value * (first.seconds > 0 ? first.seconds : 1)};
  return out;
}

// `5 R 5 L`, `8 front 8 side 8 back`, `20 s right, 20 s left`, `10 forward and 10 backward`
std::optional<Element> ElementReader::by_direction(std::size_t at, std::size_t end) const {
  const auto first = sided(at, end);
  if (!first) return plus_same(at, end);
  std::vector<Sided> found{*first};
  for (;;) {
    const auto next = sided(past_joints(found.back().next, end), end);
    const bool same = next && next->value == first->value &&
                      (next->seconds == first->seconds || next->seconds == 0) &&
                      next->word != first->word;
    if (!same || found.size() > 4) break;
    found.push_back(*next);
  }
  if (found.size() < 2) return std::nullopt;
  Element out = amount_of(*first, at, found.back());
  const bool ways = first->role == Role::kForwardBack || first->role == Role::kOneWay;
  if (found.size() == 2) {
    out.ways = {"both"};
    out.sides = ways ? Role::kEachWay : Role::kEachSide;
  } else if (found.size() == 3 && !ways) {
    out.sides = Role::kEachWay;
    for (const Sided& one : found) out.ways.emplace_back(way_of(one.role));
  }
  if (out.ways.empty()) out.remark = text(at, out.next);
  return out;
}

std::optional<ElementReader::Sided> ElementReader::side_first(std::size_t at,
                                                              std::size_t end) const {
  for (const Role role : {Role::kLeft, Role::kRight, Role::kMiddle, Role::kForwardBack}) {
    std::size_t next = skip(role, at, end);
    if (next == at) continue;
    Sided out;
    std::size_t noun_end = next;
    if (const auto of = limb(next, end, noun_end)) {  // `L leg 5 R leg 5`
      out.limb = *of;
      next = noun_end;
    }
    out.role = role;
    const bool tight = is(next, end, Kind::kNumber) && !pieces_[next].space_before &&
                       pieces_[next].whole && pieces_[at].text.size() == 1;  // `L10 R10`
    const auto read = numbers(next, end);
    if (!tight && (!read || read->values.size() != 1)) return std::nullopt;
    out.value = tight ? pieces_[next].value : read->values.front();
    out.next = tight ? next + 1 : read->next;
    if (const auto seconds = unit_seconds(out.next, end)) {
      out.seconds = *seconds;
    } else if (const auto unit_said = unit(out.next, end)) {
      out.unit = unit_said->unit;
      out.next = unit_said->next;
      if (out.unit == Unit::kGoes && role == Role::kForwardBack) return std::nullopt;
    } else if (is(out.next, end, Kind::kTimes)) {
      ++out.next;
    }
    return out;
  }
  return std::nullopt;
}

// `right 20 s, left 20 s`, `forward 1 lap, back 1 lap`: the side stands in front.
std::optional<Element> ElementReader::direction_before(std::size_t at, std::size_t end) const {
  const auto first = side_first(at, end);
  if (!first) return std::nullopt;
  std::vector<Sided> found{*first};
  for (;;) {
    const auto next = side_first(past_joints(found.back().next, end), end);
    if (!next || next->value != first->value || next->seconds != first->seconds || found.size() > 3)
      break;
    found.push_back(*next);
  }
  if (found.size() < 2 || found.size() > 3) return std::nullopt;
  Element out = amount_of(*first, at, found.back());
  const bool ways = first->role == Role::kForwardBack;
  // `forwards 2 lengths, backwards 2 lengths` are two things to do; one each is there and back.
  if (ways && out.unit == Unit::kLengths && out.values.front() > 1) return std::nullopt;
  if (ways && out.unit == Unit::kLengths) {  // one there, one back
    out.values.front() *= static_cast<double>(found.size());
    out.remark = text(at, out.next);
  } else if (found.size() == 2) {
    out.ways = {"both"};
    out.sides = ways ? Role::kEachWay : Role::kEachSide;
  } else if (!ways) {
    out.sides = Role::kEachWay;
    for (const Sided& one : found) out.ways.emplace_back(way_of(one.role));
  } else {
    out.remark = text(at, out.next);
  }
  return out;
}

// `10 + 10`: so many one way, so many the other.
std::optional<Element> ElementReader::plus_same(std::size_t at, std::size_t end) const {
  const bool two = is_number(at, end) && has(Role::kAnd, at + 1, end) &&
                   is(at + 1, end, Kind::kOther) && is_number(at + 2, end) &&
                   pieces_[at].value == pieces_[at + 2].value && is_clause_end(at + 3, end);
  if (!two || pieces_[at].in_words || at == 0 || !pieces_[at - 1].is(Kind::kWord))
    return std::nullopt;
  Element out = counted(Unit::kReps, {pieces_[at].value}, at, at + 3);
  std::size_t begin = at;
  while (begin > 0 && !is_clause_end(begin - 1, end)) --begin;
  const bool one_sided = words_.within(Role::kOneSided, pieces_, begin, at);
  out.ways = {"both"};
  out.sides = one_sided ? Role::kEachSide : Role::kEachWay;
  return out;
}

}  // namespace chalkleaf::draft
