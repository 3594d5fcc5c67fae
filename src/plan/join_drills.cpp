// See the header.
#include "plan/join_drills.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::plan {
namespace {

template <class T>
void take(std::optional<T>& own, const std::optional<T>& shelf) {
  if (!own) own = shelf;
}
void take(Words& own, const Words& shelf) {
  if (own.empty()) own = shelf;
}
template <class T>
void take(std::vector<T>& own, const std::vector<T>& shelf) {
  if (own.empty()) own = shelf;
}

// What shows or replaces lines that the club has written otherwise is not taken with them.
void take_ladder(LibraryDrill& own, const LibraryDrill& shelf) {
  const bool same_shape = own.figure.empty();
  if (same_shape && own.easier.empty()) take(own.figure_easier, shelf.figure_easier);
  if (same_shape && own.harder.empty()) take(own.figure_harder, shelf.figure_harder);
  take(own.figure, shelf.figure);
  take(own.cues, shelf.cues);
  take(own.easier, shelf.easier);
  take(own.harder, shelf.harder);
}

void take_kit(LibraryDrill& own, const LibraryDrill& shelf) {
  const bool own_kit = !own.needs.empty();
  take(own.needs, shelf.needs);
  for (const Substitute& one : shelf.substitutes) {
    const auto same_kit = [&](const Words& kit) {
      return lower_ascii(kit.text) == lower_ascii(one.kit.text);
    };
    const auto stands_in = [&](const Substitute& other) { return same_kit(other.kit); };
    const auto is_needed = [&](const KitUse& use) { return same_kit(use.kit); };
    if (std::any_of(own.substitutes.begin(), own.substitutes.end(), stands_in)) continue;
    if (own_kit && std::none_of(own.needs.begin(), own.needs.end(), is_needed)) continue;
    own.substitutes.push_back(one);
  }
}

}  // namespace

bool may_join(const LibraryDrill& own, const LibraryDrill& shelf) {
  if (own.own_only || !own.name_known) return false;
  return own.kind.value == DrillKind::kUnknown || own.kind.value == shelf.kind.value;
}

LibraryDrill joined(const LibraryDrill& own, const LibraryDrill& shelf) {
  LibraryDrill out = own;
  out.shelf_source = shelf.source;
  if (out.kind.value == DrillKind::kUnknown) out.kind = shelf.kind;
  take_ladder(out, shelf);
  take_kit(out, shelf);
  take(out.plain, shelf.plain);
  if (!out.loads_none && out.loads.empty()) {
    out.loads = shelf.loads;
    out.loads_none = shelf.loads_none;
  }
  take(out.trains, shelf.trains);
  const EachRepetition& each = out.each;
  if (!each.hands && !each.landings && !each.inverted) out.each = shelf.each;
  take(out.effort, shelf.effort);
  take(out.longest, shelf.longest);
  take(out.stretches, shelf.stretches);
  take(out.at, shelf.at);
  take(out.spotter, shelf.spotter);
  take(out.coach, shelf.coach);
  take(out.home, shelf.home);
  take(out.one_sided, shelf.one_sided);
  take(out.curve, shelf.curve);
  take(out.level, shelf.level);
  take(out.pace, shelf.pace);
  take(out.changeover, shelf.changeover);
  take(out.mets, shelf.mets);
  take(out.notes, shelf.notes);
  take(out.record, shelf.record);
  out.safety.insert(out.safety.begin(), shelf.safety.begin(), shelf.safety.end());
  return out;
}

}  // namespace chalkleaf::plan
