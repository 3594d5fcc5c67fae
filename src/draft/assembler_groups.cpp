// What holds for several drills: rounds, rests, ladders, how long each group stays; and how a line
// ends.
#include <algorithm>
#include <utility>

#include "draft/assembler.h"
#include "draft/spoken_dose.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;

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
  constexpr double kChange = 60;
  if (stays_ && std::all_of(elements.begin(), elements.end(), [&](const Element& e) {
        return e.kind == EKind::kEach ||
               (e.kind == EKind::kTime && !e.held && e.values.front() >= kChange);
      }))
    return true;
  return std::any_of(elements.begin(), elements.end(),
                     [&](const Element& e) {
                       return e.kind == EKind::kTime && !e.held && e.values.front() >= kShort;
                     }) &&
         (within(Role::kGroupTurns, 0, pieces_.size()) ||
          (has_kind(elements, EKind::kEach) && within(Role::kSwap, 0, pieces_.size()))) &&
         (has_kind(elements, EKind::kEach) || within(Role::kSwap, 0, pieces_.size()));
}

// `3 x 10`, `5-4-3`, `15 s x 3`
bool Assembler::in_sets(const Elements& elements, const Element& rest) {
  bool time = false;
  bool often = false;
  for (const Element& e : elements) {
    if (e.kind == EKind::kSetsOf || e.values.size() > 2) return true;
    time = time || e.kind == EKind::kTime;
    often = often || (e.kind == EKind::kCount && e.unit == Unit::kTimes);
  }
  return time && often && rest.after_each;
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
    if (!in_sets(drill.elements, rest)) continue;
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

// `bridge, hold 10, repeat three times`: rounds of one drill are its sets.
void Assembler::fold_rounds() {
  const Group& group = *out_.group;
  const bool plain = group.has_rounds && !group.work && !group.between && !group.superset;
  if (!plain || out_.drills.size() != 1 || !out_.drills[0].dose) return;
  SpokenDose& dose = *out_.drills[0].dose;
  if (dose.sets > 1 || dose.is_ladder()) return;
  dose.sets = group.rounds;
  out_.group.reset();
}

// `round-off flick: 5 rounds`, `run round the mat, 5 rounds`: of one drill they are goes or
// lengths. What opens a list of drills is a circuit, by whatever name.
Elements Assembler::rounds_of(const Name& name, const Elements& elements) const {
  const bool one = elements.front().kind == EKind::kRounds &&
                   std::count_if(elements.begin(), elements.end(), [](const Element& e) {
                     return e.is_amount() || e.kind == EKind::kRounds || e.kind == EKind::kOnOff ||
                            e.kind == EKind::kEmom;
                   }) == 1;
  if (!one || line_.ends_with(':') || out_.group) return elements;
  // `then go again, 2 rounds` names no move.
  const auto is_move = [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      if (is(Role::kMove, i, end) && !is(Role::kGo, i, end)) return true;
    }
    return false;
  };
  bool moves = is_move(name.begin, name.end);
  bool opens = within(Role::kCircuit, name.begin, name.end) ||
               is(Role::kSuperset, name.begin, name.end) || is(Role::kWarmUp, name.begin, name.end);
  for (const Name& waits : pending_) {
    moves = moves || is_move(waits.begin, waits.end);
    opens = opens || within(Role::kCircuit, waits.begin, waits.end);
  }
  const std::size_t from = pending_.empty() ? name.begin : pending_.front().begin;
  const bool run = from < pieces_.size() && is(Role::kRunning, from, pieces_.size());
  // `Strength: 3 rounds` names a part, `handstand forward roll: 3 rounds` a drill.
  const bool part = pending_.empty() && name.end - name.begin < 3 && !run &&
                    words_.any_of({Role::kPart, Role::kStretchPart}, pieces_, name.begin, name.end);
  const bool game = within(Role::kGame, name.begin, name.end);
  if (!(moves || run) || opens || part || game) return elements;
  Elements out = elements;
  out.front().kind = EKind::kCount;
  out.front().unit = run ? Unit::kLengths : Unit::kGoes;
  return out;
}

void Assembler::finish() {
  for (SpokenDrill& drill : out_.drills) {
    drill.typed = std::string(line_.substr(drill.where.begin, drill.where.end - drill.where.begin));
    if (!as_many_.empty()) drill.notes.push_back(as_many_);
    drill.dose = resolve(words_, drill, setting_);
  }
  if (!out_.group) return;
  fold_rounds();
  if (!out_.group) return;
  // `odd 6 press negatives, even 10 tuck jumps`: each minute is one of them.
  if (emom_ && out_.group->has_rounds && out_.drills.size() == 2 &&
      within(Role::kOddEven, 0, pieces_.size())) {
    out_.group->rounds /= 2;
  }
}

}  // namespace chalkleaf::draft
