// Whose an amount is: of a name, of several names, of the drill before, of all the line.
#include <algorithm>
#include <utility>

#include "base/text.h"
#include "draft/assembler.h"
#include "draft/spoken_dose.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;
using PKind = Piece::Kind;

}  // namespace

bool Assembler::take_group(const Element& e) {
  switch (e.kind) {
    case EKind::kRounds:
      group().rounds = e.values.front();
      group().has_rounds = true;
      return true;
    case EKind::kOnOff:
      group().work = e.values[0];
      group().rest = e.values[1];
      group_timed_ = true;
      return true;
    case EKind::kEmom:
      if (!e.values.empty()) {
        group().rounds = e.values.front() / 60;
        group().has_rounds = true;
      }
      group().superset = true;
      emom_ = true;
      return true;
    case EKind::kCount:  // `40 on / 20 off x2`
      if (e.unit != Unit::kTimes || !group_timed_ || !out_.drills.empty() || group().has_rounds)
        return false;
      group().rounds = e.values.front();
      group().has_rounds = true;
      return true;
    case EKind::kRest:
      if (!e.between_rounds || !out_.group) return false;
      group().between = e.values.front();
      return true;
    default:
      return false;
  }
}

Elements Assembler::grouped(const Elements& elements) {
  Elements kept;
  for (const Element& e : elements) {
    if (!take_group(e)) kept.push_back(e);
  }
  return kept;
}

// `three places, 22 min each`: how long each group stays, not what a child does.
bool Assembler::is_stay(const Elements& elements) const {
  constexpr double kShort = 120;
  return std::any_of(elements.begin(), elements.end(),
                     [&](const Element& e) {
                       return e.kind == EKind::kTime && !e.held && e.values.front() >= kShort;
                     }) &&
         within(Role::kGroupTurns, 0, pieces_.size()) &&
         (has_kind(elements, EKind::kEach) || within(Role::kSwap, 0, pieces_.size()));
}

bool Assembler::is_body_list(std::size_t from) const {
  return std::all_of(
      pending_.begin() + static_cast<std::ptrdiff_t>(from), pending_.end(), [&](const Name& name) {
        return within(Role::kBody, name.begin, name.end) && name.end - name.begin < 4;
      });
}

SpokenDrill& Assembler::add(const Name& name, const Elements& elements) {
  SpokenDrill made;
  made.label = label_;
  // `splits right, left, middle`: the sides at its end are no part of the name.
  const bool sides = !name.own.empty() && name.own.front().kind == EKind::kSides &&
                     name.own.back().next == name.end && name.own.front().begin > name.begin;
  made.name = names_.spelled(name.begin, sides ? name.own.front().begin : name.end);
  made.elements = name.own;
  made.elements.insert(made.elements.end(), elements.begin(), elements.end());
  made.where = {pieces_[name.begin].begin, pieces_[name.end - 1].end};
  made.notes = std::move(early_notes_);
  early_notes_.clear();
  if (!elements.empty()) reach(made, elements.back().next);
  out_.drills.push_back(std::move(made));
  sentence_drills_.push_back(out_.drills.size() - 1);
  return out_.drills.back();
}

void Assembler::reach(SpokenDrill& drill, std::size_t piece_end) const {
  if (piece_end > 0) drill.where.end = std::max(drill.where.end, pieces_[piece_end - 1].end);
}

void Assembler::note(std::size_t begin, std::size_t end) {
  const std::string said = names_.raw(begin, end);
  if (said.empty()) return;
  if (out_.drills.empty() || !pending_.empty()) {
    early_notes_.push_back(said);
  } else {
    out_.drills.back().notes.push_back(said);
    reach(out_.drills.back(), end);
  }
}

// Names without a dose of their own: drills, or remarks of the drill before them.
void Assembler::flush() {
  const std::vector<Name> names = std::exchange(pending_, {});
  for (const Name& name : names) {
    if (!out_.drills.empty() && names_.is_remark(name)) {
      note(name.begin, name.end);
      continue;
    }
    add(name, listed_);
  }
  if (!early_notes_.empty() && !out_.drills.empty()) {
    auto& notes = out_.drills.back().notes;
    notes.insert(notes.end(), early_notes_.begin(), early_notes_.end());
    early_notes_.clear();
  }
}

// Gives each name that waits the dose; remarks among them stay remarks.
void Assembler::distribute(const Elements& elements) {
  std::vector<Name> names = std::exchange(pending_, {});
  std::vector<Name> remarks;
  for (Name& name : names) {
    if (name.own.size() == 1 && name.own[0].kind == EKind::kSides && name.own[0].ways.empty() &&
        elements.front().kind == EKind::kCount) {
      name.own.clear();  // `cartwheels L + R`: each of them is one
    }
    if (names_.is_remark(name)) {
      remarks.push_back(name);
    } else {
      add(name, elements);
    }
  }
  if (out_.drills.empty() && !remarks.empty()) {
    add(remarks.front(), elements);
    remarks.erase(remarks.begin());
  }
  for (const Name& remark : remarks) note(remark.begin, remark.end);
}

// All that waits is one drill: `run, jump, land in hoop x6`.
void Assembler::join_pending(const Elements& elements) {
  Name all = pending_.front();
  all.end = pending_.back().end;
  for (std::size_t i = 1; i < pending_.size(); ++i) {
    all.own.insert(all.own.end(), pending_[i].own.begin(), pending_[i].own.end());
  }
  pending_.clear();
  add(all, elements);
}

void Assembler::dosed(const Name& name, const Elements& elements) {
  if (is_stay(elements)) {
    pending_.push_back(name);
    return;
  }
  const bool each = has_kind(elements, EKind::kEach);
  const bool lengths =
      elements.front().kind == EKind::kCount && elements.front().unit == Unit::kLengths;
  const bool complex = within(Role::kComplex, 0, pieces_.size());
  std::vector<Name> halves = each || lengths ? names_.parted(name, each) : std::vector<Name>{name};
  if (names_.is_ladder(name)) halves = {name};
  if (!pending_.empty() && each && !complex) {
    pending_.insert(pending_.end(), halves.begin(), halves.end());
    if (is_body_list(0) || (pending_.size() > 1 && is_body_list(1))) return join_pending(elements);
    return distribute(elements);
  }
  if (halves.size() > 1) {
    flush();
    pending_ = halves;
    return distribute(elements);
  }
  const bool joins =
      !pending_.empty() && sentence_drills_.empty() && !names_.is_remark(pending_.front());
  if (joins) {
    pending_.push_back(name);
    return join_pending(elements);
  }
  flush();
  add(name, elements);
}

// Elements without a name: of what waits, or of the drill before.
void Assembler::nameless(const Elements& said) {
  const Elements kept = grouped(said);
  if (kept.empty() || is_stay(kept)) return;
  const bool amount = has_amount(kept);
  const bool each = has_kind(kept, EKind::kEach);
  const bool sides = kept.front().kind == EKind::kSides;
  const bool only_remarks = std::all_of(pending_.begin(), pending_.end(),
                                        [&](const Name& name) { return names_.is_remark(name); });
  if (amount && out_.drills.empty() && !setting_.name.empty() && only_remarks &&
      !pending_.empty()) {
    for (const Name& name : std::exchange(pending_, {}))
      early_notes_.push_back(names_.raw(name.begin, name.end));
    return of_label(kept);  // `obstacle relay, teams of 4, x2 each`
  }
  if (!pending_.empty() && (amount || (sides && out_.drills.empty()))) {
    const bool several = pending_.size() > 1;
    const bool dashed = divided_ && dashed_distribution(kept);
    if (several && (each || dashed) && !is_body_list(0) && !is_body_list(1))
      return distribute(kept);
    if (several && !sentence_drills_.empty()) {  // the last one alone
      const Name last = pending_.back();
      pending_.pop_back();
      flush();
      pending_ = {last};
    }
    if (!sentence_drills_.empty() && names_.is_remark(pending_.back())) {
      flush();
      return extend(out_.drills.back(), kept);
    }
    drop_remarks();
    return join_pending(kept);
  }
  if (out_.drills.empty() || (sentence_drills_.empty() && !label_.empty() && amount))
    return of_label(kept);
  if (kept.size() == 1 && kept.front().kind == EKind::kRest) return rest_of_all(kept.front());
  if (each && amount && sentence_drills_.size() != 1) {  // `… . 2 goes at each`, `x3 for all`
    for (SpokenDrill& drill : out_.drills) extend(drill, kept);
    return;
  }
  if (kept.front().kind == EKind::kSides && divided_) {  // `Bronze 5, Silver 8 – both legs`
    for (const std::size_t i : sentence_drills_) extend(out_.drills[i], kept);
    return;
  }
  extend(out_.drills.back(), kept);
}

// Remarks among what waits are no part of its name.
void Assembler::drop_remarks() {
  while (pending_.size() > 1 && names_.is_remark(pending_.back())) {
    early_notes_.push_back(names_.raw(pending_.back().begin, pending_.back().end));
    pending_.pop_back();
  }
}

// `silver – x8 over the rope`, `1700 W/U – 3 laps`: the name is the label, or what is counted.
void Assembler::of_label(const Elements& elements) {
  const Element& first = elements.front();
  const bool counts = first.kind == EKind::kCount && first.unit == Unit::kLengths &&
                      first.remark.empty() && first.next < pieces_.size();
  if (label_.empty() && !setting_.name.empty() && has_amount(elements)) label_ = setting_.name;
  if (label_.empty() && !counts) {
    out_.defaults.insert(out_.defaults.end(), elements.begin(), elements.end());
    return;
  }
  SpokenDrill& made = add({first.begin, first.next}, elements);
  made.name = label_.empty() ? names_.raw(first.next - 1, first.next) : label_;
  made.label.clear();
}

// `straddle jump, full turn, leap – there and back x2`
bool Assembler::dashed_distribution(const Elements& elements) {
  return elements.front().kind == EKind::kCount && elements.front().unit == Unit::kLengths;
}

void Assembler::extend(SpokenDrill& drill, const Elements& elements) const {
  drill.elements.insert(drill.elements.end(), elements.begin(), elements.end());
  reach(drill, elements.back().next);
}

// A rest at the end of a line is that of all its drills done in sets, or else of the last.
void Assembler::rest_of_all(const Element& rest) {
  if (out_.group && !group_timed_) {
    group().between = rest.values.front();
    return;
  }
  const bool dosed =
      std::any_of(out_.drills.begin(), out_.drills.end(),
                  [](const SpokenDrill& drill) { return has_amount(drill.elements); });
  if (!dosed) {  // of the whole part
    out_.defaults.push_back(rest);
    return;
  }
  bool any = false;
  for (SpokenDrill& drill : out_.drills) {
    const bool sets = std::any_of(
        drill.elements.begin(), drill.elements.end(),
        [](const Element& e) { return e.kind == EKind::kSetsOf || e.values.size() > 2; });
    if (!sets) continue;
    extend(drill, {rest});
    any = true;
  }
  if (!any) extend(out_.drills.back(), {rest});
}

// `5-4-3-2-1 pull ups + same # dips`: both by the same ladder.
void Assembler::ladder(const Name& name, const Elements& elements) {
  for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
    if (!is(Role::kAnd, at, name.end) || !is(Role::kSame, at + 1, name.end)) continue;
    add({name.begin, at, {}}, elements);
    add({at + 1, name.end, {}}, elements);
    return;
  }
  add(name, elements);
}

// Words behind elements with no name before them are the name, unless they only say how.
bool Assembler::name_behind(const Item& item, const Elements& elements) const {
  const Element& e = elements.back();
  if (e.leads || e.kind == EKind::kSides) return pending_.empty() || e.leads;
  if (e.kind == EKind::kRounds) return true;
  if (!pending_.empty() || !has_amount(elements)) return false;
  const bool counts = e.kind == EKind::kTime ||
                      (e.kind == EKind::kCount && e.unit != Unit::kBare && e.unit != Unit::kSets);
  const bool again = named_behind_ && !sentence_drills_.empty();
  if ((!label_.empty() || again) && counts) return true;
  if (is(Role::kQualifier, item.begin, item.end) || is(Role::kRemark, item.begin, item.end))
    return false;
  return counts && (sentence_drills_.empty() || e.unit == Unit::kLengths);
}

// Words and a rest or sides: `side L+R`, `between it 20 sec pause`.
void Assembler::without_amount(const Name& name, const Elements& kept) {
  const bool effective = std::any_of(kept.begin(), kept.end(), [](const Element& e) {
    return e.kind != EKind::kNothing && e.kind != EKind::kEach;
  });
  if (!effective) return words_only(name);
  if (kept.front().kind == EKind::kRest && !out_.drills.empty()) {
    rest_of_all(kept.front());
    return note(name.begin, name.end);
  }
  if (list_) {
    Elements all = listed_;
    all.insert(all.end(), kept.begin(), kept.end());
    add(name, all);
    return;
  }
  pending_.push_back({name.begin, std::max(name.end, kept.back().next), kept});
  if (!has_kind(kept, EKind::kSides)) pending_.back().end = name.end;
}

void Assembler::words_only(const Name& name) {
  if (name.end <= name.begin) return;
  if (!pending_.empty() && pending_.back().end == name.begin && !names_.starts_clause(name.begin)) {
    pending_.back().end = name.end;  // `splits right/left with front leg on chair`
    return;
  }
  if (list_) {
    if (names_.is_remark(name) && !out_.drills.empty()) return note(name.begin, name.end);
    add(name, listed_);
    return;
  }
  // Behind a dose in the same clause it is a remark: `x6 land quiet like a cat`.
  const bool behind = !out_.drills.empty() && name.begin > 0 && !names_.starts_clause(name.begin);
  if (behind) return note(name.begin, name.end);
  pending_.push_back(name);
}

void Assembler::finish() {
  for (SpokenDrill& drill : out_.drills) {
    drill.typed = std::string(line_.substr(drill.where.begin, drill.where.end - drill.where.begin));
    if (!as_many_.empty()) drill.notes.push_back(as_many_);
    drill.dose = resolve(words_, drill, setting_);
  }
  if (!out_.group) return;
  // `odd 6 press negatives, even 10 tuck jumps`: each minute is one of them.
  if (emom_ && out_.group->has_rounds && out_.drills.size() == 2 &&
      within(Role::kOddEven, 0, pieces_.size())) {
    out_.group->rounds /= 2;
  }
}

}  // namespace chalkleaf::draft
