// Checks of one drill at a time: its dose, its interval, its substitutes.
// Tested by tests/reason/checks_test.cpp.
#include <fmt/format.h>

#include "reason/check_parts.h"

namespace chalkleaf::reason {
namespace {

using plan::Dose;
using plan::Drill;
using plan::Part;

void check_dose(const Part& part, const Drill& drill, Diagnostics& diagnostics) {
  if (drill.dose || drill.dose_unreadable || part.budget) return;
  diagnostics.error("no-dose", drill.name.span, quoted(drill.name.text) + " has no dose",
                    fmt::format("write how much after a colon, as in ‘{}: 2 x 10’, or give {} a "
                                "time of its own under ‘timings: parts:’",
                                drill.name.text, quoted(part.title.text)));
}

// `every T` counts from start to start, so a set has to fit in it.
void check_interval(const Dose& dose, const plan::Timings& timings, Diagnostics& diagnostics) {
  if (!dose.every) return;
  const Duration set = set_time(dose, timings);
  if (*dose.every >= set) return;
  diagnostics.error(
      "bad-value", dose.span,
      fmt::format("a set is to start every {}, but one set takes {}", exact_text(*dose.every),
                  exact_text(set)),
      fmt::format("write ‘every {}’ or more, or make the set shorter", exact_text(set)));
}

void check_substitute(const plan::Substitute& substitute, Diagnostics& diagnostics) {
  if (!substitute.easier.empty()) return;
  const Span span = substitute.name.span ? substitute.name.span : substitute.span;
  diagnostics.error("substitute-without-easier", span,
                    fmt::format("{} stands in for who has no {}, but has no easier option",
                                quoted(substitute.name.text), substitute.kit.text),
                    "add a line such as ‘- easier: one foot on the floor’ below it");
}

}  // namespace

void check_drills(const plan::Session& session, Diagnostics& diagnostics) {
  for (const Part& part : session.parts) {
    for (const Drill* drill : plan::drills_of(part)) {
      check_dose(part, *drill, diagnostics);
      if (drill->dose) check_interval(*drill->dose, session.timings, diagnostics);
      for (const plan::Substitute& substitute : drill->substitutes) {
        check_substitute(substitute, diagnostics);
        if (substitute.dose) check_interval(*substitute.dose, session.timings, diagnostics);
      }
    }
  }
}

}  // namespace chalkleaf::reason
