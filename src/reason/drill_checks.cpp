// Checks of one drill at a time: its dose, its interval, its substitutes.
// Tested by tests/reason/checks_test.cpp.
#include <fmt/format.h>

#include "base/text.h"
#include "plan/mended_line.h"
#include "reason/check_parts.h"

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

void check_dose(const Part& part, const Drill& drill, Diagnostics& diagnostics) {
  if (drill.dose || drill.dose_unreadable || part.budget) return;
  const std::string& name = drill.name.text;
  if (is_meant_below(name)) {
    const std::size_t space = name.find(' ');
    diagnostics.error("no-dose", drill.name.span, quoted(name) + " has no dose",
                      fmt::format("if it belongs to the drill above, indent it by two spaces and "
                                  "put a colon after ‘{0}’: `- {0}: {1}`",
                                  name.substr(0, space), name.substr(space + 1)));
    return;
  }
  diagnostics.error("no-dose", drill.name.span, quoted(name) + " has no dose",
                    dose_hint(part, name));
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
