// What is said beside counts and times: sides, rests, holds, rounds, ways there and back.
#include "draft/element_make.h"
#include "draft/elements.h"

#include <algorithm>

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

}  // namespace

std::optional<Element> ElementReader::there_and_back(std::size_t at, std::size_t end) const {
  std::size_t next = skip(Role::kThereAndBack, at, end);
  if (next == at) {  // `across the room and back`, `down the trainer + back`
    if (!has(Role::kThereBegin, at, end)) return std::nullopt;
    constexpr std::size_t kFar = 5;
    for (std::size_t i = at + 1; i + 1 < end && i < at + kFar; ++i) {
      if (pieces_[i].is(Kind::kNumber) || pieces_[i].is(Kind::kComma) ||
          has(Role::kThereAndBack, i, end) || has(Role::kForwardBack, i, end))
        break;
      if (!has(Role::kAnd, i, end) || !has(Role::kBack, i + 1, end)) continue;
      if (has(Role::kTo, i + 2, end)) break;  // `and back to sitting`
      next = i + 2;
      break;
    }
    if (next == at) return std::nullopt;
  }
  Element out = counted(Unit::kLengths, {2}, at, next);
  out.remark = text(at, next);
  while (has(Role::kAgain, next, end)) ++next;
  out.next = next;
  std::size_t behind = skip(Role::kEach, next, end);
  if (is(behind, end, Kind::kComma)) ++behind;
  if (const auto often = how_often(behind, end)) {
    out.values = {2 * *often};
    out.next = behind;
    out.remark = text(at, behind);
  }
  return out;
}

std::size_t ElementReader::behind_between(std::size_t at, std::size_t end, Element& rest) const {
  const std::size_t next = skip(Role::kBetween, at, end);
  for (std::size_t i = at; i < std::min(next + 1, end); ++i) {
    if (has(Role::kRound, i, end)) rest.between_rounds = true;
  }
  if (next == at) return at;
  rest.after_each = true;
  return rest.between_rounds && has(Role::kRound, next, end) ? next + 1 : next;
}

// `rest 30`, `pause 30 sec`, `30 s rest between sets`, `20s off`, `30 sec between`
std::optional<Element> ElementReader::rest(std::size_t at, std::size_t end) const {
  if (const std::size_t next = skip(Role::kNoRest, at, end); next > at) {
    return made(EKind::kNothing, at, next);
  }
  Element out = made(EKind::kRest, at, at);
  // `between 20 seconds`
  if (const std::size_t word = skip(Role::kBetween, at, end); word > at) {
    const auto read = numbers(word, end);
    std::size_t next = read ? read->next : word;
    const auto unit = read ? unit_seconds(next, end) : std::nullopt;
    if (unit && is_clause_end(next, end)) {
      out.next = next;
      out.values = {read->values.front() * *unit};
      return out;
    }
  }
  if (const std::size_t word = skip(Role::kRestBefore, at, end); word > at) {
    std::size_t i = word;
    while (is(i, end, Kind::kColon) || has(Role::kRestFiller, i, end)) ++i;
    const auto read = numbers(i, end);
    if (!read) return std::nullopt;
    std::size_t next = read->next;
    const double unit = unit_seconds(next, end).value_or(1);
    out.values = {read->values.front() * unit};
    out.next = behind_between(next, end, out);
    return out;
  }
  const auto read = numbers(at, end);
  if (!read || read->values.size() != 1) return std::nullopt;
  std::size_t next = read->next;
  const auto unit = unit_seconds(next, end);
  const std::size_t word = skip(Role::kRest, next, end);
  // `30'' rest 20''`: the word belongs to the time behind it.
  if (word > next && (unit || !has(Role::kChangeOnly, next, end)) &&
      !is(word, end, Kind::kNumber)) {
    out.next = behind_between(word, end, out);
  } else if (const std::size_t between = skip(Role::kBetween, next, end); unit && between > next) {
    out.next = behind_between(next, end, out);
    if (is(out.next, end, Kind::kWord) && is_clause_end(out.next + 1, end)) ++out.next;  // `rungs`
  } else {
    return std::nullopt;
  }
  out.values = {read->values.front() * unit.value_or(1)};
  return out;
}

// `squeeze for 5`, `stretch to 10`: behind it what is held stands, in front of it how long.
std::size_t ElementReader::hold_for(std::size_t at, std::size_t end) const {
  // `Hang for 10 seconds` names what is held.
  const bool names = at == 0 || pieces_[at - 1].is(Kind::kStop);
  if (const std::size_t word = skip(Role::kHoldFor, at, end); word > at && !names) {
    if (has(Role::kFor, word, end)) return word + 1;
  }
  const bool held = at > 0 && (words_.is(Role::kStatic, pieces_, at - 1, at) ||
                               words_.is(Role::kStretchPart, pieces_, at - 1, at));
  const bool to = held && has(Role::kTo, at, end) && is_number(at + 1, end);
  return to && (is_clause_end(at + 2, end) || sides(at + 2, end)) ? at + 1 : at;
}

// `hold 20 secs`, `hold for 5 counts`, `count of 5`
std::optional<Element> ElementReader::held(std::size_t at, std::size_t end) const {
  std::size_t i = skip(Role::kCountTo, at, end);
  const bool count = i > at;
  if (!count) i = skip(Role::kHold, at, end);
  if (i == at) i = hold_for(at, end);
  if (i == at) return std::nullopt;
  constexpr std::size_t kMostBetween = 3;  // `hold each of them for 30`
  const std::size_t word = i;
  bool each = false;
  while (i < end && i < word + kMostBetween && is(i, end, Kind::kWord) &&
         (has(Role::kHoldBetween, i, end) || has(Role::kEach, i, end))) {
    each = each || has(Role::kEach, i, end);
    ++i;
  }
  if (const auto several = sets_of(i, end); several && several->timed) {
    Element out = *several;
    out.begin = at;
    out.held = true;
    out.each = each;
    return out;
  }
  const auto read = numbers(i, end);
  // `hold 5 x3`: so long, and so often; `hold 3 x10` may be the other way about.
  const bool again = read && is(read->next, end, Kind::kTimes) &&
                     pieces_[read->next].space_before && !pieces_[read->next].space_after &&
                     is_number(read->next + 1, end) &&
                     read->values.front() > pieces_[read->next + 1].value;
  if (!read ||
      (!again && has(Role::kNotADose, read->next, end) && !has(Role::kCounted, read->next, end))) {
    return std::nullopt;
  }
  std::size_t next = read->next;
  auto unit = unit_seconds(next, end);
  if (!unit) {
    if (const std::size_t counted = skip(Role::kCounted, next, end); counted > next) {
      next = counted;
    } else if (this->unit(next, end)) {
      return std::nullopt;
    }
  }
  Element out = made(EKind::kTime, at, next);
  out.values = read->values;
  scale(out.values, unit.value_or(1));
  out.held = true;
  out.each = each;
  return out;
}

// `until stuck 5`, `until 5 stuck`, `until you land 5`, `until you have 3 good stands in a row`
std::optional<Element> ElementReader::until(std::size_t at, std::size_t end) const {
  const std::size_t word = skip(Role::kUntil, at, end);
  if (word == at) return std::nullopt;
  constexpr std::size_t kFar = 4;
  std::size_t number = word;
  while (number < end && number < word + kFar && !is_number(number, end)) {
    if (!pieces_[number].is(Kind::kWord)) return std::nullopt;
    ++number;
  }
  if (!is_number(number, end) || !pieces_[number].whole) return std::nullopt;
  std::size_t next = number + 1;
  std::size_t wait = next;
  if (unit_seconds(wait, end)) return std::nullopt;  // `until 5 min`
  while (next < end && !is_clause_end(next, end) && next < number + 7) ++next;
  bool stuck = has(Role::kStuck, number - 1, end) || has(Role::kInARow, number + 1, end);
  for (std::size_t i = word; i < next && !stuck; ++i) {
    stuck = has(Role::kStuck, i, end) || has(Role::kInARow, i, end);
  }
  if (!stuck) return std::nullopt;
  Element out = counted(Unit::kReps, {pieces_[number].value}, at, next);
  out.remark = text(at, next);
  return out;
}

std::optional<Element> ElementReader::rounds(std::size_t at, std::size_t end) const {
  const auto round = [&](double n, std::size_t next) {
    Element out = made(EKind::kRounds, at, next);
    out.values = {n};
    return out;
  };
  if (const std::size_t word = skip(Role::kSuperset, at, end); word > at) {
    std::size_t next = word;
    if (is(next, end, Kind::kComma)) ++next;
    if (const auto often = how_often(next, end)) return round(*often, next);
    return std::nullopt;
  }
  if (const std::size_t word = skip(Role::kCircuit, at, end); word > at) {  // `circuit x 2`
    std::size_t next = word;
    const bool first = at == 0 || is_clause_end(at - 1, end);
    const bool crossed = is(next, end, Kind::kTimes) || has(Role::kTwice, next, end);
    const auto often = first && crossed ? how_often(next, end) : std::nullopt;
    if (often && is_clause_end(next, end)) return round(*often, next);
  }
  // `go round 3 times`, where a clause begins; not `run thro display x2`.
  const bool begins = at == 0 || is_clause_end(at - 1, end) ||
                      words_.is(Role::kAnd, pieces_, at - 1, at) ||
                      words_.is(Role::kEach, pieces_, at - 1, at);
  if (const std::size_t word = begins ? skip(Role::kThrough, at, end) : at; word > at) {
    std::size_t next = word;
    if (has(Role::kIt, next, end)) ++next;
    if (has(Role::kRound, next, end)) ++next;
    if (const auto often = how_often(next, end)) return round(*often, next);
    return std::nullopt;
  }
  if (has(Role::kTwice, at, end)) {  // `twice round`
    const std::size_t word = skip(Role::kThrough, at + 1, end);
    if (word > at + 1 && is_clause_end(word, end)) return round(2, word);
  }
  std::size_t number = is(at, end, Kind::kTimes) ? at + 1 : at;
  if (!is_number(number, end) || !pieces_[number].whole) return std::nullopt;
  std::size_t next = number + 1;
  if (is(next, end, Kind::kTimes)) ++next;
  if (const std::size_t word = skip(Role::kRound, next, end); word > next) {
    if (has(Role::kOf, word, end) && has(Role::kArticle, word + 1, end)) {
      return counted(Unit::kLengths, {pieces_[number].value}, at, word);  // of the ground
    }
    const bool of = has(Role::kOf, word, end);
    // `jog 3x round the hall`
    const bool around = has(Role::kArticle, word, end);
    if (around) return counted(Unit::kLengths, {pieces_[number].value}, at, next);
    return round(pieces_[number].value, of ? word + 1 : word);
  }
  std::size_t often_end = at;
  auto often = how_often(often_end, end);  // `2 times through`
  if (!often && is_number(at, end)) {      // `2 turns of the circuit`
    if (const auto turns = unit(at + 1, end); turns && turns->unit == Unit::kGoes) {
      often = pieces_[at].value;
      often_end = turns->next;
    }
  }
  if (often) {
    const std::size_t word = skip(Role::kThrough, often_end, end);
    if (word > often_end && is_clause_end(word, end)) return round(*often, word);
  }
  return std::nullopt;
}

// `x 3`, `x 10-12`, `x 3 sets`; with what is counted behind it
std::optional<Element> ElementReader::times(std::size_t at, std::size_t end) const {
  if (!is(at, end, Kind::kTimes)) return std::nullopt;
  const auto read = numbers(at + 1, end);
  if (!read || !read->whole) return std::nullopt;
  std::size_t next = read->next;
  std::size_t unit_end = next;
  if (const auto seconds = unit_seconds(unit_end, end)) {
    Element out = made(EKind::kTime, at, unit_end);
    out.values = read->values;
    scale(out.values, *seconds);
    return out;
  }
  Element out = counted(Unit::kTimes, read->values, at, next);
  if (const auto behind = unit(next, end)) {
    const bool letter = pieces_[next].text.size() == 1;
    if (behind->unit != Unit::kOwn && !letter) {
      out.unit = behind->unit == Unit::kReps ? Unit::kTimes : behind->unit;
      out.next = behind->next;
    }
  }
  return out;
}

// `work 40 rest 20`, `work for 40 s, rest for 20 s`
std::optional<Element> ElementReader::work_rest(std::size_t at, std::size_t end) const {
  std::size_t i = skip(Role::kWork, at, end);
  if (i == at || pieces_[at].text.size() < 3) return std::nullopt;
  if (is(i, end, Kind::kColon) || has(Role::kFor, i, end)) ++i;
  if (!is_number(i, end)) return std::nullopt;
  const double work = pieces_[i++].value;
  const auto unit = unit_seconds(i, end);
  while (is(i, end, Kind::kComma) || is(i, end, Kind::kSlash) || has(Role::kAnd, i, end)) ++i;
  const std::size_t word = skip(Role::kRestBefore, i, end);
  if (word == i) return std::nullopt;
  i = word;
  if (is(i, end, Kind::kColon) || has(Role::kFor, i, end)) ++i;
  if (!is_number(i, end)) return std::nullopt;
  const double rest = pieces_[i++].value;
  const auto rest_unit = unit_seconds(i, end);
  Element out = made(EKind::kOnOff, at, i);
  out.values = {work * unit.value_or(1), rest * rest_unit.value_or(1)};
  return out;
}

// `3 rounds 30/15: …`: two numbers by themselves are seconds of work and of rest where rounds stand
// beside them.
std::optional<Element> ElementReader::bare_on_off(std::size_t at, std::size_t end) const {
  constexpr double kLeastWork = 10;
  constexpr double kLeastRest = 5;
  constexpr double kMost = 120;
  const bool both = is(at, end, Kind::kNumber) && is(at + 1, end, Kind::kSlash) &&
                    is(at + 2, end, Kind::kNumber) && !pieces_[at + 1].space_before &&
                    !pieces_[at + 2].space_before;
  if (!both || !pieces_[at].whole || !pieces_[at + 2].whole) return std::nullopt;
  const double work = pieces_[at].value;
  const double rest = pieces_[at + 2].value;
  if (work < kLeastWork || rest < kLeastRest || work > kMost || rest > work) return std::nullopt;
  std::size_t before = at;
  if (before > 0 && pieces_[before - 1].is(Kind::kComma)) --before;
  const bool behind_rounds = before > 0 && words_.is(Role::kRound, pieces_, before - 1, before);
  const bool before_rounds = is(at + 3, end, Kind::kTimes) || rounds(at + 3, end).has_value() ||
                             (is(at + 3, end, Kind::kComma) && rounds(at + 4, end).has_value());
  if (!behind_rounds && !before_rounds) return std::nullopt;
  Element out = made(EKind::kOnOff, at, at + 3);
  out.values = {work, rest};
  return out;
}

std::optional<Element> ElementReader::on_off(std::size_t at, std::size_t end) const {
  const auto first = numbers(at, end);
  if (!first || first->values.size() != 1) return std::nullopt;
  std::size_t i = first->next;
  const auto unit = unit_seconds(i, end);
  const std::size_t work = skip(Role::kWork, i, end);
  const bool said = work > i;
  i = work;
  const bool slash = is(i, end, Kind::kSlash);
  if (slash || is(i, end, Kind::kComma)) ++i;
  if (!said && !(slash && unit)) return std::nullopt;
  const auto second = numbers(i, end);
  if (!second || second->values.size() != 1) return std::nullopt;
  i = second->next;
  const auto rest_unit = unit_seconds(i, end);
  std::size_t off = skip(Role::kRest, i, end);
  // `40 seconds work, 20 seconds swear`
  if (off == i && said && unit && rest_unit && is(i, end, Kind::kWord) && is_clause_end(i + 1, end))
    off = i + 1;
  if (off == i && !(slash && unit && rest_unit && !said)) return std::nullopt;
  Element out = made(EKind::kOnOff, at, off);
  // `2 mins on / 30 off`: rests are seconds.
  out.values = {first->values.front() * unit.value_or(1),
                second->values.front() * rest_unit.value_or(1)};
  return out;
}

}  // namespace chalkleaf::draft
