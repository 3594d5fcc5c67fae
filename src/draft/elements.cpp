// See the header.
#include "draft/elements.h"
#include "draft/element_make.h"

#include <algorithm>

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

}  // namespace

// A number that is not a name's: not the 1 of `A1`, not a half of `1/1`, not `no. 4`.
bool ElementReader::is_number(std::size_t at, std::size_t end) const {
  if (!is(at, end, Kind::kNumber)) return false;
  const Piece& piece = pieces_[at];
  if (at > 0) {
    const Piece& before = pieces_[at - 1];
    if (before.is(Kind::kWord) && !piece.space_before) return false;
    // `#3`, but both of `6+6`
    const bool sum = before.text == "+" && at > 1 && pieces_[at - 2].is(Kind::kNumber);
    if (before.is(Kind::kOther) && !piece.space_before && !sum) return false;
    if (before.is(Kind::kSlash) && at > 1 && pieces_[at - 2].is(Kind::kNumber) &&
        !before.space_before && !piece.space_before) {
      return false;
    }
    // The 12 of `the count-eights 1 to 12`
    const bool range = before.is(Kind::kDash) && !before.space_before && !piece.space_before &&
                       at > 1 && pieces_[at - 2].is(Kind::kNumber);
    if (range && !is_number(at - 2, end)) return false;
    std::size_t name = at - 1;
    if (before.is(Kind::kStop) && name > 0) --name;
    const bool crossed = is(at + 1, end, Kind::kTimes);
    const bool any = piece.value < 10 || words_.is(Role::kAnyNumber, pieces_, name, at) ||
                     words_.is(Role::kChild, pieces_, name, at);
    if (!crossed && any && piece.whole && is_name_number(name, at, end)) return false;
    if (!crossed && is_next_name_number(at)) return false;
    // `Turn 1: …`
    const bool label = at == 1 && before.is(Kind::kWord) && !before.text.ends_with('s') &&
                       piece.value < 10 && is(at + 1, end, Kind::kColon);
    const bool group =
        words_.any_of({Role::kStatic, Role::kEmom, Role::kAsMany, Role::kSuperset}, pieces_, 0, at);
    if (label && !group) return false;
    const auto ratio = [&](std::size_t colon) {  // `1:1`
      return is(colon, end, Kind::kColon) && !pieces_[colon].space_before &&
             !pieces_[colon].space_after;
    };
    if (before.is(Kind::kColon) && at > 1 && pieces_[at - 2].is(Kind::kNumber) && ratio(at - 1))
      return false;
  }
  if (is(at + 1, end, Kind::kColon) && is(at + 2, end, Kind::kNumber) &&
      !pieces_[at + 1].space_before && !pieces_[at + 1].space_after)
    return false;
  const bool over = is(at + 1, end, Kind::kSlash) && is(at + 2, end, Kind::kNumber) &&
                    !pieces_[at + 1].space_before && !pieces_[at + 2].space_before;
  return !over || slash_ladder(at, end) > 0;
}

// `line 1`, `beam 2`, `girl 11`; but `on the beam 5` where an amount may stand.
bool ElementReader::is_name_number(std::size_t name, std::size_t at, std::size_t end) const {
  if (!words_.is(Role::kNameBeforeNumber, pieces_, name, at)) return false;
  std::size_t behind = at + 1;
  // `the level 3s`
  if (is(behind, end, Kind::kWord) && pieces_[behind].text == "s" &&
      !pieces_[behind].space_before && words_.is(Role::kAnyNumber, pieces_, name, at))
    return true;
  const bool range = is(behind, end, Kind::kDash) && is(behind + 1, end, Kind::kNumber) &&
                     !pieces_[behind].space_before && !pieces_[behind].space_after;
  if (range) behind += 2;                                      // `to the pit 4-6 turns`
  if (words_.is(Role::kRank, pieces_, name, at)) return true;  // `any level 1 set`
  if (unit(behind, end) || has(Role::kCounted, behind, end) || unit_seconds(behind, end))
    return false;
  if (words_.is(Role::kChild, pieces_, name, at)) return true;
  // A beam is also where something is done: `on the low beam 10`.
  const bool place = words_.is(Role::kPart, pieces_, name, at);
  if (!place) return true;
  const bool first = name == 0 || is_clause_end(name - 1, end) || pieces_[name - 1].is(Kind::kOpen);
  const bool amount_follows = unit(at + 1, end) || sides(at + 1, end) ||
                              is_clause_end(at + 1, end) || has(Role::kQualifier, at + 1, end);
  return first || !amount_follows;
}

// `stations 1 + 6`, `nos. 7, 15 and 28`: the numbers behind the first.
bool ElementReader::is_next_name_number(std::size_t at) const {
  constexpr std::size_t kMost = 6;
  std::size_t i = at;
  for (std::size_t n = 0; n < kMost && i > 1; ++n) {
    const Piece& between = pieces_[i - 1];
    const bool joined = (between.is(Kind::kComma) && !pieces_[at].in_words) ||
                        words_.is(Role::kAnd, pieces_, i - 1, i);
    if (!joined || !pieces_[i - 2].is(Kind::kNumber)) return false;
    i -= 2;
    std::size_t name = i;
    if (name > 0 && pieces_[name - 1].is(Kind::kStop)) --name;
    if (name == 0) return false;
    const bool named = words_.is(Role::kNameBeforeNumber, pieces_, name - 1, name) &&
                       (pieces_[name - 1].text.ends_with('s') ||
                        words_.is(Role::kNumbersWord, pieces_, name - 1, name));
    // `trio 1 + 4`, and nothing behind it; of `line 1, 10` the second may be an amount.
    const bool last = n == 0 && !between.is(Kind::kComma) && is_clause_end(at + 1, pieces_.size());
    if (named || (last && words_.is(Role::kNameBeforeNumber, pieces_, name - 1, name))) return true;
  }
  return false;
}

std::string ElementReader::text(std::size_t begin, std::size_t end) const {
  if (begin >= end) return {};
  return std::string(
      line_.substr(pieces_[begin].begin, pieces_[end - 1].end - pieces_[begin].begin));
}

std::optional<ElementReader::Numbers> ElementReader::numbers(std::size_t at,
                                                             std::size_t end) const {
  if (!is_number(at, end)) return std::nullopt;
  Numbers out;
  out.values.push_back(pieces_[at].value);
  out.whole = pieces_[at].whole;
  out.next = at + 1;
  if (const std::size_t rungs = slash_ladder(at, end); rungs > 0) {
    for (; out.next < at + 2 * rungs - 1; out.next += 2)
      out.values.push_back(pieces_[out.next + 1].value);
    return out;
  }
  while (is(out.next, end, Kind::kDash) && is(out.next + 1, end, Kind::kNumber)) {
    const Piece& dash = pieces_[out.next];
    if (dash.space_before || dash.space_after) break;
    out.values.push_back(pieces_[out.next + 1].value);
    out.whole = out.whole && pieces_[out.next + 1].whole;
    out.next += 2;
  }
  return out;
}

std::optional<double> ElementReader::unit_seconds(std::size_t& at, std::size_t end) const {
  for (const auto& [role, seconds] :
       {std::pair{Role::kSecond, 1.0}, {Role::kMinute, 60.0}, {Role::kHour, 3600.0}}) {
    if (const std::size_t taken = words_.match(role, pieces_, at, end); taken > 0) {
      at += taken;
      if (is(at, end, Kind::kStop) && at + 1 < end && !pieces_[at].space_before) ++at;  // `sec.`
      return seconds;
    }
  }
  return std::nullopt;
}

std::optional<ElementReader::UnitRead> ElementReader::unit(std::size_t at, std::size_t end) const {
  if (has(Role::kRound, at, end)) return std::nullopt;
  for (const auto& [role, unit] : {std::pair{Role::kRepetition, Unit::kReps},
                                   {Role::kGo, Unit::kGoes},
                                   {Role::kLength, Unit::kLengths},
                                   {Role::kStep, Unit::kSteps},
                                   {Role::kSet, Unit::kSets},
                                   {Role::kOwnCount, Unit::kOwn}}) {
    const std::size_t taken = words_.match(role, pieces_, at, end);
    if (taken == 0) continue;
    std::size_t next = at + taken;
    // `3 nos. each side`: the stop of a short form ends no sentence.
    const bool stop =
        is(next, end, Kind::kStop) && !pieces_[next].space_before && is(next + 1, end, Kind::kWord);
    if (stop && line_[pieces_[next + 1].begin] >= 'a' && line_[pieces_[next + 1].begin] <= 'z' &&
        pieces_[next - 1].text.size() < 5)
      ++next;
    return UnitRead{unit, next, text(at, at + taken)};
  }
  return std::nullopt;
}

bool ElementReader::is_clause_end(std::size_t at, std::size_t end) const {
  if (at >= end) return true;
  const Piece& piece = pieces_[at];
  if (piece.is(Kind::kDash)) return piece.space_before || piece.space_after;
  if (piece.is(Kind::kSlash)) return piece.space_before && piece.space_after;
  return piece.is(Kind::kComma) || piece.is(Kind::kStop) || piece.is(Kind::kSemicolon) ||
         piece.text == "·" || piece.is(Kind::kColon) || piece.is(Kind::kOpen) ||
         piece.is(Kind::kClose) || has(Role::kThen, at, end);
}

std::optional<double> ElementReader::how_often(std::size_t& at, std::size_t end) const {
  if (has(Role::kTwice, at, end)) return ++at, 2;
  if (has(Role::kOnce, at, end)) return ++at, 1;
  std::size_t i = at;
  const bool before = is(i, end, Kind::kTimes);
  if (before) ++i;
  if (!is_number(i, end) || !pieces_[i].whole) return std::nullopt;
  const double value = pieces_[i].value;
  ++i;
  const bool behind = is(i, end, Kind::kTimes);
  const std::size_t word = words_.match(Role::kRepetition, pieces_, i, end);
  if (!before && !behind && word == 0) return std::nullopt;
  at = i + (behind ? 1 : before ? 0 : word);
  return value;
}

// `3 x 10`, `3 sets of 8 reps`, `sets of 5 x 3`, `15 x 3 sets`
std::optional<Element> ElementReader::sets_of(std::size_t at, std::size_t end) const {
  if (has(Role::kSet, at, end) && has(Role::kOf, at + 1, end)) {
    const auto read = numbers(at + 2, end);
    if (!read) return std::nullopt;
    std::size_t next = read->next;
    if (const auto behind = unit(next, end); behind && behind->unit == Unit::kReps) {
      next = behind->next;
    }
    Element out = counted(Unit::kReps, read->values, at, next);
    std::size_t often_end = next;
    if (const auto often = how_often(often_end, end)) {
      out.kind = EKind::kSetsOf;
      out.sets = *often;
      out.next = often_end;
    } else if (has(Role::kNotADose, next, end)) {
      return std::nullopt;  // `series of 2 elements`
    }
    return out;
  }
  const auto first = numbers(at, end);
  constexpr double kMostSets = 60;  // above it a turn in degrees: `pirouettes 360 x 5`
  if (!first || !first->whole) return std::nullopt;
  std::size_t i = first->next;
  if (is(i, end, Kind::kTimes) && first->values.front() > kMostSets) return std::nullopt;
  std::size_t unit_end = i;
  const bool timed_first =
      unit_seconds(unit_end, end).has_value() || (unit_end = skip(Role::kCounted, i, end)) > i;
  if (timed_first) return std::nullopt;  // `20 s x 3` is a time and how often
  std::size_t sets_word = skip(Role::kSet, i, end);
  // `3 slow sets of 5`, `3 of 20 sec`
  if (const std::size_t how = skip(Role::kSlow, i, end); how > i && has(Role::kSet, how, end))
    sets_word = skip(Role::kSet, how, end);
  if (has(Role::kOf, i, end) && is_number(i + 1, end)) {
    std::size_t time = i + 2;
    if (unit_seconds(time, end)) sets_word = i + 1;
  }
  // `three goes of 20 seconds`
  if (const std::size_t goes = skip(Role::kGo, i, end); goes > i && has(Role::kOf, goes, end)) {
    std::size_t time = goes + 2;
    if (is_number(goes + 1, end) && unit_seconds(time, end)) sets_word = goes;
  }
  // `3 times 10 seconds`, `3 reps of 10 seconds`
  if (const std::size_t often = skip(Role::kRepetition, i, end); often > i) {
    std::size_t time = often + (has(Role::kOf, often, end) ? 1 : 0);
    const bool number = is_number(time, end) && time < end;
    if (number && unit_seconds(++time, end)) sets_word = often;
  }
  // `3 games of 1 min`
  if (sets_word == i && is(i, end, Kind::kWord) && pieces_[i].text.ends_with('s') &&
      has(Role::kOf, i + 1, end) && is_number(i + 2, end)) {
    std::size_t time = i + 3;
    if (unit_seconds(time, end)) sets_word = i + 1;
  }
  const bool named = sets_word > i;
  i = sets_word;
  if (has(Role::kOf, i, end)) ++i;
  const bool cross = is(i, end, Kind::kTimes);
  if (cross) ++i;
  if (is(i, end, Kind::kOther) && i + 1 < end) return std::nullopt;
  if (!named && !cross) return std::nullopt;
  if (named && !cross && is(i, end, Kind::kComma)) return std::nullopt;
  const auto second = numbers(i, end);
  if (!second || (first->values.size() > 1 && second->values.size() > 1)) return std::nullopt;
  Element out = made(EKind::kSetsOf, at, second->next);
  out.unit = Unit::kReps;
  out.sets = first->values.front();
  out.values = second->values;
  std::size_t next = second->next;
  if (const auto seconds = unit_seconds(next, end)) {
    // `3 x 10 s rest` has no amount.
    scale(out.values, *seconds);
    out.timed = true;
    out.next = next;
    return out;
  }
  if (const std::size_t count = skip(Role::kCounted, next, end); count > next) {
    out.timed = true;
    out.next = count;
    return out;
  }
  if (next < end && !pieces_[next].space_before &&
      (pieces_[next].is_word("m") || pieces_[next].is_word("cm"))) {
    Element distance = counted(Unit::kTimes, first->values, at, next + 1);  // `4 x 15m`
    distance.remark = text(i, next + 1);
    return distance;
  }
  const bool letter = next < end && pieces_[next].text.size() == 1 && pieces_[next].space_before;
  if (const auto behind = letter ? std::nullopt : unit(next, end)) {  // `2x8 L/R` has no lengths
    if (behind->unit == Unit::kSets) {                                // `15 x 3 sets`
      out.sets = second->values.front();
      out.values = first->values;
      out.next = behind->next;
      return out;
    }
    out.unit = behind->unit;
    if (behind->unit == Unit::kOwn) out.remark = behind->remark;
    out.next = behind->next;
  } else if (first->values.size() > 1) {
    return std::nullopt;
  }
  return out;
}

std::optional<Element> ElementReader::timed(const Numbers& read, std::size_t at,
                                            std::size_t end) const {
  std::size_t next = read.next;
  auto unit = unit_seconds(next, end);
  if (at > 0 && has(Role::kAgeBefore, at - 1, end)) return std::nullopt;
  if (unit && *unit > 60) return std::nullopt;  // nobody does a drill for hours
  const std::size_t counted_end = skip(Role::kCounted, next, end);
  if (!unit && counted_end == next) return std::nullopt;
  if (!unit && pieces_[at].in_words && read.values.front() < 2)
    return std::nullopt;  // `one counts`
  Element out = made(EKind::kTime, at, unit ? next : counted_end);
  out.remark = text(at, out.next);
  out.values = read.values;
  scale(out.values, unit.value_or(1));
  // `1 min 30`, `1 min 30 s`
  if (unit && *unit > 1 && out.values.size() == 1 && is_number(next, end)) {
    std::size_t more = next + 1;
    const bool seconds = unit_seconds(more, end).has_value();
    if (seconds) {
      out.values.front() += pieces_[next].value;
      out.next = more;
    }
  }
  const bool stops = out.next > at && pieces_[out.next - 1].is(Kind::kStop);
  if (const std::size_t hold = skip(Role::kHold, out.next, end); hold > out.next && !stops) {
    out.next = hold;
    out.held = true;
  }
  return out;
}

std::optional<Element> ElementReader::number(std::size_t at, std::size_t end, Place place) const {
  if (!is_number(at, end)) return std::nullopt;
  // `after 10 mins`, `teams of 4`: said of something else.
  if (at > 0 && words_.is(Role::kNoAmountBehind, pieces_, at - 1, at) && place == Place::kInside) {
    const auto read = numbers(at, end);
    const auto behind = unit(read->next, end);
    const bool goes = behind && !has(Role::kOrder, at - 1, end) &&
                      (behind->unit == Unit::kGoes || behind->unit == Unit::kLengths);
    // `step out 4 passes each` is an amount all the same.
    if (!goes && !has(Role::kEach, read->next, end)) return std::nullopt;
  }
  if (auto found = by_direction(at, end)) return found;
  if (auto found = on_off(at, end)) return found;
  if (auto found = rest(at, end)) return found;
  if (auto found = rounds(at, end)) return found;
  const auto read = numbers(at, end);
  if (auto found = sets_of(at, end)) return found;
  if (auto found = timed(*read, at, end)) return found;
  std::size_t next = read->next;
  if (is(next, end, Kind::kTimes) && is(next + 1, end, Kind::kNumber)) return std::nullopt;
  if (is(next, end, Kind::kTimes) && read->whole) {  // `2 x there and back`
    if (auto ways = there_and_back(next + 1, end)) {
      ways->begin = at;
      for (double& value : ways->values) value *= read->values.front();
      return ways;
    }
  }
  // `2 x length each`
  if (is(next, end, Kind::kTimes) && is(next + 1, end, Kind::kWord) && read->whole &&
      pieces_[next + 1].text.size() > 2 && has(Role::kLength, next + 1, end))
    return counted(Unit::kLengths, read->values, at, next + 2);
  if (is(next, end, Kind::kTimes) && read->whole) {  // `10x`
    return counted(Unit::kTimes, read->values, at, next + 1);
  }
  if (auto behind = unit(next, end); behind && read->whole) {
    // `with 1 turn below 5-8x`: a move, not a go.
    const bool move = behind->unit == Unit::kGoes && read->values.front() < 2 &&
                      place == Place::kInside && !is_clause_end(behind->next, end) &&
                      !has(Role::kEach, behind->next, end);
    // `2 lines (25)`, `10 l`: a letter counts lengths only right behind its number.
    const bool letter = pieces_[next].text.size() == 1 && pieces_[next].space_before;
    // `2 steps and push off`
    const bool steps = behind->unit == Unit::kSteps && has(Role::kAnd, behind->next, end);
    if (move || letter || steps) return std::nullopt;
    if (pieces_[at].in_words && read->values.front() < 2 && behind->unit == Unit::kReps) {
      return std::nullopt;  // `one time`
    }
    Element out = counted(behind->unit, read->values, at, behind->next);
    if (behind->unit == Unit::kOwn) out.remark = behind->remark;
    if (behind->unit == Unit::kLengths) there_again(out, end);
    if (behind->unit == Unit::kLengths) of_what(out, end);
    if (behind->unit == Unit::kReps && has(Role::kTimes, next, end)) {
      out.unit = Unit::kTimes;
    }
    if (const std::size_t row = skip(Role::kInARow, out.next, end); row > out.next) {
      out.remark = text(out.next, row);
      out.next = row;
    }
    return out;
  }
  return bare(*read, at, end, place);
}

// `1 length of the floor each`: what it is a length of, where `each` stands behind it.
void ElementReader::of_what(Element& out, std::size_t end) const {
  if (!has(Role::kOf, out.next, end)) return;
  std::size_t i = out.next + 1;
  if (has(Role::kArticle, i, end)) ++i;
  if (!is(i, end, Kind::kWord) || has(Role::kEach, i, end) || !has(Role::kEach, i + 1, end)) return;
  out.remark = text(out.begin, i + 1);
  out.next = i + 1;
}

// `1 lap each forward and backward`: one of each.
void ElementReader::there_again(Element& out, std::size_t end) const {
  const std::size_t each = skip(Role::kEach, out.next, end);
  const std::size_t way = skip(Role::kForwardBack, each, end);
  if (each == out.next || way == each || !has(Role::kAnd, way, end)) return;
  const std::size_t other = skip(Role::kForwardBack, way + 1, end);
  if (other == way + 1 || !is_clause_end(other, end)) return;
  out.remark = text(out.next, other);
  out.next = other;
  out.each = true;
  for (double& value : out.values) value *= 2;
}

std::optional<Element> ElementReader::phrase(std::size_t at, std::size_t end) const {
  for (const auto& [role, kind] : {std::pair{Role::kMaxHold, EKind::kMaxHold},
                                   {Role::kToFatigue, EKind::kMaxHold},
                                   {Role::kAsMany, EKind::kAsMany},
                                   {Role::kEmom, EKind::kEmom}}) {
    const std::size_t word = skip(role, at, end);
    if (word == at) continue;
    Element out = made(kind, at, word);
    out.remark = text(at, word);
    std::size_t next = word;
    if (kind != EKind::kMaxHold && is_number(next, end)) {
      const double value = pieces_[next].value;
      ++next;
      const auto unit = unit_seconds(next, end);
      out.values = {value * unit.value_or(kind == EKind::kEmom ? 60 : 1)};
      out.next = next;
      out.remark = text(at, next);
    }
    return out;
  }
  // `pull ups, max x 3`: as many as can be, which is no amount.
  const bool crossed =
      is(at + 1, end, Kind::kTimes) || (at > 0 && pieces_[at - 1].is(Kind::kTimes));
  if (has(Role::kMaxAlone, at, end) && crossed) {
    Element out = made(EKind::kMaxHold, at, at + 1);
    out.remark = text(at, at + 1);
    return out;
  }
  if (const std::size_t best = skip(Role::kBestOf, at, end); best > at && is_number(best, end)) {
    Element out = counted(Unit::kGoes, {pieces_[best].value}, at, best + 1);
    out.remark = text(at, best + 1);
    return out;
  }
  for (const auto& [role, value] : {std::pair{Role::kTwice, 2.0}, {Role::kOnce, 1.0}}) {
    if (const std::size_t word = skip(role, at, end); word > at) {
      if (at > 0 && has(Role::kNoAmountBehind, at - 1, end)) return std::nullopt;  // `at once`
      if (!is_clause_end(word, end) && !sides(word, end) && !has(Role::kEach, word, end))
        return std::nullopt;
      return counted(Unit::kTimes, {value}, at, word);
    }
  }
  return std::nullopt;
}

std::optional<Element> ElementReader::read(std::size_t at, std::size_t end, Place place) const {
  auto found = read_any(at, end, place);
  // `3 x a week`, `4 days from 7`
  if (found && found->is_amount()) {
    const std::size_t rate = skip(Role::kRate, found->next, end);
    if (rate > found->next) return made(EKind::kNothing, at, rate);
  }
  return found;
}

std::optional<Element> ElementReader::read_any(std::size_t at, std::size_t end, Place place) const {
  if (auto found = direction_before(at, end)) return found;
  if (auto found = work_rest(at, end)) return found;
  if (auto found = bare_on_off(at, end)) return found;
  if (auto found = there_and_back(at, end)) return found;
  if (auto found = phrase(at, end)) return found;
  if (auto found = rounds(at, end)) return found;
  if (auto found = until(at, end)) return found;
  if (auto found = sets_of(at, end)) return found;
  if (auto found = held(at, end)) return found;
  if (auto found = rest(at, end)) return found;
  if (auto found = sides(at, end)) return found;
  if (is(at, end, Kind::kTimes)) {
    if (auto found = by_direction(at, end)) return found;
  }
  if (auto found = times(at, end)) return found;
  if (auto found = number(at, end, place)) return found;
  if (const std::size_t next = skip(Role::kEachPerson, at, end); next > at) {
    return made(EKind::kNothing, at, next);
  }
  if (const std::size_t next = std::max(skip(Role::kEach, at, end), skip(Role::kForAll, at, end));
      next > at) {
    Element out = made(EKind::kEach, at, next);
    out.remark = text(at, next);
    out.of_each = next > at + 1;
    return out;
  }
  return std::nullopt;
}

}  // namespace chalkleaf::draft
