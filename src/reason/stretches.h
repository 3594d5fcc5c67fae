// Which drills are stretches held still, and for how long. Inside the room.
// Tested by tests/reason/body_checks_test.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "plan/library.h"
#include "reason/check_parts.h"

namespace chalkleaf::reason {

/// A stretch that a drill holds: the drill itself, or one of its moves.
struct HeldStretch {
  const plan::Drill* line = nullptr;
  const plan::LibraryDrill* known = nullptr;  ///< null: by its name alone
  plan::Words name;
  Duration once;  ///< one hold, on one side
  Duration all;   ///< all holds of one side
  Span span;      ///< in the plan
};
/// The held stretches of one line, in order. A drill that the library does not know is one only
/// where its name and its dose leave no doubt.
std::vector<HeldStretch> held_stretches(const plan::Drill& drill, const Subject& subject);

/// `Run two rounds of the hall, then:`
bool speaks_of_moving(std::string_view text);

/// What a line does to the pulse, as far as is known.
enum class Pulse { kUnknown, kRaises, kRests };
Pulse pulse_of(const plan::Drill& drill);

}  // namespace chalkleaf::reason
