// Checks of one drill at a time: its dose, its interval, its substitutes.
// Tested by tests/reason/checks_test.cpp.
#include <fmt/format.h>

#include "base/text.h"
#include "plan/mended_line.h"
#include "reason/drill_lines.h"
#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

using plan::Dose;
using plan::Drill;
using plan::Part;

// How to write the line instead. Never the written line with a dose put behind it when the line has
// a number already: that would read as two doses.
std::string dose_hint(const Part& part, const std::string& name) {
  const std::string budget =
      fmt::format("give {} a time of its own under ‘timings: parts:’", quoted(part.title.text));
  plan::Words words{name, {}};
  if (const auto mended = plan::mended_drill_line(words)) {
    return fmt::format("write the drill, a colon and how much: `{}`; if the number is no dose, {}",
                       *mended, budget);
  }
  const bool has_number = name.find_first_of("0123456789") != std::string::npos;
  if (has_number) {
    return fmt::format("write how much after a colon, as in ‘Dish hold: 2 x 10’, or {}", budget);
  }
  return fmt::format("write how much after a colon, as in ‘{}: 2 x 10’, or {}", name, budget);
}

// `- easier lie down` beside the drill it was written for.
bool is_meant_below(std::string_view name) {
  for (const std::string_view key : {"cue ", "easier ", "harder ", "uses "}) {
    if (starts_with_ignoring_case(name, key)) return true;
  }
  return false;
}

void check_circuit(const Drill& circuit, Diagnostics& diagnostics) {
  if (circuit.stations.empty()) {
    diagnostics.warning("no-dose", circuit.name.span,
                        fmt::format("the circuit {} has no drills", quoted(circuit.name.text)),
                        "list its drills below it, each indented by two spaces");
    return;
  }
  for (const Drill& station : circuit.stations) {
    if (station.dose || station.dose_unreadable || circuit.circuit->work) continue;
    diagnostics.warning(
        "no-dose", station.name.span,
        fmt::format("{} has no dose, and its circuit no time for each station",
                    quoted(station.name.text)),
        fmt::format("write the work time behind {}, as in ‘3 rounds, 30 s work, 15 s "
                    "rest’, or how much behind this drill",
                    quoted(circuit.name.text)));
  }
}

// Drills without a dose are one message, with its places.
void check_dose(const Part& part, const Drill& drill, Gathered& gathered,
                Diagnostics& diagnostics) {
  if (drill.circuit) return check_circuit(drill, diagnostics);
  if (drill.dose || drill.dose_unreadable || part.budget) return;
  const std::string& name = drill.name.text;
  if (is_meant_below(name)) {
    const std::size_t space = name.find(' ');
    diagnostics.warning("no-dose", drill.name.span, quoted(name) + " has no dose",
                        fmt::format("if it belongs to the drill above, indent it by two spaces and "
                                    "put a colon after ‘{0}’: `- {0}: {1}`",
                                    name.substr(0, space), name.substr(space + 1)));
    return;
  }
  // A number in the name has a cure of its own.
  const bool own_cure = name.find_first_of("0123456789") != std::string::npos;
  gathered.add(own_cure ? name : "", drill.name.span, quoted(name) + " has none, either", [&] {
    return Diagnostic{
        Severity::kWarning,   "no-dose", drill.name.span, quoted(name) + " has no dose", {},
        dose_hint(part, name)};
  });
}

// `every T` counts from start to start, so a set has to fit in it, and so have all waves.
void check_interval(const Dose& dose, Duration set, const Waves& turns, const plan::Words& station,
                    Diagnostics& diagnostics) {
  if (!dose.every) return;
  const bool one_fits = *dose.every >= set;
  const Duration needed = one_fits && dose.sets > 1 ? times(set, turns.count) : set;
  if (*dose.every >= needed) return;
  Diagnostic found{
      Severity::kError, kBadValue, dose.span,
      fmt::format("a set is to start every {}, but {} {}", exact_text(*dose.every),
                  one_fits ? waves_text(turns) + " take" : "one set takes", exact_text(needed))};
  if (one_fits && station.span) found.labels.push_back({station.span, "done in waves here"});
  found.hint = fmt::format("write ‘every {}’ or more, or make the set shorter", exact_text(needed));
  diagnostics.add(std::move(found));
}

void check_substitute(const plan::Substitute& substitute, Diagnostics& diagnostics) {
  if (!substitute.easier.empty()) return;
  const Span span = substitute.name.span ? substitute.name.span : substitute.span;
  diagnostics.warning("substitute-without-easier", span,
                      fmt::format("{} stands in for who has no {}, but has no easier option",
                                  quoted(substitute.name.text), substitute.kit.text),
                      "add a line such as ‘- easier: one foot on the floor’ below it");
}

}  // namespace

void check_drills(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Timings& timings = subject.session.timings;
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const Drill& drill = *line.drill;
    if (line.circuit == nullptr) check_dose(*line.part, drill, gathered, diagnostics);
    const Waves turns =
        line.circuit == nullptr ? waves(subject.session, subject.club, drill) : Waves{};
    if (drill.dose) {
      check_interval(*drill.dose, set_time(*drill.dose, timings, library_pace(drill)), turns,
                     drill.at, diagnostics);
    }
    for (const plan::Substitute& substitute : drill.substitutes) {
      check_substitute(substitute, diagnostics);
      if (!substitute.dose) continue;
      check_interval(*substitute.dose, set_time(*substitute.dose, timings), {}, {}, diagnostics);
    }
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
