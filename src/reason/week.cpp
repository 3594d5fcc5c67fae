// See the header.
#include "reason/week.h"

#include <algorithm>

namespace chalkleaf::reason {

WhenOn when_on(const plan::Session& session) {
  WhenOn out;
  out.place = session.place.value;
  if (session.date) out.date = session.date->value;
  for (const auto& each : session.repeat) out.repeat.push_back(each.value);
  return out;
}

std::vector<Date> days_in_week(const plan::Session& session, Date first) {
  return days_in_week(when_on(session), first);
}

std::vector<Date> days_in_week(const WhenOn& when, Date first) {
  constexpr std::int64_t kDays = 7;
  const std::int64_t begin = days_since_epoch(first);
  const auto repeats_on = [&](Date day) {
    return std::find(when.repeat.begin(), when.repeat.end(), weekday(day)) != when.repeat.end();
  };
  std::vector<Date> out;
  for (std::int64_t number = begin; number < begin + kDays; ++number) {
    const Date day = date_from_days(number);
    bool is_on = repeats_on(day);
    if (when.date) {
      const std::int64_t since = number - days_since_epoch(*when.date);
      is_on = is_on && since >= 0 && since < kDays;
      const bool by_repeat = when.place == plan::Place::kHome && !when.repeat.empty();
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
