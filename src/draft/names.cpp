// See the header.
#include "draft/names.h"

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
         pieces_[name.begin].is(PKind::kNumber) || counts_something(name);
}

// `teams of 4`
bool NameReader::counts_something(const Name& name) const {
  for (std::size_t i = name.begin + 1; i < name.end; ++i) {
    if (pieces_[i].is(PKind::kNumber) && is(Role::kNoAmountBehind, i - 1, i)) return true;
  }
  return false;
}

bool NameReader::is_ladder(const Name& name) const {
  return is(Role::kLadder, name.begin, name.end);
}

// `leaps + split jumps`, `walkover fwd and back`: two drills where each has a dose.
std::vector<Name> NameReader::parted(const Name& name, bool each) const {
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    if (!is(Role::kAnd, at, name.end)) continue;
    const bool sign = pieces_[at].is(PKind::kOther);
    const bool plural = pieces_[at - 1].text.ends_with('s') && (each || sign);
    const bool way = each && is(Role::kForwardBack, at - 1, name.end) &&
                     is(Role::kForwardBack, at + 1, name.end);
    if (!(plural || way || (sign && !each))) continue;
    if (is(Role::kBody, at - 1, name.end)) continue;
    return {{name.begin, at}, {at + 1, name.end}};
  }
  return {name};
}

bool NameReader::starts_clause(std::size_t piece) const {
  if (piece == 0) return true;
  const Piece& before = pieces_[piece - 1];
  return before.is(PKind::kComma) || before.is(PKind::kSemicolon) || before.is(PKind::kStop) ||
         before.is(PKind::kColon) || before.is(PKind::kDash) || before.is(PKind::kSlash) ||
         is(Role::kAnd, piece - 1, piece) || is(Role::kThen, piece - 1, piece);
}

}  // namespace chalkleaf::draft
