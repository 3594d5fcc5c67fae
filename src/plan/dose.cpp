// read_dose of plan/read.h: the grammar (dose/parser.h) with its problems reported.
// Tested by tests/plan/dose_test.cpp.
#include "plan/dose.h"

#include "dose/parser.h"
#include "plan/read.h"

namespace chalkleaf::plan {

std::optional<Dose> read_dose(const source::Text& text, Diagnostics& diagnostics) {
  auto dose = parse_dose(text);
  if (dose) return std::move(*dose);
  const DoseProblem& problem = dose.error();
  const bool unreadable = problem.kind == DoseProblem::Kind::kUnreadable;
  diagnostics.error(unreadable ? "unreadable-dose" : kBadValue,
                    text.span(problem.begin, problem.end), problem.message, problem.hint);
  return std::nullopt;
}

}  // namespace chalkleaf::plan
