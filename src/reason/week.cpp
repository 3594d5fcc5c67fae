// See the header.
#include "reason/week.h"

#include <algorithm>

namespace chalkleaf::reason {

std::vector<Date> days_in_week(const plan::Session& session, Date first) {
  constexpr std::int64_t kDays = 7;
  const std::int64_t begin = days_since_epoch(first);
  const auto repeats_on = [&](Date day) {
    return std::any_of(session.repeat.begin(), session.repeat.end(),
                       [&](const auto& each) { return each.value == weekday(day); });
  };
  std::vector<Date> out;
  for (std::int64_t number = begin; number < begin + kDays; ++number) {
    const Date day = date_from_days(number);
    bool is_on = repeats_on(day);
    if (session.date) {
      const std::int64_t since = number - days_since_epoch(session.date->value);
      is_on = is_on && since >= 0 && since < kDays;
      const bool by_repeat = session.place.value == plan::Place::kHome && !session.repeat.empty();
      is_on = is_on || (since == 0 && !by_repeat);
    }
    if (is_on) out.push_back(day);
  }
  return out;
}

std::optional<Date> newest_week(const std::vector<const plan::Session*>& sessions) {
  std::optional<Date> newest;
  bool newest_in_gym = false;
  for (const plan::Session* session : sessions) {
    if (!session->date) continue;
    const bool gym = session->place.value == plan::Place::kGym;
    const Date date = session->date->value;
    if (newest && (gym != newest_in_gym ? newest_in_gym : date <= *newest)) continue;
    newest = date;
    newest_in_gym = gym;
  }
  if (!newest) return std::nullopt;
  return date_from_days(days_since_epoch(*newest) - static_cast<std::int64_t>(weekday(*newest)));
}

}  // namespace chalkleaf::reason
