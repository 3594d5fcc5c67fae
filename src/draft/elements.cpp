// See the header.
#include "draft/elements.h"

#include <algorithm>

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

Element made(EKind kind, std::size_t begin, std::size_t next) {
  Element out;
  out.kind = kind;
  out.begin = begin;
  out.next = next;
  return out;
}

Element counted(Unit unit, std::vector<double> values, std::size_t begin, std::size_t next) {
  Element out = made(EKind::kCount, begin, next);
  out.unit = unit;
  out.values = std::move(values);
  return out;
}

void scale(std::vector<double>& values, double by) {
  for (double& value : values) value *= by;
}

}  // namespace

// A number that is not a name's: not the 1 of `A1`, not a half of `1/1`, not `no. 4`.
bool ElementReader::is_number(std::size_t at, std::size_t end) const {
  if (!is(at, end, Kind::kNumber)) return false;
  const Piece& piece = pieces_[at];
  if (at > 0) {
    const Piece& before = pieces_[at - 1];
    if (before.is(Kind::kWord) && !piece.space_before) return false;
    if (before.is(Kind::kOther) && !piece.space_before) return false;  // #3
    if (before.is(Kind::kSlash) && at > 1 && pieces_[at - 2].is(Kind::kNumber) &&
        !before.space_before && !piece.space_before) {
      return false;
    }
    std::size_t name = at - 1;
    if (before.is(Kind::kStop) && name > 0) --name;
    const bool crossed = is(at + 1, end, Kind::kTimes) && is(at + 2, end, Kind::kNumber);
    const bool child = words_.is(Role::kChild, pieces_, name, at);
    if (!crossed && (piece.value < 10 || child) && piece.whole && is_name_number(name, at, end)) {
      return false;
    }
  }
  const bool over = is(at + 1, end, Kind::kSlash) && is(at + 2, end, Kind::kNumber) &&
                    !pieces_[at + 1].space_before && !pieces_[at + 2].space_before;
  return !over;
}

// `line 1`, `beam 2`, `girl 11`; but `on the beam 5` where an amount may stand.
bool ElementReader::is_name_number(std::size_t name, std::size_t at, std::size_t end) const {
  if (!words_.is(Role::kNameBeforeNumber, pieces_, name, at)) return false;
  if (words_.is(Role::kChild, pieces_, name, at)) return true;
  if (unit(at + 1, end)) return false;
  // A beam is also where something is done: `on the low beam 10`.
  const bool place = words_.is(Role::kPart, pieces_, name, at);
  if (!place) return true;
  const bool first = name == 0 || is_clause_end(name - 1, end) || pieces_[name - 1].is(Kind::kOpen);
  const bool amount_follows = unit(at + 1, end) || sides(at + 1, end) ||
                              is_clause_end(at + 1, end) || has(Role::kQualifier, at + 1, end);
  return first || !amount_follows;
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
    return UnitRead{unit, at + taken, text(at, at + taken)};
  }
  return std::nullopt;
}

bool ElementReader::is_clause_end(std::size_t at, std::size_t end) const {
  if (at >= end) return true;
  const Piece& piece = pieces_[at];
  if (piece.is(Kind::kDash)) return piece.space_before || piece.space_after;
  if (piece.is(Kind::kSlash)) return piece.space_before && piece.space_after;
  return piece.is(Kind::kComma) || piece.is(Kind::kStop) || piece.is(Kind::kSemicolon) ||
         piece.is(Kind::kColon) || piece.is(Kind::kOpen) || piece.is(Kind::kClose) ||
         has(Role::kThen, at, end);
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
  if (has(Role::kSet, at, end) && at + 1 < end && pieces_[at + 1].is_word("of")) {
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
  if (!first || !first->whole) return std::nullopt;
  std::size_t i = first->next;
  std::size_t unit_end = i;
  const bool timed_first =
      unit_seconds(unit_end, end).has_value() || (unit_end = skip(Role::kCounted, i, end)) > i;
  if (timed_first) return std::nullopt;  // `20 s x 3` is a time and how often
  const std::size_t sets_word = skip(Role::kSet, i, end);
  const bool named = sets_word > i;
  i = sets_word;
  if (i < end && pieces_[i].is_word("of")) ++i;
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
  if (const auto behind = unit(next, end)) {
    if (behind->unit == Unit::kSets) {  // `15 x 3 sets`
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
  if (const std::size_t hold = skip(Role::kHold, out.next, end); hold > out.next) {
    out.next = hold;
    out.held = true;
  }
  return out;
}

// `5 R 5 L`, `8 front 8 side 8 back`, `10x forward and 10x backward`
std::optional<Element> ElementReader::by_direction(const Numbers& read, std::size_t at,
                                                   std::size_t end) const {
  if (read.values.size() != 1) return std::nullopt;
  std::size_t i = at;
  std::size_t found = 0;
  std::size_t last = at;
  bool left_right = false;
  while (is_number(i, end) && pieces_[i].value == read.values.front()) {
    ++i;
    if (is(i, end, Kind::kTimes)) ++i;
    const bool side = has(Role::kLeft, i, end) || has(Role::kRight, i, end);
    if (!side && !has(Role::kForwardBack, i, end)) break;
    left_right = left_right || side;
    ++found;
    last = ++i;
    if (is(i, end, Kind::kComma) || has(Role::kAnd, i, end)) ++i;
  }
  if (found < 2) return std::nullopt;
  Element out = counted(Unit::kReps, read.values, at, last);
  out.remark = text(at, last);
  if (found == 2) {
    out.sides = left_right ? Role::kEachSide : Role::kEachWay;
    out.ways = {"both"};
  }
  return out;
}

std::optional<Element> ElementReader::bare(const Numbers& read, std::size_t at, std::size_t end,
                                           Place place) const {
  constexpr double kMost = 300;  // above it a number alone is a year, a price, a clock
  if (pieces_[at].text.find('.') != std::string::npos) return std::nullopt;  // `17.00`
  if (!read.whole || read.values.front() < 1 || read.values.front() > kMost) return std::nullopt;
  const std::size_t next = read.next;
  Element out = counted(Unit::kBare, read.values, at, next);
  if (read.values.size() > 2) return out;  // a ladder wherever it stands
  if (const std::size_t row = skip(Role::kInARow, next, end); row > next) {
    out.unit = Unit::kReps;
    out.next = row;
    out.remark = text(next, row);
    return out;
  }
  if (has(Role::kStuck, next, end) && is_clause_end(next + 1, end)) {
    out.unit = Unit::kReps;
    out.next = next + 1;
    out.remark = text(next, next + 1);
    return out;
  }
  const bool after_plus = at > 0 && pieces_[at - 1].is(Kind::kOther);
  const bool one = read.values.front() < 2 &&
                   (pieces_[at].in_words ||
                    (place == Place::kFirst && !after_plus && !is_clause_end(next, end)));
  const bool names = has(Role::kNotADose, next, end);
  const bool plus = has(Role::kAnd, next, end) && pieces_[next].is(Kind::kOther);
  if (is_clause_end(next, end) || plus || sides(next, end) || has(Role::kEach, next, end)) {
    const bool leads_nothing = place == Place::kFirst && is_clause_end(next, end);
    if (one || (leads_nothing && read.values.size() == 1 && pieces_[at].in_words))
      return std::nullopt;
    return out;
  }
  if (names || one || has(Role::kPeople, next, end)) return std::nullopt;
  if (place == Place::kFirst) {
    // `10 star jumps`: a name follows.
    const bool slow = has(Role::kSlow, next, end);
    if (slow && is_clause_end(next + 1, end)) return out;
    if (slow && (pieces_[next].text.starts_with("w") || !is(next + 1, end, Kind::kWord)))
      return out;
    const bool name =
        is(next, end, Kind::kWord) || (is(next, end, Kind::kNumber) && pieces_[next].in_words);
    if (!name || (has(Role::kQualifier, next, end) && !slow)) return std::nullopt;
    out.leads = true;
    return out;
  }
  if (pieces_[at].in_words) {
    out.leads = is(next, end, Kind::kWord) && pieces_[next].text.ends_with('s');
    return out.leads ? std::optional(out) : std::nullopt;
  }
  if (has(Role::kQualifier, next, end)) return out;
  return std::nullopt;
}

std::optional<Element> ElementReader::number(std::size_t at, std::size_t end, Place place) const {
  if (!is_number(at, end)) return std::nullopt;
  // `after 10 mins`, `teams of 4`: said of something else.
  if (at > 0 && words_.is(Role::kNoAmountBehind, pieces_, at - 1, at) && place == Place::kInside) {
    const auto read = numbers(at, end);
    const auto behind = unit(read->next, end);
    const bool goes = behind && (behind->unit == Unit::kGoes || behind->unit == Unit::kLengths);
    // `step out 4 passes each` is an amount all the same.
    if (!goes && !has(Role::kEach, read->next, end)) return std::nullopt;
  }
  if (auto found = on_off(at, end)) return found;
  if (auto found = rest(at, end)) return found;
  if (auto found = rounds(at, end)) return found;
  const auto read = numbers(at, end);
  if (auto found = by_direction(*read, at, end)) return found;
  if (auto found = sets_of(at, end)) return found;
  if (auto found = timed(*read, at, end)) return found;
  std::size_t next = read->next;
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
    if (move || letter) return std::nullopt;
    if (pieces_[at].in_words && read->values.front() < 2 && behind->unit == Unit::kReps) {
      return std::nullopt;  // `one time`
    }
    Element out = counted(behind->unit, read->values, at, behind->next);
    if (behind->unit == Unit::kOwn) out.remark = behind->remark;
    if (behind->unit == Unit::kReps && pieces_[next].text.starts_with("time")) {
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
    }
    return out;
  }
  // `pull ups, max x 3`: as many as can be, which is no amount.
  if (at < end && pieces_[at].is_word("max") && is(at + 1, end, Kind::kTimes)) {
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
      if (!is_clause_end(word, end) && !sides(word, end)) return std::nullopt;
      return counted(Unit::kTimes, {value}, at, word);
    }
  }
  return std::nullopt;
}

std::optional<Element> ElementReader::read(std::size_t at, std::size_t end, Place place) const {
  if (auto found = there_and_back(at, end)) return found;
  if (auto found = phrase(at, end)) return found;
  if (auto found = rounds(at, end)) return found;
  if (auto found = until(at, end)) return found;
  if (auto found = sets_of(at, end)) return found;
  if (auto found = held(at, end)) return found;
  if (auto found = rest(at, end)) return found;
  if (auto found = sides(at, end)) return found;
  if (auto found = times(at, end)) return found;
  if (auto found = number(at, end, place)) return found;
  if (const std::size_t next = skip(Role::kEachPerson, at, end); next > at) {
    return made(EKind::kNothing, at, next);
  }
  if (const std::size_t next = std::max(skip(Role::kEach, at, end), skip(Role::kForAll, at, end));
      next > at) {
    return made(EKind::kEach, at, next);
  }
  return std::nullopt;
}

}  // namespace chalkleaf::draft
