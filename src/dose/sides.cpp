// The sides of a dose: `each leg`, `on each leg`, `per side`, `each`, `E/S`, `L/R`, `left and
// right`, `10 left, 10 right`.
//
// Which words coaches use is common practice, no source. Tested by tests/plan/dose_sides_test.cpp
// and dose_corpus_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "dose/phrases.h"

namespace chalkleaf::dose {
namespace {

struct SideWord {
  std::string_view word;
  Sides sides;
};
constexpr std::array<SideWord, 24> kSideWords{
    {{"side", Sides::kEachSide},  {"sides", Sides::kEachSide},     {"way", Sides::kEachWay},
     {"ways", Sides::kEachWay},   {"direction", Sides::kEachWay},  {"directions", Sides::kEachWay},
     {"leg", Sides::kEachLeg},    {"legs", Sides::kEachLeg},       {"foot", Sides::kEachLeg},
     {"feet", Sides::kEachLeg},   {"arm", Sides::kEachArm},        {"arms", Sides::kEachArm},
     {"hand", Sides::kEachArm},   {"hands", Sides::kEachArm},      {"hip", Sides::kEachSide},
     {"knee", Sides::kEachSide},  {"ankle", Sides::kEachSide},     {"calf", Sides::kEachSide},
     {"thigh", Sides::kEachSide}, {"hamstring", Sides::kEachSide}, {"shoulder", Sides::kEachSide},
     {"elbow", Sides::kEachSide}, {"wrist", Sides::kEachSide},     {"quad", Sides::kEachSide}}};

}  // namespace

std::optional<Sides> Phrases::side_word(std::size_t at, std::size_t end) const {
  if (at >= end) return std::nullopt;
  for (const SideWord& known : kSideWords) {
    if (tokens_[at].is_word(known.word)) return known.sides;
  }
  return std::nullopt;
}

// `L/R`, `left and right`, `right & left leg`, `left then right`
std::optional<Phrases::SidesRead> Phrases::left_and_right(std::size_t at, std::size_t end) const {
  if (is_any(at, end, "l-r", "r-l", "left-right")) return SidesRead{Sides::kEachSide, at + 1};
  const bool left = is_any(at, end, "l", "left");
  if (!left && !is_any(at, end, "r", "right")) return std::nullopt;
  std::size_t next = at + 1;
  if (next >= end) return std::nullopt;
  const Token& between = tokens_[next];
  if (!between.is(TokenKind::kSlash) && !between.is(TokenKind::kOther) &&
      !between.is(TokenKind::kDash) && !is_any(next, end, "and", "then")) {
    return std::nullopt;
  }
  ++next;
  if (left ? !is_any(next, end, "r", "right") : !is_any(next, end, "l", "left")) {
    return std::nullopt;
  }
  ++next;
  if (const auto sides = side_word(next, end)) return SidesRead{*sides, next + 1};
  return SidesRead{Sides::kEachSide, next};
}

std::optional<Phrases::SidesRead> Phrases::read_sides(std::size_t at, std::size_t end) const {
  const std::size_t begin = at;
  if (is_any(at, end, "on", "with", "for", "to", "at", "in")) ++at;
  if (at > begin && is_word(at, end, "the")) ++at;
  if (const auto both = left_and_right(at, end)) return both;
  if (is_any(at, end, "e", "p") && is_kind(at + 1, end, TokenKind::kSlash)) {  // `E/S`, `p/l`
    if (is_any(at + 2, end, "s", "side")) return SidesRead{Sides::kEachSide, at + 3};
    if (is_any(at + 2, end, "l", "leg")) return SidesRead{Sides::kEachLeg, at + 3};
    if (is_any(at + 2, end, "a", "arm")) return SidesRead{Sides::kEachArm, at + 3};
    if (is_any(at + 2, end, "w", "way")) return SidesRead{Sides::kEachWay, at + 3};
  }
  if (is_kind(at, end, TokenKind::kSlash)) {  // `10/side`
    if (const auto sides = side_word(at + 1, end)) return SidesRead{*sides, at + 2};
  }
  if (!is_any(at, end, "each", "every", "per", "both", "a", "ea", "either", "p")) {
    return std::nullopt;
  }
  const std::size_t word = is_kind(at + 1, end, TokenKind::kSlash) ? at + 2 : at + 1;  // `p/side`
  if (const auto sides = side_word(word, end)) return SidesRead{*sides, word + 1};
  // `10 each`, `3 x 10 each, rest 20 s`, `10 each with 20 s rest`
  const bool alone = at + 1 == end || is_any(at + 1, end, "rest", "with", "then", "no", "tempo",
                                             "pace", "effort", "every", "slow", "slowly", "x");
  if (at == begin && is_any(at, end, "each", "ea") && alone) {
    return SidesRead{Sides::kEachSide, at + 1};
  }
  return std::nullopt;
}

std::size_t Phrases::sides(std::size_t at, std::size_t end) {
  const auto read = state.ways_open ? std::nullopt : read_sides(at, end);
  if (!read) return 0;
  if (state.dose.sides != Sides::kOnce) {
    unreadable(at, read->next, "this dose gives the sides twice", "leave one out");
  }
  state.dose.sides = read->sides;
  if (read->next >= end || !tokens_[read->next].is(TokenKind::kColon)) return read->next;
  state.ways_open = true;
  if (read->next + 1 < end) state.dose.ways.push_back(words(read->next + 1, end));
  return end;
}

// `10 left, 10 right`: one side and then the other, the same on both.
std::size_t Phrases::left_then_right(std::size_t at, std::size_t end) {
  const auto behind_the = [&](std::size_t i) {  // `on the left`
    if (is_any(i, end, "on", "to")) ++i;
    return is_any(i, end, "the", "your") ? i + 1 : i;
  };
  const std::size_t side = behind_the(at);
  const bool left = is_any(side, end, "left", "l");
  if (!state.has_amount || (!left && !is_any(side, end, "right", "r"))) return 0;
  std::optional<Sides> limb = side_word(side + 1, end);
  std::size_t next = limb ? side + 2 : side + 1;
  if (is_kind(next, end, TokenKind::kComma) || is_kind(next, end, TokenKind::kSemicolon) ||
      is_kind(next, end, TokenKind::kSlash) || is_sign(next, end, "+") || is_sign(next, end, "&")) {
    ++next;
  }
  if (is_any(next, end, "and", "then")) ++next;
  const auto second = read_amount(next, end);
  if (!second) return 0;
  const std::size_t word = behind_the(second->next);
  if (left ? !is_any(word, end, "right", "r") : !is_any(word, end, "left", "l")) return 0;
  next = word + 1;
  if (const auto behind = side_word(next, end)) {
    limb = behind;
    ++next;
  }
  const Amount& first = state.dose.amount;
  const Amount& other = second->amount;
  if (first.kind != other.kind || first.count != other.count || first.time != other.time) {
    return refuse(at, next, "the two sides differ",
                  "write a line for each side, or the same for both: `10 each side`");
  }
  if (state.dose.sides != Sides::kOnce) {
    unreadable(at, next, "this dose gives the sides twice", "leave one out");
  }
  state.dose.sides = limb.value_or(Sides::kEachSide);
  return next;
}

bool Phrases::joins_left_and_right(std::size_t comma) const {
  constexpr std::size_t kNear = 6;  // `5 reps to the right leg`
  const std::size_t end = tokens_.size();
  const std::size_t number = is_any(comma + 1, end, "then", "and") ? comma + 2 : comma + 1;
  if (comma == 0 || !is_number(number, end)) return false;
  if (!is_any(comma - 1, end, "left", "l", "right", "r", "leg", "arm", "side")) return false;
  for (std::size_t i = number + 1; i < std::min(end, number + kNear); ++i) {
    if (is_any(i, end, "left", "l", "right", "r")) return true;
    if (tokens_[i].is(TokenKind::kComma)) break;
  }
  return false;
}

// Every dose is one gymnast's: `3 goes each`, `10 per gymnast`.
std::size_t Phrases::each_gymnast(std::size_t at, std::size_t end) {
  if (is_any(at, end, "each", "per", "a") &&
      is_any(at + 1, end, "gymnast", "child", "person", "pupil", "player")) {
    return at + 2;
  }
  const bool goes =
      state.dose.in_goes && at > 0 && is_any(at - 1, end, "goes", "go", "tries", "attempts");
  return goes && at + 1 == end && is_any(at, end, "each", "ea") ? end : 0;
}

bool Phrases::speaks_of_sides(std::size_t begin, std::size_t end) const {
  for (std::size_t i = begin; i < end; ++i) {
    const auto sides = side_word(i, end);  // not `hip`, `knee`: moves are called by them
    if (sides && (*sides != Sides::kEachSide || is_any(i, end, "side", "sides"))) return true;
    if (is_any(i, end, "each", "per", "both", "left", "right", "l", "r")) return true;
  }
  return false;
}

bool Phrases::begins_with_each_side(std::size_t at, std::size_t end) const {
  if (is_any(at, end, "on", "with", "for", "to", "at", "in")) ++at;
  return is_any(at, end, "each", "per") && side_word(at + 1, end);
}

}  // namespace chalkleaf::dose
