// A number with no unit: when it counts what is before it, what is behind it, or no dose at all.
#include <algorithm>

#include "draft/elements.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

Element bare_count(const std::vector<double>& values, std::size_t begin, std::size_t next) {
  Element out;
  out.kind = EKind::kCount;
  out.unit = Unit::kBare;
  out.values = values;
  out.begin = begin;
  out.next = next;
  return out;
}

}  // namespace

// `10/10/8`, `20/20/15`: how many numbers, as many or fewer each time, so that no date is one. 0
// where there is none.
std::size_t ElementReader::slash_ladder(std::size_t at, std::size_t end) const {
  constexpr double kMost = 60;
  std::size_t rungs = 0;
  for (std::size_t i = at; is(i, end, Kind::kNumber); i += 2) {
    const Piece& piece = pieces_[i];
    const bool first = i == at;
    if (!piece.whole || piece.in_words || piece.value < 1 || piece.value > kMost) return 0;
    if (first ? i > 0 && pieces_[i - 1].is(Kind::kSlash)
              : piece.space_before || piece.value > pieces_[i - 2].value)
      return 0;
    ++rungs;
    if (!is(i + 1, end, Kind::kSlash) || pieces_[i + 1].space_before) break;
  }
  return rungs > 2 ? rungs : 0;
}

// What is counted in front of its name: `10 slow sit-ups`.
bool ElementReader::names_move(std::size_t at, std::size_t end) const {
  constexpr std::size_t kFar = 5;
  for (std::size_t i = at; i < end && i < at + kFar && !is_clause_end(i, end); ++i) {
    if (pieces_[i].is(Kind::kNumber) || has(Role::kSidePrep, i, end)) return false;
    if (has(Role::kMove, i, end)) return true;
  }
  return false;
}

std::optional<Element> ElementReader::bare(const Numbers& read, std::size_t at, std::size_t end,
                                           Place place) const {
  constexpr double kMost = 300;  // above it a number alone is a year, a price, a clock
  if (pieces_[at].text.find('.') != std::string::npos) return std::nullopt;  // `17.00`
  if (!read.whole || read.values.front() < 1 || read.values.front() > kMost) return std::nullopt;
  const std::size_t next = read.next;
  // The second of `4+4`
  if (at > 1 && pieces_[at - 1].text == "+" && !pieces_[at].space_before &&
      pieces_[at - 2].is(Kind::kNumber))
    return std::nullopt;
  // `2nd pass x3`: which of them, not how many.
  const bool ordinal = is(next, end, Kind::kWord) && !pieces_[next].space_before &&
                       pieces_[next].text.size() == 2 && has(Role::kNotADose, next, end);
  if (ordinal) return std::nullopt;
  // `180 jumps x8`: a turn in degrees; `a 5-move routine`: of its name.
  const double turn = read.values.front();
  const bool degrees = (turn == 90 || turn == 180 || turn == 270) && is(next, end, Kind::kWord);
  const bool hyphen = is(next, end, Kind::kDash) && !pieces_[next].space_before &&
                      !pieces_[next].space_after && is(next + 1, end, Kind::kWord);
  if ((degrees && !has(Role::kEach, next, end)) || hyphen) return std::nullopt;
  Element out = bare_count(read.values, at, next);
  // `bridge kickover (5)`: so few in a bracket are counted, whatever is held.
  constexpr double kFewHeld = 10;
  const bool bracketed = at > 0 && pieces_[at - 1].is(Kind::kOpen) && is(next, end, Kind::kClose);
  if (bracketed && read.values.front() < kFewHeld) out.unit = Unit::kReps;
  if (read.values.size() > 2) {  // a ladder wherever it stands
    out.leads =
        place == Place::kFirst && is(next, end, Kind::kWord) && !has(Role::kQualifier, next, end);
    return out;
  }
  if (auto ladder = comma_ladder(out, end)) return ladder;
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
  const bool thing = has(Role::kNotADose, next, end);
  const bool move = names_move(next, end);
  const bool one =
      read.values.front() < 2 &&
      (pieces_[at].in_words || (place == Place::kFirst && !after_plus &&
                                !has(Role::kMove, next, end) && !is_clause_end(next, end)));
  // `10 panel jumps` is no number of panels.
  const bool names = thing && !(move && next < end && !pieces_[next].text.ends_with('s') &&
                                !has(Role::kBody, next, end));
  const bool plus = has(Role::kAnd, next, end) && pieces_[next].is(Kind::kOther);
  const bool behind_name = at > 0 && pieces_[at - 1].is(Kind::kWord) &&
                           !has(Role::kQualifier, at - 1, end) && read.values.front() > 2;
  if ((place == Place::kFirst || behind_name) && at_place(next, end) && !pieces_[at].in_words &&
      at > 0) {
    out.leads = out.at_place = place == Place::kFirst;
    return out;
  }
  if (has(Role::kOutOf, next, end) && is_number(next + 1, end) && is_clause_end(next + 2, end)) {
    out.unit = Unit::kReps;  // `8 for 8`
    out.next = next + 2;
    out.remark = text(at, next + 2);
    return out;
  }
  // `all 4 routines once`: whose number it is, not how often.
  const bool all = at > 0 && words_.match(Role::kAllOf, pieces_, at - 1, at) == 1;
  if (all && place == Place::kInside && is(next, end, Kind::kWord) && !has(Role::kEach, next, end))
    return std::nullopt;
  if (plus && at == 0) return std::nullopt;  // `4+4`
  // `for the big 4`
  if (at > 2 && place == Place::kInside && has(Role::kFor, at - 3, at) &&
      has(Role::kArticle, at - 2, at))
    return std::nullopt;
  if (is_clause_end(next, end) || plus || sides(next, end) || has(Role::kEach, next, end)) {
    const bool leads_nothing = place == Place::kFirst && is_clause_end(next, end);
    if (one || (leads_nothing && read.values.size() == 1 && pieces_[at].in_words &&
                !counts_clause_before(at)))
      return std::nullopt;
    return out;
  }
  if (place == Place::kFirst && at > 0 && is_way(next, end)) {  // `… and 10 to back`
    out.leads = true;
    return out;
  }
  if (names || one || has(Role::kPeople, next, end)) return std::nullopt;
  if (place == Place::kFirst) {
    // `10 star jumps`: a name follows.
    const bool slow = has(Role::kSlow, next, end);
    if (slow && is_clause_end(next + 1, end)) return out;
    if (slow && (pieces_[next].text.starts_with("w") || !is(next + 1, end, Kind::kWord)))
      return out;
    if (has(Role::kHow, next, end) && at > 0 && !move && !pieces_[at].in_words) return out;

    const bool name =
        is(next, end, Kind::kWord) || (is(next, end, Kind::kNumber) && pieces_[next].in_words);
    if (!name || (has(Role::kQualifier, next, end) && !slow)) return std::nullopt;
    // In words, or so few, it may count anything: `two courts`, `2 songs`.
    constexpr double kFew = 4;
    const bool few = read.values.size() == 1 && read.values.front() < kFew;
    if ((pieces_[at].in_words || few) && !move) return std::nullopt;
    if (pieces_[at].in_words && has(Role::kGroupTurns, next, end)) return std::nullopt;
    out.leads = true;
    return out;
  }
  if (pieces_[at].in_words) {
    out.leads = move && is(next, end, Kind::kWord) && pieces_[next].text.ends_with('s');
    return out.leads ? std::optional(out) : std::nullopt;
  }
  if (auto ways = there_and_back(next, end)) {  // `shuttle runs 4 there and back`
    ways->begin = at;
    for (double& value : ways->values) value *= read.values.front();
    return ways;
  }
  if (has(Role::kQualifier, next, end) || pairs(next, end)) return out;
  if (is_chain(at, next, end)) {
    out.leads = true;
    return out;
  }
  if (move && counts_inside(at, next, end)) return out;
  // `everyone on the floor for 20 tuck jumps`
  if (move && at > 0 && words_.is(Role::kNameTail, pieces_, at - 1, at) &&
      !has(Role::kAnd, at - 1, end))
    return out;
  return std::nullopt;
}

// `10 sit ups 10 star jumps 5 press-ups`: as the clause began, with a count and its move.
bool ElementReader::is_chain(std::size_t at, std::size_t next, std::size_t end) const {
  std::size_t begin = at;
  while (begin > 0 && !is_clause_end(begin - 1, end)) --begin;
  if (begin == at || !is_number(begin, end) || pieces_[begin].in_words) return false;
  std::size_t move = next;
  if (has(Role::kSlow, move, end)) ++move;
  const std::size_t first = begin + 1 + (has(Role::kSlow, begin + 1, end) ? 1 : 0);
  return has(Role::kMove, first, end) && has(Role::kMove, move, end);
}

// `Heel raises, twenty.`: the clause before it names a move, and no more.
bool ElementReader::counts_clause_before(std::size_t at) const {
  constexpr double kLeast = 5;
  constexpr std::size_t kMostWords = 4;
  if (at < 2 || !pieces_[at - 1].is(Kind::kComma) || pieces_[at].value < kLeast) return false;
  std::size_t begin = at - 1;
  while (begin > 0 && pieces_[begin - 1].is(Kind::kWord)) --begin;
  const bool whole =
      begin == 0 || pieces_[begin - 1].is(Kind::kStop) || pieces_[begin - 1].is(Kind::kColon);
  return whole && at - 1 - begin <= kMostWords &&
         (words_.within(Role::kMove, pieces_, begin, at - 1) ||
          words_.within(Role::kMoving, pieces_, begin, at - 1));
}

// `to back`, `forwards`, and nothing else
bool ElementReader::is_way(std::size_t at, std::size_t end) const {
  while (at < end && has(Role::kSidePrep, at, end)) ++at;
  for (const Role role : {Role::kForwardBack, Role::kLeft, Role::kRight, Role::kOneWay}) {
    const std::size_t next = skip(role, at, end);
    if (next > at && is_clause_end(next, end)) return true;
  }
  return false;
}

// `squats 15, 12, 10`
std::optional<Element> ElementReader::comma_ladder(const Element& first, std::size_t end) const {
  Element out = first;
  while (is(out.next, end, Kind::kComma) && is_number(out.next + 1, end) &&
         pieces_[out.next + 1].whole && !pieces_[out.next + 1].in_words &&
         is_clause_end(out.next + 2, end)) {
    out.values.push_back(pieces_[out.next + 1].value);
    out.next += 2;
  }
  return out.values.size() > 2 && first.values.size() == 1 ? std::optional(out) : std::nullopt;
}

// `5 on the line`, `3 high beam`
bool ElementReader::at_place(std::size_t at, std::size_t end) const {
  while (at < end && (has(Role::kSidePrep, at, end) || has(Role::kQualifier, at, end))) ++at;
  const std::size_t next = skip(Role::kPlace, at, end);
  return next > at && (is_clause_end(next, end) || has(Role::kQualifier, next, end) ||
                       is(next, end, Kind::kNumber));
}

// `wrists 10 circles each way`: nothing else is counted in the clause.
bool ElementReader::counts_inside(std::size_t at, std::size_t next, std::size_t end) const {
  constexpr std::size_t kFar = 3;
  if (at == 0 || !pieces_[at - 1].is(Kind::kWord) || has(Role::kQualifier, at - 1, at) ||
      has(Role::kSidePrep, at - 1, at))
    return false;
  for (std::size_t i = next; i < end && i <= next + kFar; ++i) {
    if (is_clause_end(i, end) || sides(i, end)) return i > next;
    if (!is(i, end, Kind::kWord)) return false;
  }
  return next + kFar >= end;
}

// `hollow rocks 20 arch rocks 20`: behind the number another drill with its own.
bool ElementReader::pairs(std::size_t at, std::size_t end) const {
  constexpr std::size_t kFar = 5;
  if (!names_move(at, end)) return false;
  for (std::size_t i = at; i < end && i < at + kFar; ++i) {
    if (!is(i, end, Kind::kWord) && !is_number(i, end)) return false;
    if (!is_number(i, end)) continue;
    return i > at && (is_clause_end(i + 1, end) || pairs(i + 1, end));
  }
  return false;
}

}  // namespace chalkleaf::draft
