// See the header.
#include "cli/loads_json.h"

#include <fmt/format.h>

#include <vector>

#include "base/json_text.h"
#include "reason/load_limits.h"
#include "reason/mety.h"

namespace chalkleaf::cli {
namespace {

using reason::Load;
using reason::LoadSums;
using reason::Period;

std::string number_text(Load load, std::int64_t amount) {
  if (!reason::is_time(load)) return std::to_string(amount);
  const double unit = load == Load::kEffort ? 60'000 : 1000;
  return fmt::format("{:g}", static_cast<double>(amount) / unit);
}

std::string sums_text(const LoadSums& sums) {
  std::vector<std::string> out;
  for (const Load load : reason::all_loads()) {
    out.push_back(
        fmt::format(R"("{}": {})", reason::load_key(load), number_text(load, sums.of(load))));
  }
  return fmt::format("{{{}}}", fmt::join(out, ", "));
}

std::string limits_text(Period period, const std::optional<plan::Group>& group) {
  std::vector<std::string> out;
  for (const Load load : reason::all_loads()) {
    const auto limit = reason::load_limit(load, group);
    out.push_back(fmt::format(R"("{}": {})", reason::load_key(load),
                              limit ? number_text(load, limit->of(period)) : "null"));
  }
  return fmt::format("{{{}}}", fmt::join(out, ", "));
}

std::string plan_text(const club::LoadedPlan& plan) {
  const plan::Session& session = plan.plan.session;
  std::vector<std::string> lines;
  for (const reason::LineLoads& line : plan.loads.lines) {
    if (line.sums.is_nothing()) continue;
    lines.push_back(fmt::format(R"({{"line": {}, "name": {}, "sums": {}}})",
                                plan.plan.line_of(line.drill->name.span),
                                json_string(line.drill->name.text), sums_text(line.sums)));
  }
  std::vector<std::string> uncounted;
  for (const plan::Drill* drill : plan.loads.uncounted)
    uncounted.push_back(json_string(drill->name.text));
  const auto activity = reason::activity_of(session, plan.plan.timetable);
  return fmt::format(
      R"({{"path": {}, "title": {}, "place": "{}", "group": {}, "date": {}, "sums": {}, )"
      R"("limits": {}, "mety_min": {}, "lines": [{}], "uncounted": [{}]}})",
      json_string(plan.path), json_string(session.title.text),
      session.place.value == plan::Place::kHome ? "home" : "gym",
      session.group_name.empty() ? "null" : json_string(session.group_name.text),
      session.date ? json_string(iso_text(session.date->value)) : "null", sums_text(plan.loads.sum),
      limits_text(Period::kSession, session.group),
      activity ? fmt::format("{:g}", activity->mety_minutes) : "null", fmt::join(lines, ", "),
      fmt::join(uncounted, ", "));
}

std::string week_text(const reason::GroupWeek& week) {
  std::vector<std::string> days;
  for (const Date day : week.days) days.push_back(json_string(iso_text(day)));
  std::vector<std::string> gym_days;
  for (const Date day : week.gym_days) gym_days.push_back(json_string(iso_text(day)));
  return fmt::format(
      R"({{"group": {}, "first": {}, "gym_days": [{}], "days": [{}], "gym_s": {:g}, "home_s": {:g}, )"
      R"("sums": {}, "limits": {}}})",
      json_string(week.group), json_string(iso_text(week.first)), fmt::join(gym_days, ", "),
      fmt::join(days, ", "), static_cast<double>(week.gym_hours.in_milliseconds()) / 1000,
      static_cast<double>(week.home_hours.in_milliseconds()) / 1000, sums_text(week.sum),
      limits_text(Period::kWeek, week.entries.front().plan.group));
}

}  // namespace

std::string loads_json(const club::LoadsRun& run) {
  std::vector<std::string> plans;
  for (const auto& plan : run.plans) plans.push_back(plan_text(*plan));
  std::vector<std::string> weeks;
  for (const reason::GroupWeek& week : run.weeks) weeks.push_back(week_text(week));
  return fmt::format(R"({{"schema": {}, "plans": [{}], "weeks": [{}]}})"
                     "\n",
                     kLoadsSchema, fmt::join(plans, ", "), fmt::join(weeks, ", "));
}

}  // namespace chalkleaf::cli
