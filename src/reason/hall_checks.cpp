// Whether a part can be done in the time it is given, and how long a child stands in a queue.
//
// The written time stays the clock: coaches are right with it four times in five (80 parts of
// drafts, 94 % within a quarter of a hand estimate), and what a hall takes is an estimate. So only
// what is far off is said, and only where it is known how many come.
// Tested by tests/reason/hall_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/check_parts.h"

namespace chalkleaf::reason {
namespace {

// Of the drafts' parts all that overran were above this, and none of the others (design notes of
// the project, 109 parts).
constexpr std::int64_t kCannotFit = 2;
// Common practice, no source: a child that works 40 s of eight minutes is bored, cold or in
// trouble.
constexpr std::int64_t kPoorShare = 12;
constexpr Duration kWorthSaying = Duration::minutes(5);

Duration whole_minutes(Duration time) { return Duration::minutes(time.rounded_minutes()); }

/// The line that takes longest in turns; null when nothing is done in turns.
const HallDrill* longest_queue(const HallPart& part) {
  const HallDrill* longest = nullptr;
  for (const HallDrill& drill : part.drills) {
    if (drill.lanes == 0) continue;
    if (longest == nullptr || drill.likely > longest->likely) longest = &drill;
  }
  return longest;
}

/// What is done in turns alone: the rest of a part gives way more easily than a queue does.
struct InTurns {
  Duration likely;
  Duration low;
};
InTurns in_turns_of(const HallPart& part) {
  InTurns out;
  for (const HallDrill& drill : part.drills) {
    if (drill.lanes == 0) continue;
    out.likely += drill.likely;
    out.low += drill.low;
  }
  return out;
}

// What would help, the nearest first.
std::string help_for(const HallDrill& queue) {
  return fmt::format(
      "take goes out of {}, open another lane beside the {}, give those who wait a side station, "
      "or give the part more time",
      quoted(queue.drill->name.text), queue.lanes == 1 ? "one" : std::to_string(queue.lanes));
}

void report_fit(const PartTime& part, Diagnostics& diagnostics) {
  const HallDrill* queue = longest_queue(*part.hall);
  if (queue == nullptr) return;
  const Duration budget = part.part->budget->value;
  const InTurns turns = in_turns_of(*part.hall);
  const bool cannot = turns.likely > budget * kCannotFit;
  if (!cannot && turns.low <= budget + budget / 2) return;
  const auto about = [](Duration time) { return "about " + exact_text(whole_minutes(time)); };
  diagnostics.add(
      {cannot ? Severity::kWarning : Severity::kNote,
       cannot ? "part-cannot-fit" : "part-tight",
       part.part->budget->span,
       fmt::format("the turns of {} take {} in the hall, and it has {}",
                   quoted(part.part->title.text), about(turns.likely), exact_text(budget)),
       {{queue->drill->name.span, about(queue->likely) + ": " + queue->why}},
       help_for(*queue)});
}

void report_queue(const PartTime& part, Diagnostics& diagnostics) {
  const HallPart& hall = *part.hall;
  const HallDrill* queue = longest_queue(hall);
  if (queue == nullptr || hall.likely < kWorthSaying) return;
  if (hall.working * kPoorShare >= hall.likely) return;
  diagnostics.add(
      {Severity::kNote,
       "long-queue",
       queue->drill->name.span,
       fmt::format("one child works about {} of the {} that {} takes, and waits {}",
                   exact_text(Duration::seconds(hall.working.rounded_seconds())),
                   exact_text(whole_minutes(hall.likely)), quoted(part.part->title.text),
                   exact_text(whole_minutes(hall.waiting))),
       {{part.part->title.span, queue->why}},
       fmt::format("open another lane, or write a side station below {} for those who "
                   "wait",
                   quoted(queue->drill->name.text))});
}

}  // namespace

Duration planned_length(const Subject& subject, const PartTime& part) {
  if (subject.at_home() || !subject.session.gymnast_count() || !part.hall) return part.planned;
  if (longest_queue(*part.hall) == nullptr) return part.planned;
  return std::max(part.planned, whole_minutes(part.hall->likely));
}

void check_hall(const Subject& subject, Diagnostics& diagnostics) {
  if (subject.at_home() || !subject.session.gymnast_count()) return;
  for (const PartTime& part : subject.timetable.parts) {
    if (!part.hall) continue;
    if (part.part->budget) report_fit(part, diagnostics);
    report_queue(part, diagnostics);
  }
}

}  // namespace chalkleaf::reason
