// The rules of the trade, as checks with stable names. Pure: model in, diagnostics out.
// Tested by tests/reason/checks_test.cpp and the cases in tests/cases.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/library.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// What there is to know about a check; `explain NAME` prints it. Sentences with their full stops.
class Guard;

/// What an error of a check keeps from being printed.
enum class Stops {
  kEverything,
  /// The families' sheet; the coach's card is printed with the finding on top of its safety box.
  kHomeSheet,
};
struct CheckInfo {
  std::string_view name;
  Severity severity;
  std::string_view what;     ///< what it finds
  std::string_view why;      ///< why that matters
  std::string_view source;   ///< what it rests on: a published source, or common practice
  std::string_view cure;     ///< what to change
  std::string_view example;  ///< lines of a plan, a drill or a club file that provoke it
  bool adjustable = true;    ///< a club may change its severity; not of what cannot be read
  Stops stops = Stops::kEverything;
  /// The card says it on top of its safety box: whoever runs the session has to make up for it.
  bool open_point = false;
};
/// Every check of the program, whichever room finds it, in the order of the manual.
const std::vector<CheckInfo>& all_checks();

/// The entry of a name, or null.
const CheckInfo* find_check(std::string_view name);

/// Judges the `checks:` of a club file: names that no check has, and checks that cannot be changed.
void check_choices(const plan::Club& club, Diagnostics& diagnostics);
/// What this finding keeps from being printed; nothing for a warning or a note.
std::optional<Stops> stopped_by(const Diagnostic& found);
/// The coach's card says it first: it can hurt a child, or the session lacks something that whoever
/// runs it has to make up for. Not of notes.
bool is_open_point(const Diagnostic& found);
/// Gives what was found the severity the club has chosen for it, and drops what it has switched
/// off. `check` does it itself; this is for what is found elsewhere, such as `duplicate-drill` of
/// the library.
void apply_choices(const plan::Club& club, Diagnostics& diagnostics);

/// What `check` has found a home plan not to say, for the home sheet to say it.
plan::Unsaid unsaid_at_home(const Diagnostics& found);
/// Makes one note of all findings of a check that the plan has switched off, with its reason, so
/// that whoever reviews it sees both. Not of errors, nor of what can hurt a child (`bad-value`).
void apply_switched_off(const plan::Session& session, Diagnostics& diagnostics);

/// What names of figures there are; `reason` does not see the figures themselves.
struct FigureNames {
  std::function<bool(std::string_view name)> has;
  std::function<std::optional<std::string>(std::string_view name)> closest;
};
/// Finds drills of a session that name a figure which is not there (`unknown-figure`).
void check_figures(const plan::Session& session, const FigureNames& figures,
                   Diagnostics& diagnostics);
/// The same of a drill of the library.
void check_figures(const plan::LibraryDrill& drill, const FigureNames& figures,
                   Diagnostics& diagnostics);

/// Runs every check on a session whose parts are linked and whose drills have inherited from the
/// club's library (plan::inherit). Then the severities the club has chosen are given to all
/// findings. Without a guard (no words for the plan's language) nothing is judged by its words.
void check(const plan::Session& session, const Timetable& timetable, const plan::Club& club,
           const plan::DrillBook& book, const Guard* guard, Diagnostics& diagnostics);

}  // namespace chalkleaf::reason
