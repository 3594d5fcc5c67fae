// The checks by subject, for checks.cpp alone. Each looks at one session and adds what it finds.
#pragma once

#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "plan/library.h"
#include "plan/model.h"
#include "reason/guard.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// What is judged, and what it is judged by. Everything outlives the checks.
struct Subject {
  const plan::Session& session;
  const Timetable& timetable;
  const plan::Club& club;
  const plan::DrillBook& book;
  const Guard* guard = nullptr;  ///< null: no words for the plan's language

  bool at_home() const { return session.place.value == plan::Place::kHome; }
};

/// `missing-warm-up`, `missing-cool-down`, `warm-up-not-first`, `cool-down-not-last`.
void check_order(const plan::Session& session, Diagnostics& diagnostics);
/// `over-slot`
void check_over_slot(const plan::Session& session, const Timetable& timetable,
                     Diagnostics& diagnostics);
/// `under-slot`
void check_under_slot(const Subject& subject, Diagnostics& diagnostics);
/// `over-budget`
void check_budgets(const Timetable& timetable, Diagnostics& diagnostics);
/// `part-cannot-fit`, `part-tight`, `long-queue`; nothing without a hall book.
void check_hall(const Subject& subject, Diagnostics& diagnostics);
/// How much of its time a part fills: where they take turns at least what that takes in the hall.
Duration planned_length(const Subject& subject, const PartTime& part);
/// `under-budget`
void check_unused_budgets(const Subject& subject, Diagnostics& diagnostics);
/// `no-dose`, `bad-value` of an interval, `substitute-without-easier`.
void check_drills(const Subject& subject, Diagnostics& diagnostics);
/// `no-adult-note`, `no-space-note`
void check_home_notes(const Subject& subject, Diagnostics& diagnostics);

/// `unknown-drill`
void check_known(const Subject& subject, Diagnostics& diagnostics);
/// `choices-unordered`
void check_choice_order(const Subject& subject, Diagnostics& diagnostics);
/// `duplicate-drill`, of lines in one part
void check_repeated_lines(const Subject& subject, Diagnostics& diagnostics);
/// `level-above-group`, of harder rungs too
void check_levels(const Subject& subject, Diagnostics& diagnostics);
/// `spotter-at-home`
void check_spotters(const Subject& subject, Diagnostics& diagnostics);

/// `unknown-station`
void check_stations(const Subject& subject, Diagnostics& diagnostics);
/// `unknown-kit`
void check_kit_listed(const Subject& subject, Diagnostics& diagnostics);
/// `not-enough-kit`
void check_kit_enough(const Subject& subject, Diagnostics& diagnostics);
/// `no-substitute-at-home`
void check_substitutes(const Subject& subject, Diagnostics& diagnostics);

/// `stretch-before-raise`
void check_raise_first(const Subject& subject, Diagnostics& diagnostics);
/// `stretch-too-long`
void check_stretch_times(const Subject& subject, Diagnostics& diagnostics);
/// `one-side-only`
void check_sides(const Subject& subject, Diagnostics& diagnostics);
/// `power-before-raise`
void check_power_first(const Subject& subject, Diagnostics& diagnostics);
/// `skill-when-tired`
void check_tired_skills(const Subject& subject, Diagnostics& diagnostics);
/// `hold-too-long`
void check_holds(const Subject& subject, Diagnostics& diagnostics);
/// `too-much-load`
void check_loads(const Subject& subject, Diagnostics& diagnostics);
/// `unpaired-shape`
void check_curves(const Subject& subject, Diagnostics& diagnostics);

/// `too-few-adults`, `no-adults-stated`
void check_adults(const Subject& subject, Diagnostics& diagnostics);
/// `no-water-break`
void check_water(const Subject& subject, Diagnostics& diagnostics);
/// `picture-without-text`
void check_pictures(const Subject& subject, Diagnostics& diagnostics);
/// `coach-words-at-home`
void check_coach_words(const Subject& subject, Diagnostics& diagnostics);
/// `hard-words`
void check_hard_words(const Subject& subject, Diagnostics& diagnostics);

/// ‘text’, of a very long one its begin.
inline std::string quoted(std::string_view text) {
  constexpr std::size_t kMostShown = 120;  // bytes: a name that is read at all is shorter
  if (text.size() <= kMostShown) return "‘" + std::string(text) + "’";
  std::size_t end = kMostShown;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return "‘" + std::string(text.substr(0, end)) + "…’";
}

}  // namespace chalkleaf::reason
