// See the header.
#include "cli/loads_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "reason/load_limits.h"
#include "reason/mety.h"

namespace chalkleaf::cli {
namespace {

using reason::GroupWeek;
using reason::Load;
using reason::Period;

constexpr std::size_t kMostNamed = 3;    // of the lines that add most
constexpr std::size_t kWidestName = 40;  // columns

struct LoadRow {
  std::string what, sum, limit, most;
};

/// Something that adds to a sum.
struct Adds {
  std::string name;
  std::int64_t amount = 0;
};

std::string short_name(std::string_view text) {
  std::string out = printable(replace_all(text, "\n", " "));
  if (display_width(out) <= kWidestName) return out;
  std::size_t end = 0;
  while (display_width(std::string_view(out).substr(0, end)) < kWidestName - 1) {
    end += decode_utf8(out, end).size;
  }
  return out.substr(0, end) + "…";
}

// `Bunny hops 30, Cartwheel 12`
std::string most_text(Load load, std::vector<Adds> adds) {
  std::erase_if(adds, [](const Adds& one) { return one.amount <= 0; });
  std::stable_sort(adds.begin(), adds.end(),
                   [](const Adds& a, const Adds& b) { return a.amount > b.amount; });
  std::string out;
  for (std::size_t i = 0; i < std::min(adds.size(), kMostNamed); ++i) {
    out += (i == 0 ? "" : ", ") + short_name(adds[i].name) + " " +
           reason::load_amount(load, adds[i].amount);
  }
  if (adds.size() > kMostNamed) out += fmt::format(", {} more", adds.size() - kMostNamed);
  return out;
}

std::string padded_to(const std::string& text, std::size_t width) {
  const std::size_t taken = display_width(text);
  return text + std::string(taken < width ? width - taken : 0, ' ');
}

template <class AddsOf>
std::string table_of(const reason::LoadSums& sums, Period period,
                     const std::optional<plan::Group>& group, AddsOf adds_of) {
  std::vector<LoadRow> rows{{"", "sum", "a lot", "most of it"}};
  for (const Load load : reason::all_loads()) {
    const std::int64_t amount = sums.of(load);
    if (amount == 0) continue;
    LoadRow row{std::string(reason::load_title(load)), reason::load_amount(load, amount), "–",
                most_text(load, adds_of(load))};
    if (const auto limit = reason::load_limit(load, group)) {
      const std::int64_t most = limit->of(period);
      row.limit = fmt::format("{}{}", reason::load_amount(load, most), amount > most ? " !" : "");
    }
    rows.push_back(std::move(row));
  }
  if (rows.size() == 1) return "  nothing that is added up\n";
  const auto widest = [&](std::string LoadRow::*column) {
    std::size_t out = 0;
    for (const LoadRow& row : rows) out = std::max(out, display_width(row.*column));
    return out;
  };
  const std::size_t what = widest(&LoadRow::what);
  const std::size_t sum = widest(&LoadRow::sum);
  const std::size_t limit = widest(&LoadRow::limit);
  std::string out;
  for (const LoadRow& row : rows) {
    out += "  " + padded_to(row.what, what) + "  " + padded_to(row.sum, sum) + "  " +
           padded_to(row.limit, limit) + "  " + row.most + "\n";
  }
  return out;
}

std::string plan_table(const club::LoadedPlan& plan) {
  const plan::Session& session = plan.plan.session;
  std::string out = fmt::format("{}  ({})\n", short_name(session.title.text), printable(plan.path));
  out += table_of(plan.loads.sum, Period::kSession, session.group, [&](Load load) {
    std::vector<Adds> adds;
    for (const reason::LineLoads& line : plan.loads.lines)
      adds.push_back({line.drill->name.text, line.sums.of(load)});
    return adds;
  });
  // WHO 2020 (Chaput et al. 2020, Int J Behav Nutr Phys Act 17:141), ages 5 to 17.
  if (const auto activity = reason::activity_of(session, plan.plan.timetable)) {
    out += fmt::format(
        "  moderate activity or more: {} (WHO 2020: 60 min a day), of {} with a published value\n",
        exact_text(activity->moderate), exact_text(activity->counted));
  }
  if (plan.loads.uncounted.empty()) return out;
  std::string names;
  for (const plan::Drill* drill : plan.loads.uncounted)
    names += (names.empty() ? "" : ", ") + short_name(drill->name.text);
  return out + "  not counted: " + names + "\n";
}

std::string week_table(const GroupWeek& week) {
  std::string out = fmt::format(
      "{}, week from {}: {} in the gym ({})", printable(week.group), iso_text(week.first),
      counted(std::int64_t(week.gym_days.size()), "day", "days"), exact_text(week.gym_hours));
  if (week.home_hours > Duration()) {
    out += fmt::format(", {} of training with what is done at home ({})",
                       counted(std::int64_t(week.days.size()), "day", "days"),
                       exact_text(week.home_hours));
  }
  out += "\n";
  return out + table_of(week.sum, Period::kWeek, week.entries.front().plan.group, [&](Load load) {
           std::vector<Adds> adds;
           for (const reason::WeekEntry& entry : week.entries) {
             const auto days = static_cast<std::int64_t>(entry.days.size());
             adds.push_back({entry.plan.title.text, entry.plan.sum.of(load) * days});
           }
           return adds;
         });
}

}  // namespace

std::string loads_table(const club::LoadsRun& run) {
  std::string out;
  for (const auto& plan : run.plans) out += (out.empty() ? "" : "\n") + plan_table(*plan);
  for (const GroupWeek& week : run.weeks) out += (out.empty() ? "" : "\n") + week_table(week);
  return out;
}

}  // namespace chalkleaf::cli
