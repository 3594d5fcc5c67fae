// The clauses of a line: labels, headers of lists, names and the elements behind them.
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

SpokenLine Assembler::run(const std::vector<Item>& items) {
  // `4 points, 6 min per point, 1 min for the change`
  for (std::size_t i = 0; i + 1 < items.size() && !stays_; ++i) {
    if (is_element(items[i]) && is_element(items[i + 1]))
      stays_ = is_stay({items[i].element, items[i + 1].element});
  }
  for (std::size_t begin = 0; begin < items.size();) {
    std::size_t end = begin;
    while (end < items.size() && items[end].kind != Item::Kind::kStop) ++end;
    sentence(items, begin, end);
    begin = end + 1;
  }
  flush();
  finish();
  return std::move(out_);
}

bool Assembler::has_kind(const Elements& elements, EKind kind) {
  return std::any_of(elements.begin(), elements.end(), [&](const Element& e) {
    return e.kind == kind || (kind == EKind::kEach && e.each);
  });
}

bool Assembler::has_amount(const Elements& elements) {
  return std::any_of(elements.begin(), elements.end(),
                     [](const Element& e) { return e.is_amount(); });
}

bool Assembler::is(Role role, std::size_t begin, std::size_t end) const {
  return words_.is(role, pieces_, begin, end);
}

bool Assembler::within(Role role, std::size_t begin, std::size_t end) const {
  return words_.within(role, pieces_, begin, end);
}

// A sentence behind others that begins like a remark, or says when.
bool Assembler::is_remark_sentence(const std::vector<Item>& items, std::size_t begin,
                                   std::size_t end) const {
  if (out_.drills.empty() || begin >= end || !is_words(items[begin])) return false;
  const std::size_t from = items[begin].begin;
  const auto amounts =
      std::count_if(items.begin() + static_cast<std::ptrdiff_t>(begin),
                    items.begin() + static_cast<std::ptrdiff_t>(end),
                    [](const Item& item) { return is_element(item) && item.element.is_amount(); });
  if (amounts > 2) return false;  // `They know it: jog 3 laps, 20 star jumps, …`
  if (is(Role::kRemark, from, pieces_.size())) return true;
  bool dosed = false;
  for (std::size_t i = begin; i < end; ++i) {
    dosed = dosed || (is_element(items[i]) && items[i].element.is_amount());
    for (std::size_t k = items[i].begin; is_words(items[i]) && k < items[i].end && !dosed; ++k) {
      if (pieces_[k].text == "=") return true;  // `a fall = get back on`
    }
    // `Pinks do the bridge instead, 3 x 5 s` is a drill all the same.
    if (is_element(items[i]) && items[i].element.kind == EKind::kSetsOf) return false;
  }
  std::size_t words_end = from;
  for (std::size_t i = begin; i < end && items[i].kind != Item::Kind::kComma; ++i) {
    if (is_element(items[i]) && items[i].element.is_amount()) break;
    if (is_words(items[i])) words_end = items[i].end;
  }
  return within(Role::kCondition, from, words_end);
}

void Assembler::sentence(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
  if (begin >= end) return;
  sentence_begin_ = items[begin].begin;
  // `…, jellyfish jumps. 2 goes of each`: what waits may be meant.
  const bool nameless = is_element(items[begin]) && !items[begin].element.leads;
  if (!nameless) {
    flush();
    label_.clear();
  }
  listed_.clear();
  list_ = false;
  sentence_drills_.clear();
  if (is_remark_sentence(items, begin, end)) {
    return note(items[begin].begin, items[end - 1].end);
  }
  begin = labels(items, begin, end);
  for (std::size_t at = begin; at < end;) {
    std::size_t clause_end = at;
    while (clause_end < end && items[clause_end].kind != Item::Kind::kComma &&
           items[clause_end].kind != Item::Kind::kDivide) {
      ++clause_end;
    }
    if (clause_end > at) clause(items, at, clause_end);
    divided_ = clause_end < end && items[clause_end].kind == Item::Kind::kDivide;
    at = clause_end + 1;
  }
  listed_.clear();
  list_ = false;
}

Group& Assembler::group() {
  if (!out_.group) out_.group.emplace();
  return *out_.group;
}

// One clause: names and their elements, in turn.
void Assembler::clause(const std::vector<Item>& items, std::size_t at, std::size_t end) {
  while (at < end) {
    if (items[at].kind == Item::Kind::kBracket) {
      note(items[at].begin, items[at].end);
      ++at;
      continue;
    }
    if (is_words(items[at]) && is_aside(items, at)) {
      landed_ = true;
      return note(items[at].begin, items[end - 1].end);
    }
    at = stretch(items, at, end);
  }
}

// `back walkover, 5 line, 3 high`: the name before is the label. Nothing without one.
bool Assembler::label_of_places() {
  if (pending_.size() == 1 && label_.empty()) {
    label_ = names_.raw(pending_.front().begin, pending_.front().end);
    pending_.clear();
  }
  // `cartwheels 10 on line, 5 low`; not a share of all: `4 each, 2 on floor`.
  if (label_.empty() && !sentence_drills_.empty() && !out_.drills.back().notes.empty())
    label_ = out_.drills.back().name;
  return !label_.empty();
}

bool Assembler::is_again(const Elements& elements) const {
  const auto full = [](const Element& e) {
    return e.kind == EKind::kSetsOf || (e.kind == EKind::kTime && !e.held);
  };
  if (!pending_.empty() || sentence_drills_.empty() || !label_.empty() || !full(elements.front()))
    return false;
  const Elements& before = out_.drills.back().elements;
  return !before.empty() && full(before.front());
}

bool Assembler::is_way_name(const Item& item) const {
  return within(Role::kForwardBack, item.begin, item.end) ||
         within(Role::kLeft, item.begin, item.end) || within(Role::kRight, item.begin, item.end) ||
         within(Role::kOneWay, item.begin, item.end);
}

// `10 arm circles forward and 10 backward`: the drill before is done both ways.
bool Assembler::is_other_way(const Name& name, const Elements& elements) {
  if (out_.drills.empty() || elements.size() != 1) return false;
  SpokenDrill& before = out_.drills.back();
  const auto way = [&](std::size_t at, std::size_t end) {
    while (at < end && is(Role::kSidePrep, at, end)) ++at;
    for (const Role role : {Role::kForwardBack, Role::kLeft, Role::kRight, Role::kOneWay}) {
      const std::size_t said = at < end ? words_.match(role, pieces_, at, end) : 0;
      if (said == 0) continue;
      const bool limb = said + 1 == end - at &&
                        (is(Role::kLegNoun, end - 1, end) || is(Role::kArmNoun, end - 1, end) ||
                         is(Role::kSideNoun, end - 1, end));
      if (said == end - at || limb) return true;
    }
    return false;
  };
  const bool same = before.elements.size() == 1 && before.elements[0].kind == EKind::kCount &&
                    before.elements[0].unit != Unit::kGoes &&
                    // `forwards 2 lengths, backwards 2 lengths` are two things to do.
                    !(elements[0].unit == Unit::kLengths && elements[0].values.front() > 1) &&
                    before.elements[0].values == elements[0].values;
  const bool one =
      name_end_ > 1 && (way(name_end_ - 1, name_end_) || way(name_end_ - 2, name_end_));
  if (!same || !one || !way(name.begin, name.end)) return false;
  Element sides = elements[0];
  sides.kind = EKind::kSides;
  const bool side =
      within(Role::kLeft, name.begin, name.end) || within(Role::kRight, name.begin, name.end);
  sides.sides = side ? Role::kEachSide : Role::kEachWay;
  sides.next = name.end;
  extend(before, {sides});
  note(sides.begin, name.end);
  return true;
}

// `… or 5 tries, whichever comes first`, `… and at the end hold 10 s`, `stick 3 sec`
bool Assembler::is_aside(const std::vector<Item>& items, std::size_t at) const {
  const Item& item = items[at];
  if (out_.drills.empty() && pending_.empty()) return false;
  // `or kneel bounces 10` is a drill of its own.
  const bool drill = item.end > item.begin + 1 && pieces_[item.begin + 1].is(PKind::kWord) &&
                     at + 1 < items.size() && is_element(items[at + 1]) &&
                     items[at + 1].element.is_amount();
  if (is(Role::kOr, item.begin, item.end) && !drill) return true;
  const std::size_t finish = words_.match(Role::kFinish, pieces_, item.begin, item.end);
  const bool timed = at + 1 < items.size() && is_element(items[at + 1]) &&
                     items[at + 1].element.kind == EKind::kTime &&
                     is(Role::kStuck, item.begin, item.end);
  if (finish > 0 && (finish == item.end - item.begin || timed)) return true;
  const bool behind = at > 0 && is_element(items[at - 1]) && items[at - 1].element.is_amount();
  return behind && is(Role::kAnd, item.begin, item.end) && item.end - item.begin > 2;
}

bool Assembler::is_in_passing(const Element& e) {
  constexpr double kShort = 5;
  return e.kind == EKind::kTime && !e.held && e.values.size() == 1 && e.values.front() <= kShort;
}

// Before the sentence ends stands how often, and no name of another drill.
bool Assembler::counts_behind(const std::vector<Item>& items, std::size_t words) {
  std::size_t i = words + 1;
  if (i < items.size() && items[i].kind == Item::Kind::kComma) ++i;
  return i < items.size() && is_element(items[i]) && items[i].element.kind == EKind::kCount &&
         !items[i].element.leads;
}

std::size_t Assembler::stretch(const std::vector<Item>& items, std::size_t i, std::size_t end) {
  Name name{};
  Elements elements;
  const auto take = [&] {
    bool leads = false;
    while (i < end && is_element(items[i]) && !leads) {
      if (items[i].element.leads && !elements.empty()) break;
      elements.push_back(items[i].element);
      leads = items[i].element.leads;
      ++i;
    }
  };
  if (is_words(items[i])) {
    name = {items[i].begin, items[i].end, {}};
    if (is(Role::kOr, name.begin, name.end) && name.end > name.begin + 1) ++name.begin;
    ++i;
    while (i + 1 < end && items[i].kind == Item::Kind::kBracket) {
      name.end = std::min(items[i].end + 1, pieces_.size());  // `candle (lie, legs up) hold 5`
      ++i;
    }
  }
  take();
  // `handstand 3'' stand + roll, 6 tries`: the short hold belongs to what is done.
  if (name.end > name.begin && elements.size() == 1 && is_in_passing(elements[0]) && i < end &&
      is_words(items[i]) && counts_behind(items, i)) {
    name.end = items[i].end;
    elements.clear();
    ++i;
    take();
  }
  if (elements.empty()) {
    landed_ = false;
    words_only(name);
    return i;
  }
  // `butterfly and long-sit, both 20 s`
  if (!pending_.empty() && name.end > name.begin &&
      words_.match(Role::kAllOf, pieces_, name.begin, name.end) == name.end - name.begin) {
    if (pending_.size() == 1) pending_ = names_.all_of(pending_.front());
    Element each;
    each.kind = EKind::kEach;
    elements.push_back(each);
    elements.back().next = elements.front().next;
    nameless(elements);
    return i;
  }
  if ((!pending_.empty() || !out_.drills.empty()) && name.end > name.begin &&
      words_.match(Role::kDoIt, pieces_, name.begin, name.end) == name.end - name.begin) {
    nameless(elements);
    return i;
  }
  const bool named = name.end > name.begin;
  if (named && names_.is_ladder(name) && i < end &&
      is_words(items[i])) {  // `ladder 5-4-3-2-1 pull ups`
    name = {items[i].begin, items[i].end, {}};
    ++i;
    ladder(name, elements);
    return i;
  }
  // `30 s each of straddle, pike and butterfly`
  if (!named && i < end && is_words(items[i]) && elements.back().kind == EKind::kEach &&
      has_amount(elements) &&
      words_.is(Role::kOf, pieces_, elements.back().next - 1, pieces_.size())) {
    listed_ = grouped(elements);
    list_ = true;
    return i;
  }
  // `hello song, 2 action rhymes`: it counts no dose of what is before it.
  if (!named && i < end && is_words(items[i]) && elements.size() == 1 && elements[0].leads &&
      !pending_.empty() && !elements[0].at_place && elements[0].values.size() == 1 &&
      !within(Role::kMove, items[i].begin, items[i].end) && !is_way_name(items[i])) {
    pending_.push_back({elements[0].begin, items[i].end, {}});
    return i + 1;
  }
  // `handstand shapes 2 x 30 s tummy facing, 2 x 30 s back facing`: the same, otherwise.
  if (!named && i < end && is_words(items[i]) && is_again(elements)) {
    const std::string above = out_.drills.back().name;
    SpokenDrill& again = add({items[i].begin, items[i].end, {}}, grouped(elements));
    again.name = above + ", " + again.name;
    return i + 1;
  }
  if (!named && i < end && is_words(items[i]) && name_behind(items[i], elements)) {
    name = {items[i].begin, items[i].end, {}};  // `10 star jumps`, `two laps jogging`
    if (is(Role::kNameHead, name.begin, name.end) && name.end > name.begin + 1) ++name.begin;
    named_behind_ = true;
    ++i;
    if (elements.back().at_place && !label_of_places()) {
      note(elements.front().begin, name.end);
      return i;
    }
    if (is_other_way(name, elements)) return i;
    while (i < end && is_element(items[i]) && !items[i].element.leads)
      elements.push_back(items[i++].element);
    elements = grouped(elements);
    if (elements.size() > 1 && elements[0].leads && elements[1].kind == EKind::kCount &&
        elements[1].unit == Unit::kTimes && !within(Role::kMove, name.begin, name.end)) {
      name.begin = elements[0].begin;  // `2 box layers x6`
      elements.erase(elements.begin());
    }
    elements.empty() ? words_only(name) : dosed(name, elements);
    return i;
  }
  if (!named) {
    nameless(pending_.empty() ? elements : rounds_of({}, elements));
    return i;
  }
  elements = grouped(rounds_of(name, elements));
  if (elements.empty()) {
    words_only(name);
  } else if (has_amount(elements)) {
    dosed(name, elements);
  } else {
    without_amount(name, elements);
  }
  return i;
}

}  // namespace chalkleaf::draft
