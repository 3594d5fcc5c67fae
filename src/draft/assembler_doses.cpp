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

bool is_time(const Element& e) {
  return e.kind == EKind::kTime || (e.kind == EKind::kSetsOf && e.timed);
}

}  // namespace

bool Assembler::is_linked(const Elements& elements) const {
  if (elements.front().kind != EKind::kCount) return false;
  // `walk, dip, walk 2 passes each`
  const bool again =
      pending_.size() > 2 && names_.raw(pending_.front().begin, pending_.front().end) ==
                                 names_.raw(pending_.back().begin, pending_.back().end);
  if (again && has_kind(elements, EKind::kEach)) return true;
  if (elements.front().unit != Unit::kGoes) return false;
  // `2 goes of each` means the moves, `5 turns each` the gymnasts.
  if (is_of_each(elements)) return false;
  // `pullover, cast, back hip circle – 5 turns each`: all of it, behind the dash.
  const bool here = pending_.empty() || pending_.front().begin >= sentence_begin_;
  if (divided_ && here && has_kind(elements, EKind::kEach)) return true;
  const auto links = std::count_if(pending_.begin(), pending_.end(), [&](const Name& name) {
    return is(Role::kLinked, name.begin, name.end) ||
           (name.end > name.begin + 1 && is(Role::kLinked, name.end - 1, name.end));
  });
  return links > 1;
}

// `kicks, hip openers, lunges with twist, 8 each side`: each of them on both sides.
bool Assembler::are_sided_moves(const Elements& elements) const {
  const bool sides = has_kind(elements, EKind::kSides) && elements.front().kind == EKind::kCount;
  return sides && pending_.size() > 2 &&
         std::all_of(pending_.begin(), pending_.end(), [&](const Name& name) {
           bool plural = false;
           for (std::size_t i = name.begin; i < name.end; ++i)
             plural = plural || pieces_[i].text.ends_with('s');
           return plural && !is(Role::kBody, name.end - 1, name.end);
         });
}

bool Assembler::is_of_all(const Elements& elements) const {
  const bool sets =
      elements.size() == 1 && elements.front().kind == EKind::kCount &&
      elements.front().values.size() == 1 &&
      (elements.front().unit == Unit::kSets || elements.front().unit == Unit::kTimes) &&
      sentence_drills_.size() > 1;
  if (!sets) return false;
  return std::all_of(sentence_drills_.begin(), sentence_drills_.end(), [&](std::size_t i) {
    const Elements& own = out_.drills[i].elements;
    return std::all_of(own.begin(), own.end(), [](const Element& e) {
      return e.kind != EKind::kSetsOf && (e.kind != EKind::kCount || e.unit == Unit::kBare);
    });
  });
}

bool Assembler::is_body_list(std::size_t from) const {
  return std::all_of(
      pending_.begin() + static_cast<std::ptrdiff_t>(from), pending_.end(), [&](const Name& name) {
        return within(Role::kBody, name.begin, name.end) && name.end - name.begin < 4;
      });
}

SpokenDrill& Assembler::add(const Name& named, const Elements& elements) {
  const Name name = named.own.empty() ? names_.without_tail(named) : named;
  SpokenDrill made;
  made.label = label_;
  // `splits right, left, middle`: the sides at its end are no part of the name.
  const bool sides = !name.own.empty() && name.own.front().kind == EKind::kSides &&
                     name.own.back().next == name.end && name.own.front().begin > name.begin;
  std::size_t name_end = sides ? name.own.front().begin : name.end;
  while (name_end > name.begin + 1 && pieces_[name_end - 1].is(PKind::kOpen)) --name_end;
  made.name = names_.spelled(name.begin, name_end);
  made.elements = name.own;
  made.elements.insert(made.elements.end(), elements.begin(), elements.end());
  made.where = {pieces_[name.begin].begin, pieces_[name.end - 1].end};
  name_end_ = name.end;
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
    // `walking on toes, on heels, with knees high, one lap each`
    const bool variant = elements.front().unit == Unit::kLengths &&
                         is(Role::kQualifier, name.begin, name.end) && &name != &names.front();
    if (names_.is_remark(name) && !variant && !name.sure) {
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

// Shapes that a slash joins are held one after the other: the smaller load, unless each is a
// length.
bool Assembler::slashes(const Name& name) const {
  return std::any_of(pieces_.begin() + static_cast<std::ptrdiff_t>(name.begin),
                     pieces_.begin() + static_cast<std::ptrdiff_t>(name.end),
                     [](const Piece& piece) { return piece.is(PKind::kSlash); });
}

// `long hang and swing, six swings`: what is counted was named before.
bool Assembler::repeats(const Name& name) const {
  std::string word = pieces_[name.end - 1].text;
  if (word.ends_with('s')) word.pop_back();
  return std::any_of(pending_.begin(), pending_.end(), [&](const Name& before) {
    const std::string text = names_.raw(before.begin, before.end);
    return lower_ascii(text).find(word) != std::string::npos;
  });
}

void Assembler::dosed(const Name& name, const Elements& elements) {
  if (pending_.empty() && is_other_way(name, elements)) return;
  if (is_stay(elements)) {
    pending_.push_back(name);
    return;
  }
  const bool each = has_kind(elements, EKind::kEach);
  const bool lengths =
      elements.front().kind == EKind::kCount && elements.front().unit == Unit::kLengths;
  const bool complex = complex_;
  // `tuck / pike / straddle jumps x8 of each`
  const bool of_each = is_of_each(elements);
  std::vector<Name> halves =
      each || lengths ? names_.parted(name, each && (lengths || of_each || !slashes(name)), lengths)
                      : std::vector<Name>{name};
  if (each && halves.size() == 1 && is_time(elements.front()) &&
      !(slashes(name) && elements.front().held))  // `pike / straddle / butterfly hold 10 each`
    halves = names_.held_shapes(name);
  if (names_.is_ladder(name)) halves = {name};
  if (!pending_.empty() && each && !complex) {
    pending_.insert(pending_.end(), halves.begin(), halves.end());
    if (is_linked(elements)) return join_pending(elements);
    if (is_body_list(0) || (pending_.size() > 1 && is_body_list(1))) return join_pending(elements);
    return distribute(elements);
  }
  if (halves.size() > 1) {
    flush();
    pending_ = halves;
    for (Name& half : pending_) half.sure = true;
    return distribute(elements);
  }
  const bool joins = !pending_.empty() && sentence_drills_.empty() &&
                     !names_.is_remark(pending_.front()) &&
                     (!elements.front().leads || repeats(name));
  if (joins) {
    pending_.push_back(name);
    if (are_sided_moves(elements)) return distribute(elements);
    return join_pending(elements);
  }
  flush();
  Elements own = elements;
  for (Element& e : own) e.of_one = e.kind == EKind::kEach;
  add(name, own);
}

// Elements without a name: of what waits, or of the drill before.
void Assembler::nameless(const Elements& said) {
  const Elements kept = grouped(said);
  if (kept.empty() || is_stay(kept)) return;
  // `jump off, land, hold 3 s, x 4`: how the landing ends.
  if (!pending_.empty() && kept.size() == 1 && kept.front().kind == EKind::kTime &&
      kept.front().held &&
      (landed_ || is(Role::kStuck, pending_.back().end - 1, pending_.back().end)))
    return note(kept.front().begin, kept.front().next);
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
  if (pending_.size() == 1 && each && kept.front().unit == Unit::kLengths)
    pending_ = names_.parted(pending_.front(), true, true);
  if (pending_.size() == 1 && each && amount && is_time(kept.front()))
    pending_ = names_.held_shapes(pending_.front());  // `dish and arch, 20 s each`
  // `…, 5 deep breaths`, `three big sighs`: the word is what is done.
  const bool own_name = kept.size() == 1 && kept.front().kind == EKind::kCount &&
                        pending_.empty() && kept.front().unit == Unit::kOwn;
  if (own_name && (!sentence_drills_.empty() || out_.drills.empty())) {
    Elements count = kept;
    count.front().remark.clear();
    add({kept.front().begin, kept.front().next, {}}, count).name = kept.front().remark;
    return;
  }
  // `50 jumps on two legs, 20 right and 20 left`: the same again, otherwise.
  const bool both = amount && pending_.empty() && !sentence_drills_.empty() &&
                    kept.front().ways == std::vector<std::string>{"both"} &&
                    has_amount(out_.drills.back().elements);
  if (both && kept.front().sides == Role::kEachWay &&
      out_.drills.back().elements.front().values == kept.front().values) {
    Element ways = kept.front();  // `3 lengths forwards, 3 backwards, 3 sideways`
    ways.kind = EKind::kSides;
    ways.ways.clear();
    extend(out_.drills.back(), {ways});
    return note(ways.begin, ways.next);
  }
  if (both) {
    const std::string again = out_.drills.back().name;
    add({kept.front().begin, kept.front().next, {}}, kept).name = again;
    return;
  }
  if (!pending_.empty() && (amount || (sides && out_.drills.empty()))) {
    const bool several = pending_.size() > 1;
    // `traffic lights, stuck in the mud, 10 mins`: the time of both games, not of one.
    constexpr double kGames = 600;
    if (several && !each && kept.size() == 1 && kept.front().kind == EKind::kTime &&
        kept.front().values.front() >= kGames) {
      flush();
      return note(kept.front().begin, kept.front().next);
    }
    const bool complex = complex_ && kept.front().unit == Unit::kLengths;
    const bool dashed = divided_ && dashed_distribution(kept);
    // `arms up, out, punch – 8 of each`: the ways of one drill.
    const bool way_between =
        pending_.size() > 2 &&
        std::any_of(pending_.begin() + 1, pending_.end() - 1, [&](const Name& name) {
          return name.end == name.begin + 1 && is(Role::kOneWay, name.begin, name.end);
        });
    if (way_between && is_of_each(kept)) return join_pending(kept);
    if (several && is_linked(kept)) {
      drop_remarks();
      return join_pending(kept);
    }
    const bool of_last =
        kept.front().unit == Unit::kTimes && kept.front().values == std::vector<double>{1};
    if (several && (each || dashed) && !complex && !of_last && !is_body_list(0) && !is_body_list(1))
      return distribute(kept);
    // `mats in a row, photo on the board, shake the bells once each`
    const bool once = each && kept.front().unit == Unit::kTimes && kept.front().values.front() < 2;
    if (several && (!sentence_drills_.empty() || once)) {  // the last one alone
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
    if (are_sided_moves(kept)) return distribute(kept);
    return join_pending(kept);
  }
  // `go round twice, 1 min rest in the middle`
  const bool only_rest = kept.size() == 1 && kept.front().kind == EKind::kRest;
  if (out_.drills.empty() && only_rest && out_.group && !group_timed_) {
    group().between = kept.front().values.front();
    return;
  }
  if (out_.drills.empty() || (sentence_drills_.empty() && !label_.empty() && amount))
    return of_label(kept);
  if (is_of_all(kept)) {
    for (const std::size_t i : sentence_drills_) extend(out_.drills[i], kept);
    return;
  }
  if (kept.size() == 1 && kept.front().kind == EKind::kRest) return rest_of_all(kept.front());
  if (each && amount && sentence_drills_.size() != 1) {  // `… . 2 goes at each`, `x3 for all`
    for (SpokenDrill& drill : out_.drills) {
      const Pieces name = pieces_of(drill.name);
      if (!words_.is(Role::kRemark, name, 0, name.size())) extend(drill, kept);
    }
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
  std::string named = label_;
  if (named.empty() && !setting_.name.empty() && has_amount(elements)) named = setting_.name;
  if (named.empty() && !counts) {
    out_.defaults.insert(out_.defaults.end(), elements.begin(), elements.end());
    return;
  }
  // `Composition: 3 times slow, 3 times with music`
  if (first.kind == EKind::kCount && (first.unit == Unit::kTimes || first.unit == Unit::kGoes))
    label_ = named;
  Elements own = elements;
  for (Element& e : own) e.of_one = e.kind == EKind::kEach;
  SpokenDrill& made = add({first.begin, first.next}, own);
  made.name = named.empty() ? names_.raw(first.next - 1, first.next) : named;
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

// Words behind elements with no name before them are the name, unless they only say how.
bool Assembler::name_behind(const Item& item, const Elements& elements) const {
  const Element& e = elements.back();
  if (e.leads || e.kind == EKind::kSides) return pending_.empty() || e.leads;
  if (e.kind == EKind::kRounds) return true;
  if (!pending_.empty() || !has_amount(elements)) return false;
  const bool counts = e.kind == EKind::kTime || e.kind == EKind::kSetsOf ||
                      (e.kind == EKind::kCount && e.unit != Unit::kBare && e.unit != Unit::kSets);
  const bool again = named_behind_ && !sentence_drills_.empty();
  if ((!label_.empty() || again) && counts) return true;
  const bool first = out_.drills.empty() && is(Role::kNameHead, item.begin, item.end) &&
                     item.end > item.begin + 1;  // `count to 20 in candle`
  if (first) return counts;
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
    if (is(Role::kNameTail, name.begin, name.end)) return;  // `have 20 s rest between`
    return note(name.begin, name.end);
  }
  if (list_) {
    Elements all = listed_;
    all.insert(all.end(), kept.begin(), kept.end());
    add(name, all);
    return;
  }
  // `wrists 10 circles each way`: said of the dose before it.
  const bool only_sides = std::all_of(kept.begin(), kept.end(),
                                      [](const Element& e) { return e.kind == EKind::kSides; });
  if (only_sides && pending_.empty() && !sentence_drills_.empty() &&
      !names_.starts_clause(name.begin)) {
    extend(out_.drills.back(), kept);
    return note(name.begin, name.end);
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
    for (const Name& one : names_.all_of(name)) add(one, listed_);
    return;
  }
  // Behind a dose in the same clause it is a remark: `x6 land quiet like a cat`.
  const bool behind = !out_.drills.empty() && name.begin > 0 && !names_.starts_clause(name.begin);
  if (behind) return note(name.begin, name.end);
  pending_.push_back(name);
}

}  // namespace chalkleaf::draft
