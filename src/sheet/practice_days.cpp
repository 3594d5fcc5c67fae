#include "sheet/practice_days.h"

namespace chalkleaf::sheet {

std::vector<Occasion> numbered(std::string_view name, int count, const Labels& labels,
                               std::string_view short_name) {
  std::vector<Occasion> out;
  for (int i = 1; i <= count; ++i) {
    const std::string n = std::to_string(i);
    out.push_back({labels.say(name, {{"n", n}}),
                   short_name.empty() ? n : labels.say(short_name, {{"n", n}})});
  }
  return out;
}

std::vector<Occasion> practice_days(const plan::Session& session, const Labels& labels) {
  if (session.repeat.empty()) return numbered("day", 3, labels, "day");
  std::vector<Occasion> out;
  for (const auto& day : session.repeat)
    out.push_back({labels.weekday(day.value), labels.short_weekday(day.value)});
  return out;
}

std::vector<Occasion> practice_weeks(int weeks, const Labels& labels) {
  return numbered("week", weeks, labels, "short-week");
}

std::int64_t sets_to_tick(const plan::Drill& drill) {
  constexpr std::int64_t kMost = 20;
  std::int64_t sets = 1;
  if (drill.circuit) {
    sets = drill.circuit->rounds;
  } else if (drill.dose) {
    sets = drill.dose->sets;
  }
  return sets >= 1 && sets <= kMost ? sets : 1;
}

}  // namespace chalkleaf::sheet
