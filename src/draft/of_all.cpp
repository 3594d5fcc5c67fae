// See the header.
#include "draft/of_all.h"

#include <algorithm>

#include "base/text.h"
#include "draft/weights.h"

namespace chalkleaf::draft {

std::optional<OfAll> OfAllReader::said(std::string_view text) const {
  if (text.empty() || text.size() > 120) return std::nullopt;
  OfAll out;
  bool remarks = false;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t stop =
        std::min({text.find_first_of(",;(", at), text.find(". ", at), text.size()});
    const std::string_view part = trim(text.substr(at, stop - at));
    at = stop + 1;
    if (part.empty()) continue;
    if (const auto said = clause(part)) {
      const bool again = (said->sets > 0 || said->rounds > 0) && (out.sets > 0 || out.rounds > 0);
      if (again || (said->rest && out.rest)) return std::nullopt;
      if (said->sets > 0) out.sets = said->sets;
      if (said->rounds > 0) out.rounds = said->rounds;
      if (said->rest) out.rest = said->rest;
      if (said->minutes) out.minutes = said->minutes;
      out.plainly = out.plainly || said->plainly;
    } else if (part.find_first_of("0123456789") != std::string_view::npos) {
      return std::nullopt;
    } else {
      remarks = true;
    }
  }
  if (remarks && !out.plainly) return std::nullopt;
  return (out.sets > 0) != (out.rounds > 0) ? std::optional(out) : std::nullopt;
}

std::optional<OfAll> OfAllReader::clause(std::string_view text) const {
  constexpr double kMost = 10;
  OfAll out;
  const Pieces typed = pieces_of(text);
  // `twice through the whole list`
  if (const std::size_t twice = words_.match(Role::kTwice, typed, 0, typed.size());
      twice > 0 && twice < typed.size() && is_only_of_all(typed, twice)) {
    out.rounds = 2;
    out.plainly = true;
    return out;
  }
  const SpokenDrill read = read_named(words_, "", text, {});
  for (const Element& e : read.elements) {
    if (e.kind == Element::Kind::kEach || e.kind == Element::Kind::kNothing) continue;
    const bool one = e.values.size() == 1 && e.values.front() <= kMost && e.values.front() > 1;
    if (e.kind == Element::Kind::kRest) {
      out.rest = e.values.front();
    } else if (e.kind == Element::Kind::kCount && e.unit == Unit::kSets && one) {
      out.sets = e.values.front();
    } else if (e.kind == Element::Kind::kCount && e.unit == Unit::kTimes && one) {
      out.rounds = e.values.front();
    } else if (e.kind == Element::Kind::kRounds && one) {
      out.rounds = e.values.front();  // `twice through`
    } else if (e.kind == Element::Kind::kTime && is_between(typed)) {
      out.rest = e.values.front();  // `sit down between sets for 1 min`
      return out;
    } else if (e.kind == Element::Kind::kTime && e.values.front() >= kPartMinutes * 60 &&
               read.elements.size() == 1 && read.notes.empty()) {
      out.minutes = e.values.front() / 60;  // `strength, 10 min, 3 rounds of these`
      return out;
    } else {
      return std::nullopt;
    }
  }
  for (const std::string& note : read.notes) {
    if (!is_only_of_all(pieces_of(note), 0)) return std::nullopt;
  }
  out.plainly = words_.within(Role::kOfEverything, typed, 0, typed.size()) ||
                words_.within(Role::kThrough, typed, 0, typed.size());
  const bool anything = out.sets > 0 || out.rounds > 0 || out.rest.has_value();
  return anything ? std::optional(out) : std::nullopt;
}

bool OfAllReader::is_only_of_all(const Pieces& pieces, std::size_t at) const {
  while (at < pieces.size()) {
    std::size_t taken = 0;
    for (const Role role : {Role::kOfEverything, Role::kThrough, Role::kOfAll, Role::kCircuit})
      taken = std::max(taken, words_.match(role, pieces, at, pieces.size()));
    if (taken == 0 && pieces[at].is(Piece::Kind::kWord)) return false;
    at += std::max<std::size_t>(taken, 1);
  }
  return true;
}

bool OfAllReader::is_between(const Pieces& pieces) const {
  return words_.within(Role::kBetween, pieces, 0, pieces.size());
}

std::optional<Element> OfAllReader::amount_of_each(std::string_view text) const {
  if (text.find_first_of("0123456789") == std::string_view::npos) return std::nullopt;
  const SpokenDrill read = read_named(words_, "", text, {});
  std::optional<Element> out;
  bool each = false;
  for (const Element& e : read.elements) {
    each = each || e.kind == Element::Kind::kEach || e.each || e.of_each;
    if (e.kind == Element::Kind::kEach) continue;
    if (out || !e.is_amount()) return std::nullopt;
    out = e;
  }
  for (const std::string& note : read.notes) {
    const Pieces pieces = pieces_of(note);
    if (!is_only_of_all(pieces, 0)) return std::nullopt;
    each = each || words_.within(Role::kOfEverything, pieces, 0, pieces.size()) ||
           words_.within(Role::kEach, pieces, 0, pieces.size());
  }
  if (!each || !out) return std::nullopt;
  out->each = out->of_each = false;
  if (out->unit == Unit::kBare) out->unit = Unit::kReps;
  return out;
}

}  // namespace chalkleaf::draft
