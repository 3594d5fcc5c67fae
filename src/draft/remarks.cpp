// See the header.
#include "draft/remarks.h"

#include <algorithm>

namespace chalkleaf::draft {

bool is_about_child(const Lexicon& words, const DraftLine& one, const Pieces& pieces) {
  std::size_t begin = 0;
  if (pieces.size() > 1 && words.is(Role::kOurs, pieces, 0, 1)) begin = 1;
  // `NB Gymnast 4 – back brace`
  const std::size_t label = words.match(Role::kLabel, pieces, 0, pieces.size());
  if (label > 0 && words.match(Role::kChild, pieces, 0, pieces.size()) == 0) begin = label;
  if (pieces.size() < begin + 2) return false;
  std::size_t at = begin + words.match(Role::kChild, pieces, begin, pieces.size());
  if (pieces[begin].text == "#") at = begin + 1;
  // `13 – shin splints`, `4 - ankle, bars instead of vault`
  const bool by_number = begin == 0 && pieces.size() > 2 && pieces[0].is(Piece::Kind::kNumber) &&
                         pieces[0].whole &&
                         (pieces[1].is(Piece::Kind::kDash) || pieces[1].text == "=");
  if (by_number && words.within(Role::kHealth, pieces, 2, pieces.size())) return true;
  if (at == begin) {
    return (!one.spoken.has_dose() ||
            (is_weak(words, one) && pieces[0].is(Piece::Kind::kNumber))) &&
           words.within(Role::kHealth, pieces, 0, pieces.size());
  }
  if (at < pieces.size() && words.is(Role::kChildWith, pieces, at, pieces.size())) return true;
  if (at < pieces.size() && pieces[at].is(Piece::Kind::kStop)) ++at;
  const bool number = at < pieces.size() && pieces[at].is(Piece::Kind::kNumber);
  const bool several = pieces[at - 1].text.size() > 3 && pieces[at - 1].text.ends_with('s');
  const bool joined = number && at + 2 < pieces.size() &&
                      (words.is(Role::kAnd, pieces, at + 1, pieces.size()) ||
                       pieces[at + 1].is(Piece::Kind::kComma)) &&
                      pieces[at + 2].is(Piece::Kind::kNumber);
  if (number && (!several || joined)) return true;
  return !one.spoken.has_dose() && words.within(Role::kHealth, pieces, 0, pieces.size());
}

bool is_label(const Lexicon& words, const Pieces& pieces) {
  const std::size_t label = std::max(words.match(Role::kLabel, pieces, 0, pieces.size()),
                                     words.match(Role::kReader, pieces, 0, pieces.size()));
  if (label == 0 || label >= pieces.size()) return false;
  const Piece& behind = pieces[label];
  return behind.is(Piece::Kind::kColon) || behind.text == "=" ||
         words.is(Role::kCondition, pieces, label, pieces.size());
}

bool is_weak(const Lexicon& words, const DraftLine& one) {
  return !one.spoken.group &&
         std::all_of(
             one.spoken.drills.begin(), one.spoken.drills.end(), [&](const SpokenDrill& drill) {
               const Pieces name = pieces_of(drill.name);
               const bool leads = drill.elements.size() == 1 && drill.elements[0].leads;
               return !drill.dose || (leads && !words.within(Role::kMove, name, 0, name.size()));
             });
}

bool takes_time_of_pause(DraftLine& one) {
  std::optional<double> minutes;
  for (const SpokenDrill& drill : one.spoken.drills) {
    if (!drill.dose) continue;
    if (drill.dose->kind != SpokenDose::Kind::kSeconds || minutes) return false;
    minutes = drill.dose->values.front() / 60;
  }
  for (const Element& e : one.spoken.defaults) {
    if (e.kind == Element::Kind::kTime && !minutes) minutes = e.values.front() / 60;
  }
  if (!one.heading.minutes) one.heading.minutes = minutes;
  one.spoken = {};
  return true;
}

}  // namespace chalkleaf::draft
