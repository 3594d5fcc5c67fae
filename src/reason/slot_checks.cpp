// Does the session fit its slot, and each part its own time?
//
// The hint names the parts that could give or take the minutes. Warm-up and cool-down are not
// among them while there are others: they are the first to be cut on a busy day and the last that
// should be. Tested by tests/reason/slot_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "reason/check_parts.h"

namespace chalkleaf::reason {
namespace {

constexpr std::size_t kMostNamedParts =
    3;  // more parts than this in a hint are a list nobody reads
// Per cent of the slot that a hall full of children uses up (common practice, no source).
constexpr std::int64_t kUnusedShare = 10;

using Parts = std::vector<const PartTime*>;

Parts parts_to_change(const Timetable& timetable) {
  Parts main;
  Parts all;
  for (const PartTime& part : timetable.parts) {
    if (part.length <= Duration() || part.part->station_of) continue;
    all.push_back(&part);
    if (part.part->role == plan::PartRole::kMain) main.push_back(&part);
  }
  return main.empty() ? all : main;
}

std::string names(const Parts& parts, std::string_view last) {
  std::vector<std::string> out;
  for (const PartTime* part : parts) {
    out.push_back(fmt::format("{} ({})", quoted(part->part->title.text), exact_text(part->length)));
  }
  return join_list(out, last);
}

std::vector<Label> labels(const Parts& parts) {
  std::vector<Label> out;
  for (const PartTime* part : parts) {
    out.push_back({part->part->title.span, "takes " + exact_text(part->length)});
  }
  return out;
}

// Less than half a minute over is within what anybody can tell of an hour: it is said, and no more.
Severity weight_of(Duration over) {
  return over < Duration::seconds(30) ? Severity::kNote : Severity::kWarning;
}

void keep_few(Parts& parts) {
  if (parts.size() > kMostNamedParts) parts.resize(kMostNamedParts);
}

}  // namespace

void check_over_slot(const plan::Session& session, const Timetable& timetable,
                     Diagnostics& diagnostics) {
  if (!timetable.spare || *timetable.spare >= Duration()) return;
  const Duration over = -*timetable.spare;
  Parts givers = parts_to_change(timetable);
  std::stable_sort(givers.begin(), givers.end(),
                   [](const PartTime* a, const PartTime* b) { return a->length > b->length; });
  // One part is enough where it is longer than what is over; otherwise it takes several.
  Parts enough;
  std::copy_if(givers.begin(), givers.end(), std::back_inserter(enough),
               [&](const PartTime* part) { return part->length > over; });
  const std::string_view last = enough.empty() ? "and" : "or";
  if (!enough.empty()) givers = enough;
  keep_few(givers);
  diagnostics.add(
      {weight_of(over), "over-slot", session.slot->span,
       fmt::format("the session takes {}, {} over its slot of {}", exact_text(timetable.total),
                   exact_text(over), exact_text(session.slot->value)),
       labels(givers),
       fmt::format("take {} out of {}, or make the slot longer", exact_text(over),
                   names(givers, last))});
}

void check_under_slot(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Session& session = subject.session;
  const Timetable& timetable = subject.timetable;
  if (!timetable.spare) return;
  Duration spare = *timetable.spare;
  for (const PartTime& part : timetable.parts) {
    if (part.part->station_of) continue;
    const Duration filled = planned_length(subject, part);
    // What does not fit a written time waits for time, too.
    spare =
        spare + part.length - (part.part->budget ? std::max(part.length, part.planned) : filled);
  }
  const auto& limit = subject.club.limits.unused_share;
  const std::int64_t share = limit ? limit->value : kUnusedShare;
  if (spare * 100 <= session.slot->value * share) return;
  Parts takers = parts_to_change(timetable);
  std::stable_sort(takers.begin(), takers.end(),
                   [](const PartTime* a, const PartTime* b) { return a->length < b->length; });
  keep_few(takers);
  const std::string where = takers.empty() ? "" : " to " + names(takers, "or");
  diagnostics.add(
      {Severity::kWarning, "under-slot", session.slot->span,
       fmt::format("the session takes {}, {} less than its slot of {}",
                   exact_text(session.slot->value - spare), exact_text(spare),
                   exact_text(session.slot->value)),
       labels(takers),
       fmt::format("add up to {}{}, or make the slot shorter", exact_text(spare), where)});
}

namespace {

void report_over(const PartTime& part, Diagnostics& diagnostics) {
  const Duration budget = part.part->budget->value;
  const Duration over = part.planned - budget;
  diagnostics.add(
      {weight_of(over),
       "over-budget",
       part.part->budget->span,
       fmt::format("the drills of {} take {} with their change-overs, {} over the {} it has",
                   quoted(part.part->title.text), exact_text(part.planned), exact_text(over),
                   exact_text(budget)),
       {{part.part->title.span, "takes " + exact_text(part.planned)}},
       fmt::format("take {} out of it, or give it {}", exact_text(over),
                   exact_text(part.planned))});
}

// `filled`: of its time.
void report_under(const PartTime& part, Duration filled, Diagnostics& diagnostics) {
  const Duration budget = part.part->budget->value;
  diagnostics.add(
      {Severity::kWarning,
       "under-budget",
       part.part->budget->span,
       fmt::format("the drills of {} take {} with their change-overs, {} less than the {} it has",
                   quoted(part.part->title.text), exact_text(filled), exact_text(budget - filled),
                   exact_text(budget)),
       {{part.part->title.span, "takes " + exact_text(filled)}},
       fmt::format("add {}, list a drill without a dose to take it, or give the part {}",
                   exact_text(budget - filled), exact_text(filled))});
}

}  // namespace

void check_budgets(const Timetable& timetable, Diagnostics& diagnostics) {
  for (const PartTime& part : timetable.parts) {
    if (part.part->budget && part.planned > part.part->budget->value)
      report_over(part, diagnostics);
  }
}

// A drill without a dose takes what is left, and a part without drills all of it.
void check_unused_budgets(const Subject& subject, Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.unused_share;
  const std::int64_t share = limit ? limit->value : kUnusedShare;
  for (const PartTime& part : subject.timetable.parts) {
    if (!part.part->budget || part.part->station_of) continue;  // a turn is as long as it is
    const Duration budget = part.part->budget->value;
    const Duration filled = planned_length(subject, part);
    if ((budget - filled) * 100 > budget * share) report_under(part, filled, diagnostics);
  }
}

}  // namespace chalkleaf::reason
