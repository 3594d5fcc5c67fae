// The sides of a dose: `each leg`, `on each leg`, `per side`, `each`, `L/R`, `left and right`.
//
// Which words coaches use is common practice, no source. Tested by tests/plan/dose_sides_test.cpp.
#include <algorithm>
#include <array>

#include "plan/dose_phrases.h"

namespace chalkleaf::plan {
namespace {

using Kind = Token::Kind;

struct SideWord {
  std::string_view word;
  Sides sides;
};
constexpr std::array<SideWord, 14> kSideWords{{{"side", Sides::kEachSide},
                                               {"sides", Sides::kEachSide},
                                               {"way", Sides::kEachWay},
                                               {"ways", Sides::kEachWay},
                                               {"direction", Sides::kEachWay},
                                               {"directions", Sides::kEachWay},
                                               {"leg", Sides::kEachLeg},
                                               {"legs", Sides::kEachLeg},
                                               {"foot", Sides::kEachLeg},
                                               {"feet", Sides::kEachLeg},
                                               {"arm", Sides::kEachArm},
                                               {"arms", Sides::kEachArm},
                                               {"hand", Sides::kEachArm},
                                               {"hands", Sides::kEachArm}}};

}  // namespace

std::optional<Sides> Phrases::side_word(std::size_t at, std::size_t end) const {
  if (at >= end) return std::nullopt;
  for (const SideWord& known : kSideWords) {
    if (tokens_[at].is_word(known.word)) return known.sides;
  }
  return std::nullopt;
}

// `L/R`, `left and right`, `right & left leg`
std::optional<Phrases::SidesRead> Phrases::left_and_right(std::size_t at, std::size_t end) const {
  const bool left = is_any(at, end, "l", "left");
  if (!left && !is_any(at, end, "r", "right")) return std::nullopt;
  std::size_t next = at + 1;
  if (next >= end) return std::nullopt;
  const Token& between = tokens_[next];
  if (!between.is(Kind::kSlash) && !between.is(Kind::kOther) && !between.is_word("and")) {
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
  if (!is_any(at, end, "each", "every", "per", "both", "a")) return std::nullopt;
  if (const auto sides = side_word(at + 1, end)) return SidesRead{*sides, at + 2};
  // `10 each`, `3 x 10 each, rest 20 s`, `10 each with 20 s rest`
  const bool alone = at + 1 == end || is_any(at + 1, end, "rest", "with", "then", "no", "tempo",
                                             "pace", "effort", "every");
  if (at == begin && is_word(at, end, "each") && alone) {
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
  if (read->next >= end || !tokens_[read->next].is(Kind::kColon)) return read->next;
  state.ways_open = true;
  if (read->next + 1 < end) state.dose.ways.push_back(words(read->next + 1, end));
  return end;
}

bool Phrases::speaks_of_sides(std::size_t begin, std::size_t end) const {
  for (std::size_t i = begin; i < end; ++i) {
    if (side_word(i, end) || is_any(i, end, "each", "per", "both", "left", "right", "l", "r")) {
      return true;
    }
  }
  return false;
}

bool Phrases::begins_with_each_side(std::size_t at, std::size_t end) const {
  if (is_any(at, end, "on", "with", "for", "to", "at", "in")) ++at;
  return is_any(at, end, "each", "per") && side_word(at + 1, end);
}

}  // namespace chalkleaf::plan
