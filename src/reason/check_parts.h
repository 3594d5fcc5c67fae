// The checks by subject, for checks.cpp alone. Each looks at one session and adds what it finds.
#pragma once

#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// `missing-warm-up`, `missing-cool-down`, `warm-up-not-first`, `cool-down-not-last`.
void check_order(const plan::Session& session, Diagnostics& diagnostics);
/// `over-slot`
void check_over_slot(const plan::Session& session, const Timetable& timetable,
                     Diagnostics& diagnostics);
/// `under-slot`
void check_under_slot(const plan::Session& session, const Timetable& timetable,
                      Diagnostics& diagnostics);
/// `over-budget`
void check_budgets(const Timetable& timetable, Diagnostics& diagnostics);
/// `no-dose`, `bad-value` of an interval, `substitute-without-easier`.
void check_drills(const plan::Session& session, Diagnostics& diagnostics);
/// `no-adult-note`, `no-space-note`
void check_home_notes(const plan::Session& session, Diagnostics& diagnostics);

/// ‘text’
inline std::string quoted(std::string_view text) { return "‘" + std::string(text) + "’"; }

}  // namespace chalkleaf::reason
