// The rules of the trade, as checks with stable names. Pure: model in, diagnostics out.
// Tested by tests/reason/checks_test.cpp and the cases in tests/cases.
#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// What there is to know about a check: its name, how serious it is, and why it exists.
struct CheckInfo {
  std::string_view name;
  Severity severity;
  std::string_view purpose;       ///< one sentence: what it finds, and why that matters
  std::string_view source = {};   ///< what it rests on: a published source, or common practice
  std::string_view cure = {};     ///< what to change
  std::string_view example = {};  ///< some lines of a plan or club file that provoke it
  bool adjustable = true;         ///< a club may change its severity; not of what cannot be read
};
/// Every check of the program, whichever room finds it, in the order of the manual.
const std::vector<CheckInfo>& all_checks();

/// Runs every check on a session whose parts are linked.
void check(const plan::Session& session, const Timetable& timetable, Diagnostics& diagnostics);

}  // namespace chalkleaf::reason
