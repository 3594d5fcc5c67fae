// What stands before a colon or dash: a label of the drills behind it, or the head of a list.
#include <algorithm>
#include <utility>

#include "draft/assembler.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;
using PKind = Piece::Kind;

}  // namespace

// Labels and list headers before colons and dashes; returns where the rest begins.
std::size_t Assembler::labels(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < end; ++i) {
    if (items[i].kind != Item::Kind::kDivide) continue;
    const auto from = items.begin() + static_cast<std::ptrdiff_t>(begin);
    const bool amounts =
        std::any_of(from, items.begin() + static_cast<std::ptrdiff_t>(i), is_element);
    if (amounts) {
      if (heads_minutes(items, begin, i, end)) {
        if (!label_.empty()) label_ += ", ";
        const Name head = names_.without_tail({items[i - 2].begin, items[i - 2].end, {}});
        label_ += names_.raw(head.begin, head.end);
        early_notes_.push_back(names_.raw(items[i - 1].begin, items[i - 1].end));
        if (begin + 2 < i)
          early_notes_.push_back(names_.raw(items[begin].begin, items[i - 3].begin));
        begin = i + 1;
        continue;
      }
      if (!heads_list(items, begin, i, end)) break;
      header(items, begin, i);
      begin = i + 1;
      continue;
    }
    if (begin == i || !(names_drills(items, i + 1, end) || header_behind(items, i + 1, end) ||
                        is_named_label(items[begin]) || each_behind(items, end) ||
                        list_behind(items, i + 1, end)))
      break;
    if (!label_.empty()) label_ += ", ";
    label_ += names_.raw(items[begin].begin, items[i].begin);
    begin = i + 1;
  }
  return begin;
}

// `dynamic legs – kicks, hip openers, lunges, 8 each side`: three names or more, and one amount.
bool Assembler::list_behind(const std::vector<Item>& items, std::size_t at, std::size_t end) {
  std::size_t names = 0;
  while (at + 1 < end && is_words(items[at]) && items[at + 1].kind == Item::Kind::kComma) {
    ++names;
    at += 2;
  }
  return names > 2 && at < end && is_element(items[at]) && items[at].element.is_amount() &&
         !items[at].element.leads;
}

// `stretch: 30 s each - pike, straddle`: behind the label stands the head of a list.
bool Assembler::header_behind(const std::vector<Item>& items, std::size_t at,
                              std::size_t end) const {
  std::size_t divide = at;
  while (divide < end && is_element(items[divide])) ++divide;
  return divide > at && divide < end && items[divide].kind == Item::Kind::kDivide &&
         heads_list(items, at, divide, end);
}

// `shapes: tuck, star, pike. Hold each 5 s`: the next sentence has the dose.
bool Assembler::each_behind(const std::vector<Item>& items, std::size_t end) {
  Elements found;
  for (std::size_t i = end + 1; i < items.size() && is_element(items[i]); ++i)
    found.push_back(items[i].element);
  return has_kind(found, EKind::kEach) && has_amount(found);
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

// `little warm up 3 min: music, running in place, claps 10x`: the time of all of it.
bool Assembler::heads_minutes(const std::vector<Item>& items, std::size_t begin, std::size_t divide,
                              std::size_t end) const {
  constexpr double kMinutes = 120;
  // `At half past, strength for ten minutes: …`
  while (begin + 2 < divide && is_words(items[begin]) &&
         items[begin + 1].kind == Item::Kind::kComma)
    begin += 2;
  const bool minutes = divide == begin + 2 && is_words(items[begin]) &&
                       is_element(items[begin + 1]) &&
                       items[begin + 1].element.kind == EKind::kTime &&
                       items[begin + 1].element.values.front() >= kMinutes &&
                       pieces_[items[divide].begin].is(PKind::kColon);
  return minutes && std::count_if(items.begin() + static_cast<std::ptrdiff_t>(divide),
                                  items.begin() + static_cast<std::ptrdiff_t>(end), is_words) > 1;
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
  Elements kept = grouped(found);
  // `4 stations 2 mins each, go round twice: …`
  if (out_.group && !group_timed_ && !out_.group->work) {
    const auto work = std::find_if(kept.begin(), kept.end(), [](const Element& e) {
      return e.kind == EKind::kTime && !e.held && e.values.size() == 1;
    });
    if (work != kept.end()) {
      group().work = work->values.front();
      group_timed_ = true;
      kept.erase(work);
      const auto rest = std::find_if(kept.begin(), kept.end(),
                                     [](const Element& e) { return e.kind == EKind::kRest; });
      if (rest != kept.end()) {  // `30 s each, 10 s to change`
        group().rest = rest->values.front();
        kept.erase(rest);
      }
    }
  }
  for (const Element& e : kept) listed_.push_back(e);
  list_ = true;
  if (has_kind(found, EKind::kAsMany) && !found.front().values.empty()) {
    // `AMRAP 8 mins – 5 ring rows, 8 press ups`: the list has doses of its own.
    as_many_ = names_.raw(items[begin].begin, items[end - 1].end);
  }
  if (!said.empty()) label_ = said;
}

}  // namespace chalkleaf::draft
