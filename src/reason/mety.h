// How much energy an activity takes at an age, as published for children: METy, multiples of what a
// child at rest uses. Group estimates; no number for one child, and none is ever printed for a
// family.
//
// Butte et al. 2018, Med Sci Sports Exerc 50(2):246-256 (Youth Compendium of Physical Activities),
// smoothed column; seen in secondary copies. Tested by tests/reason/mety_test.cpp.
#pragma once

#include <optional>
#include <string_view>

#include "base/duration.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// By a code of the Youth Compendium (`60140X`), or one of the Adult Compendium of 2011 that has a
/// near relation there (`12025`). None below 6 and above 18, and for a code that is not listed.
std::optional<double> mety(std::string_view code, int age);

/// What a plan adds up to, of drills with a code alone.
struct Activity {
  double mety_minutes = 0;
  Duration counted;  ///< work of those drills
  Duration
      moderate;  ///< of it, at 3.0 METy and more (SBRN 2012), which WHO 2020 wants 60 min a day of
};
/// None where the group's ages are not known, or no drill has a code.
std::optional<Activity> activity_of(const plan::Session& session, const Timetable& timetable);

}  // namespace chalkleaf::reason
