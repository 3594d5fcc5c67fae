// See the header.
#include "draft/names.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::draft {
namespace {

using PKind = Piece::Kind;

}  // namespace

std::string NameReader::raw(std::size_t begin, std::size_t end) const {
  if (begin >= end) return {};
  const std::size_t from = pieces_[begin].begin;
  return std::string(trim(line_.substr(from, pieces_[end - 1].end - from)));
}

// The name with trade shorthand spelled out.
std::string NameReader::spelled(std::size_t begin, std::size_t end) const {
  std::string out;
  for (std::size_t at = begin; at < end;) {
    if (at > begin && pieces_[at].space_before) out += ' ';
    const Lexicon::Spelled found = words_.spelled(pieces_, at, end);
    if (found.pieces > 0) {
      out += found.text;
      at += found.pieces;
      continue;
    }
    out += raw(at, at + 1);
    ++at;
  }
  return out;
}

// A clause that says when, who or how, and names no drill.
bool NameReader::is_remark(const Name& name) const {
  constexpr std::size_t kMostWords = 8;
  return name.end - name.begin > kMostWords ||
         words_.within(Role::kCondition, pieces_, name.begin, name.end) ||
         is(Role::kRemark, name.begin, name.end) || is(Role::kQualifier, name.begin, name.end) ||
         (is(Role::kManner, name.begin, name.end) && name.end - name.begin > 1) ||
         words_.match(Role::kHow, pieces_, name.begin, name.end) == name.end - name.begin ||
         is_counted_thing(name) || counts_something(name);
}

// `2 ropes`, `two spotters`; but `two feet, one foot, sideways` are ways to do it.
bool NameReader::is_counted_thing(const Name& name) const {
  if (!pieces_[name.begin].is(PKind::kNumber)) return false;
  if (pieces_[name.begin].value < 2 && words_.within(Role::kMove, pieces_, name.begin, name.end))
    return false;  // `1 hand cartwheel`
  return !pieces_[name.begin].in_words ||
         (is(Role::kNotADose, name.begin + 1, name.end) &&
          !is(Role::kBody, name.begin + 1, name.end)) ||
         is(Role::kPeople, name.begin + 1, name.end);
}

// `teams of 4`
bool NameReader::counts_something(const Name& name) const {
  for (std::size_t i = name.begin + 1; i < name.end; ++i) {
    const bool several = pieces_[i].is(PKind::kNumber) && pieces_[i].value > 1;  // `on one leg`
    if (several && is(Role::kNoAmountBehind, i - 1, i)) return true;
  }
  return false;
}

bool NameReader::is_ladder(const Name& name) const {
  return is(Role::kLadder, name.begin, name.end);
}

// `leaps + split jumps`, `walkover fwd and back`: two drills where each has a dose.
std::vector<Name> NameReader::parted(const Name& name, bool each, bool lengths) const {
  if (auto parts = slashed(name); each && parts.size() > 1) return parts;
  if (auto parts = animals(name); each && parts.size() > 1) return parts;
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    if (!is(Role::kAnd, at, name.end)) continue;
    const bool sign = pieces_[at].is(PKind::kOther);
    const bool plural = pieces_[at - 1].text.ends_with('s') && (each || sign);
    const bool way = each && !sign && is(Role::kForwardBack, at - 1, name.end) &&
                     is(Role::kForwardBack, at + 1, name.end);
    // `bear walk and crab walk, 1 length each`
    const bool moves = each && lengths && !sign && names_way_to_go(name.begin, at) &&
                       names_way_to_go(at + 1, name.end);
    // `on the back and on the stomach`
    bool again = false;
    for (std::size_t i = name.begin + 1; each && i < at && !again; ++i)
      again = is(Role::kQualifier, i, name.end) && pieces_[i].text == pieces_[at + 1].text;
    const bool ways =
        is(Role::kForwardBack, at - 1, name.end) || is(Role::kForwardBack, at + 1, name.end);
    if (sign && ways) continue;  // `walks forward + back`: one drill, both ways
    if (!(plural || way || again || moves || (sign && !each))) continue;
    // `hams and quads`, `neck and shoulder rolls`; but `high knees + heel kicks` are two.
    const bool body = is(Role::kBody, at - 1, name.end) &&
                      (at == name.begin + 1 || is(Role::kBody, name.end - 1, name.end));
    if (body && !again && !moves) continue;
    return {{name.begin, at}, {at + 1, name.end}};
  }
  return {name};
}

// A move that gets somewhere, or an animal.
bool NameReader::names_way_to_go(std::size_t begin, std::size_t end) const {
  return words_.within(Role::kMove, pieces_, begin, end) ||
         words_.within(Role::kAnimal, pieces_, begin, end) ||
         words_.within(Role::kMoving, pieces_, begin, end);
}

// `pike + straddle`, `hams and quads`: both are held.
std::vector<Name> NameReader::held_shapes(const Name& name) const {
  const auto held = [&](const Name& half) {
    return words_.within(Role::kStatic, pieces_, half.begin, half.end) ||
           words_.within(Role::kOneSided, pieces_, half.begin, half.end);
  };
  std::vector<Name> halves = all_of(name);
  if (halves.size() == 1) halves = any_slashed(name);
  const bool all = halves.size() > 1 && std::all_of(halves.begin(), halves.end(), held);
  return all ? halves : std::vector<Name>{name};
}

// `Tuck / straddle / pike sit`, with or without blanks.
std::vector<Name> NameReader::any_slashed(const Name& name) const {
  std::vector<Name> out{{name.begin, name.end, {}}};
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    if (!pieces_[at].is(PKind::kSlash)) continue;
    out.back().end = at;
    out.push_back({at + 1, name.end, {}});
  }
  return out;
}

// `animal walks bear bunny crab`
std::vector<Name> NameReader::animals(const Name& name) const {
  std::size_t first = name.begin;
  while (first < name.end && !is(Role::kAnimal, first, name.end)) ++first;
  std::vector<Name> out;
  for (std::size_t at = first; at < name.end; ++at) {
    if (!is(Role::kAnimal, at, name.end)) return {};
    out.push_back({at, at + 1, {}});
  }
  return out;
}

// `jog / skips / high knees`
std::vector<Name> NameReader::slashed(const Name& name) const {
  std::vector<Name> out{{name.begin, name.end, {}}};
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    const Piece& piece = pieces_[at];
    if (!piece.is(PKind::kSlash) || !piece.space_before || !piece.space_after) continue;
    // `walks forward / back / side`
    if (is(Role::kForwardBack, at + 1, name.end) && is(Role::kForwardBack, at - 1, name.end))
      continue;
    out.back().end = at;
    out.push_back({at + 1, name.end, {}});
  }
  return out;
}

std::vector<Name> NameReader::all_of(const Name& name) const {
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    if (is(Role::kAnd, at, name.end)) return {{name.begin, at}, {at + 1, name.end}};
  }
  return {name};
}

Name NameReader::without_tail(Name name) const {
  for (bool more = true; more;) {
    more = false;
    for (const std::size_t pieces : {1U, 2U}) {  // `w/` is two
      if (name.end <= name.begin + pieces) continue;
      if (words_.match(Role::kNameTail, pieces_, name.end - pieces, name.end) != pieces) continue;
      name.end -= pieces;
      more = true;
      break;
    }
  }
  return name;
}

bool NameReader::starts_clause(std::size_t piece) const {
  if (piece == 0) return true;
  const Piece& before = pieces_[piece - 1];
  return before.is(PKind::kComma) || before.is(PKind::kSemicolon) || before.is(PKind::kStop) ||
         before.is(PKind::kColon) || before.is(PKind::kDash) || before.is(PKind::kSlash) ||
         is(Role::kAnd, piece - 1, piece) || is(Role::kThen, piece - 1, piece);
}

}  // namespace chalkleaf::draft
