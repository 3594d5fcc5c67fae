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
  return std::any_of(elements.begin(), elements.end(),
                     [&](const Element& e) { return e.kind == kind; });
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
  if (is(Role::kRemark, from, pieces_.size())) return true;
  std::size_t words_end = from;
  for (std::size_t i = begin; i < end && items[i].kind != Item::Kind::kComma; ++i) {
    if (is_words(items[i])) words_end = items[i].end;
  }
  return within(Role::kCondition, from, words_end);
}

void Assembler::sentence(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
  if (begin >= end) return;
  label_.clear();
  listed_.clear();
  list_ = false;
  sentence_drills_.clear();
  if (is_remark_sentence(items, begin, end)) {
    flush();
    return note(items[begin].begin, items[end - 1].end);
  }
  // `…, jellyfish jumps. 2 goes of each`: what waits may be meant.
  const bool nameless = is_element(items[begin]) && !items[begin].element.leads;
  if (!nameless) flush();
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

// Labels and list headers before colons and dashes; returns where the rest begins.
std::size_t Assembler::labels(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < end; ++i) {
    if (items[i].kind != Item::Kind::kDivide) continue;
    const auto from = items.begin() + static_cast<std::ptrdiff_t>(begin);
    const bool amounts =
        std::any_of(from, items.begin() + static_cast<std::ptrdiff_t>(i), is_element);
    if (amounts) {
      if (!heads_list(items, begin, i, end)) break;
      header(items, begin, i);
      begin = i + 1;
      continue;
    }
    if (begin == i || !(names_drills(items, i + 1, end) || is_named_label(items[begin]))) break;
    if (!label_.empty()) label_ += ", ";
    label_ += names_.raw(items[begin].begin, items[i].begin);
    begin = i + 1;
  }
  return begin;
}

// `line 1`, `silver`
bool Assembler::is_named_label(const Item& item) const {
  if (!is_words(item)) return false;
  const bool numbered =
      is(Role::kNameBeforeNumber, item.begin, item.end) && item.end == item.begin + 2;
  const std::size_t level = words_.match(Role::kLevel, pieces_, item.begin, item.end);
  return numbered || (level > 0 && level == item.end - item.begin);
}

// The right side begins a drill of its own: words and then an amount, or a count and words.
bool Assembler::names_drills(const std::vector<Item>& items, std::size_t at, std::size_t end) {
  std::size_t words = 0;
  for (; at < end && items[at].kind != Item::Kind::kStop; ++at) {
    if (is_words(items[at])) ++words;
    if (!is_element(items[at])) continue;
    const Element& e = items[at].element;
    if (e.kind == EKind::kSides || e.kind == EKind::kEach || e.kind == EKind::kRest) continue;
    if (words > 0 || e.leads) return true;
    // `3 times slow without music, 3 times with music`, but not `6 goes off the block`
    return at + 1 < end && is_words(items[at + 1]) && e.kind == EKind::kCount &&
           e.unit != Unit::kBare &&
           std::any_of(items.begin() + static_cast<std::ptrdiff_t>(at) + 1,
                       items.begin() + static_cast<std::ptrdiff_t>(end), [](const Item& item) {
                         return is_element(item) && item.element.is_amount();
                       });
  }
  return false;
}

// `shapes 20 sec ea: hollow, arch` and `3 rounds, 40 on / 20 off: leg lifts, pushups`.
bool Assembler::heads_list(const std::vector<Item>& items, std::size_t begin, std::size_t divide,
                           std::size_t end) const {
  bool group = false;
  bool each = false;
  bool timed = false;
  const bool colon = pieces_[items[divide].begin].is(PKind::kColon);
  for (std::size_t i = begin; i < divide; ++i) {
    if (!is_element(items[i])) continue;
    const EKind kind = items[i].element.kind;
    group = group || kind == EKind::kOnOff || kind == EKind::kRounds || kind == EKind::kEmom ||
            kind == EKind::kAsMany;
    each = each || kind == EKind::kEach;
    timed = timed || kind == EKind::kTime;
  }
  if (group) return true;
  std::size_t names = 0;
  bool amounts = false;
  for (std::size_t i = divide + 1; i < end; ++i) {
    if (is_words(items[i])) ++names;
    amounts = amounts || (is_element(items[i]) && items[i].element.is_amount());
  }
  if (names < 2 || amounts) return false;
  // `shapes 20 sec ea - hollow, arch`; not `6 passes each - no spot tonight`.
  const Item& first = items[divide + 1];
  const bool remark = is_words(first) && names_.is_remark({first.begin, first.end, {}});
  return colon || (each && timed && !remark);
}

void Assembler::header(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
  std::string said;
  Elements found;
  for (std::size_t i = begin; i < end; ++i) {
    if (is_words(items[i]) && !is(Role::kQualifier, items[i].begin, items[i].end)) {
      said += (said.empty() ? "" : " ") + names_.raw(items[i].begin, items[i].end);
    }
    if (is_element(items[i])) found.push_back(items[i].element);
  }
  for (const Element& e : grouped(found)) listed_.push_back(e);
  list_ = true;
  if (has_kind(found, EKind::kAsMany) && !found.front().values.empty()) {
    // `AMRAP 8 mins – 5 ring rows, 8 press ups`: the list has doses of its own.
    as_many_ = names_.raw(items[begin].begin, items[end - 1].end);
  }
  if (!said.empty()) label_ = said;
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
    if (is_words(items[at]) && is_aside(items, at))
      return note(items[at].begin, items[end - 1].end);
    at = stretch(items, at, end);
  }
}

// `… or 5 tries, whichever comes first`, `… and at the end hold 10 s`, `stick 3 sec`
bool Assembler::is_aside(const std::vector<Item>& items, std::size_t at) const {
  const Item& item = items[at];
  if (out_.drills.empty() && pending_.empty()) return false;
  if (is(Role::kOr, item.begin, item.end)) return true;
  const std::size_t finish = words_.match(Role::kFinish, pieces_, item.begin, item.end);
  if (finish > 0 && finish == item.end - item.begin) return true;
  const bool behind = at > 0 && is_element(items[at - 1]) && items[at - 1].element.is_amount();
  return behind && is(Role::kAnd, item.begin, item.end) && item.end - item.begin > 2;
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
    ++i;
    while (i + 1 < end && items[i].kind == Item::Kind::kBracket) {
      name.end = std::min(items[i].end + 1, pieces_.size());  // `candle (lie, legs up) hold 5`
      ++i;
    }
  }
  take();
  if (elements.empty()) {
    words_only(name);
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
  if (!named && i < end && is_words(items[i]) && name_behind(items[i], elements)) {
    name = {items[i].begin, items[i].end, {}};  // `10 star jumps`, `two laps jogging`
    named_behind_ = true;
    ++i;
    while (i < end && is_element(items[i]) && !items[i].element.leads)
      elements.push_back(items[i++].element);
    elements = grouped(elements);
    if (elements.size() > 1 && elements[0].leads && elements[1].kind == EKind::kCount &&
        elements[1].unit == Unit::kTimes) {
      name.begin = elements[0].begin;  // `2 box layers x6`
      elements.erase(elements.begin());
    }
    elements.empty() ? words_only(name) : dosed(name, elements);
    return i;
  }
  if (!named) {
    nameless(elements);
    return i;
  }
  elements = grouped(elements);
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
