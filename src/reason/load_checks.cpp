// Loads that add up to a lot, with the lines that add most and what to take out; and a group's
// week. Tested by tests/reason/load_checks_test.cpp and tests/reason/group_week_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/check_parts.h"
#include "reason/drill_lines.h"
#include "reason/group_week.h"
#include "reason/load_limits.h"

namespace chalkleaf::reason {
namespace {

constexpr std::size_t kMostShares = 3;

/// What one line of a plan, or one plan of a week, adds.
struct Share {
  std::string name;
  Span span;
  std::int64_t amount = 0;
};

// The largest first; those that add nothing are gone.
std::vector<Share> largest_of(std::vector<Share> shares) {
  std::erase_if(shares, [](const Share& one) { return one.amount <= 0; });
  std::stable_sort(shares.begin(), shares.end(),
                   [](const Share& a, const Share& b) { return a.amount > b.amount; });
  return shares;
}

// `take out ‘Drop jumps’ (150), or do less of it and of ‘Tuck jumps’ (60)`
std::string what_to_take_out(const std::vector<Share>& shares, Load load, std::int64_t over) {
  const Share& first = shares.front();
  const std::string amount = load_amount(load, first.amount);
  if (first.amount > over) {
    return fmt::format("do {} less of {} ({} now), or spread it over more days",
                       load_amount(load, over), quoted(first.name), amount);
  }
  if (shares.size() < 2) return fmt::format("do less of {} ({} now)", quoted(first.name), amount);
  return fmt::format("take out {} ({}), and do less of {} ({})", quoted(first.name), amount,
                     quoted(shares[1].name), load_amount(load, shares[1].amount));
}

Diagnostic too_much(Load load, std::int64_t sum, const LoadLimit& limit, Period period,
                    std::vector<Share> shares, std::string_view whose) {
  const std::int64_t most = limit.of(period);
  Diagnostic found{
      Severity::kWarning, "too-much-load", shares.front().span,
      fmt::format("{} {} of {}, and from {} on it is a lot for {}", load_text(load, sum),
                  period == Period::kSession ? "in the session" : "in a week", whose,
                  load_amount(load, most), limit_text(limit))};
  for (std::size_t i = 0; i < std::min(shares.size(), kMostShares); ++i) {
    if (shares[i].span)
      found.labels.push_back({shares[i].span, load_amount(load, shares[i].amount)});
  }
  found.hint = what_to_take_out(shares, load, sum - most);
  return found;
}

std::string whose_session(const plan::Session& session) {
  return session.group ? session.group->name.text : std::string("one gymnast");
}

}  // namespace

void check_loads(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Session& session = subject.session;
  const PlanLoads loads = loads_of(session, subject.timetable, subject.book);
  for (const Load load : all_loads()) {
    const auto limit = load_limit(load, session.group);
    const std::int64_t sum = loads.sum.of(load);
    if (!limit || sum <= limit->session) continue;
    std::vector<Share> shares;
    for (const LineLoads& line : loads.lines)
      shares.push_back({line.drill->name.text, line.drill->name.span, line.sums.of(load)});
    diagnostics.add(too_much(load, sum, *limit, Period::kSession, largest_of(std::move(shares)),
                             whose_session(session)));
  }
}

namespace {

// National Athletic Trainers' Association, statement of 2019 (value from memory), and Jayanthi et
// al. 2015, Am J Sports Med 43(4):794-801: no more hours of organised sport a week than years of
// age.
void check_hours(const GroupWeek& week, const plan::Group& group, Diagnostics& diagnostics) {
  if (!group.youngest) return;
  const Duration most = Duration::minutes(60 * std::int64_t{std::max(1, group.youngest->value)});
  if (week.gym_hours <= most) return;
  Diagnostic found{Severity::kWarning, "too-many-hours", week.entries.front().plan.group_name.span,
                   fmt::format("{} are {} in the gym in the week from {}, more hours than the "
                               "youngest has years ({})",
                               group.name.text, exact_text(week.gym_hours), iso_text(week.first),
                               group.youngest->value)};
  for (std::size_t i = 1; i < std::min(week.entries.size(), kMostShares * 2); ++i) {
    const Span at = week.entries[i].plan.group_name.span;
    if (at) found.labels.push_back({at, "in that week too"});
  }
  found.hint = fmt::format("take {} out of the week", exact_text(week.gym_hours - most));
  diagnostics.add(std::move(found));
}

constexpr std::size_t kDaysInWeek = 7;
// AMSSM public guidance: a day off a week at least; AAP: one or two.
constexpr std::size_t kLeastDaysOff = 1;
// National Athletic Trainers' Association, statement of 2019 (value from memory): two days off from
// organised training.
constexpr std::size_t kLeastDaysOutOfGym = 2;

void check_rest_days(const GroupWeek& week, Diagnostics& diagnostics) {
  const std::size_t off = kDaysInWeek - week.days.size();
  const std::size_t no_gym = kDaysInWeek - week.gym_days.size();
  if (off >= kLeastDaysOff && no_gym >= kLeastDaysOutOfGym) return;
  diagnostics.add(
      {Severity::kWarning,
       "too-few-rest-days",
       week.entries.back().plan.group_name.span,
       no_gym < kLeastDaysOutOfGym
           ? fmt::format("{} are in the gym on {} days of the week from {}", week.group,
                         week.gym_days.size(), iso_text(week.first))
           : fmt::format("{} have no day off in the week from {}", week.group,
                         iso_text(week.first)),
       {},
       no_gym < kLeastDaysOutOfGym
           ? "leave two days of the week free of the gym"
           : "leave one day without practice, or with a light one of a quarter of an hour"});
}

void check_week_loads(const GroupWeek& week, const plan::Group& group, Diagnostics& diagnostics) {
  for (const Load load : all_loads()) {
    const auto limit = load_limit(load, group);
    const std::int64_t sum = week.sum.of(load);
    if (!limit || sum <= limit->week) continue;
    std::vector<Share> shares;
    for (const WeekEntry& entry : week.entries) {
      const auto days = static_cast<std::int64_t>(entry.days.size());
      shares.push_back(
          {entry.plan.title.text, entry.plan.title.span, entry.plan.sum.of(load) * days});
    }
    diagnostics.add(too_much(load, sum, *limit, Period::kWeek, largest_of(std::move(shares)),
                             fmt::format("{} (from {})", group.name.text, iso_text(week.first))));
  }
}

}  // namespace

void check_week(const GroupWeek& week, Diagnostics& diagnostics) {
  if (week.entries.empty()) return;
  for (const WeekEntry& entry : week.entries) {
    for (const SourcePtr& source : entry.plan.sources) diagnostics.keep(source);
  }
  check_rest_days(week, diagnostics);
  const auto& group = week.entries.front().plan.group;
  if (!group) return;
  check_hours(week, *group, diagnostics);
  check_week_loads(week, *group, diagnostics);
}

}  // namespace chalkleaf::reason
