#include "base/date.h"

#include <fmt/format.h>

#include <chrono>

namespace chalkleaf {
namespace {

namespace ch = std::chrono;

ch::year_month_day to_chrono(Date date) {
  return ch::year(date.year) / ch::month(static_cast<unsigned>(date.month)) /
         ch::day(static_cast<unsigned>(date.day));
}

}  // namespace

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto number = [&](std::size_t from, std::size_t count) {
    int value = 0;
    for (std::size_t i = from; i < from + count; ++i) {
      if (text[i] < '0' || text[i] > '9') return -1;
      value = value * 10 + (text[i] - '0');
    }
    return value;
  };
  const Date date{number(0, 4), number(5, 2), number(8, 2)};
  if (date.year < 1 || date.month < 1 || date.day < 1 || !to_chrono(date).ok()) return std::nullopt;
  return date;
}

std::string iso_text(Date date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

Weekday weekday(Date date) {
  const unsigned iso = ch::weekday(ch::sys_days(to_chrono(date))).iso_encoding();
  return static_cast<Weekday>(iso - 1);
}

std::int64_t days_since_epoch(Date date) {
  return ch::sys_days(to_chrono(date)).time_since_epoch().count();
}

Date date_from_days(std::int64_t days) {
  const ch::year_month_day ymd{ch::sys_days(ch::days(days))};
  return {static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
          static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

}  // namespace chalkleaf
