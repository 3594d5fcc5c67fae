// See the header.
#include "plan/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"
#include "dose/times.h"
#include "dose/tokens.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

tl::unexpected<ValueProblem> wrong(std::string message, std::string hint, std::string meant = {}) {
  return tl::unexpected(ValueProblem{std::move(message), std::move(hint), std::move(meant)});
}

constexpr std::array<std::string_view, 7> kWeekdays{"monday", "tuesday",  "wednesday", "thursday",
                                                    "friday", "saturday", "sunday"};
constexpr std::array<std::string_view, 12> kMonths{"january",   "february", "march",    "april",
                                                   "may",       "june",     "july",     "august",
                                                   "september", "october",  "november", "december"};

// The month of a name or its first three letters, from 1; 0 when it is none.
int month_of(std::string_view word) {
  for (std::size_t i = 0; i < kMonths.size(); ++i) {
    if (word.size() >= 3 && kMonths[i].starts_with(word)) return static_cast<int>(i) + 1;
  }
  return 0;
}

// `2 December 2026` and `December 2, 2026`, said as ISO 8601; empty for anything else.
std::string iso_of_words(std::string_view text) {
  int month = 0;
  int day = 0;
  int year = 0;
  for (const Token& token : tokens_of(text)) {
    if (token.is(TokenKind::kWord)) {
      if (const int found = month_of(token.word)) month = found;
    } else if (token.is(TokenKind::kNumber) && token.is_whole() && !token.too_large) {
      const auto value = static_cast<int>(token.numerator / token.denominator);
      (value > 31 ? year : day) = value;
    }
  }
  const std::string iso = fmt::format("{:04}-{:02}-{:02}", year, month, day);
  return parse_date(iso) ? iso : std::string();
}

/// A date in numbers: what it may mean, in ISO 8601; either may be empty.
struct NumberDate {
  std::string day_first;
  std::string month_first;
  int first = 0;  ///< the numbers as written
  int second = 0;
};

// `3/12/2026`, which may be the third of December or the twelfth of March; nothing when it is no
// such date.
std::optional<NumberDate> date_of_numbers(std::string_view text) {
  std::vector<int> numbers;
  for (const char c : text) {
    const bool digit = c >= '0' && c <= '9';
    if (!digit && c != '/' && c != '.' && c != '-' && c != ' ') return std::nullopt;
    if (digit) {
      if (numbers.empty()) numbers.push_back(-1);
      int& last = numbers.back();
      last = last < 0 ? c - '0' : std::min(last * 10 + (c - '0'), 99'999);
    } else if (!numbers.empty() && numbers.back() >= 0 && c != ' ') {
      numbers.push_back(-1);
    }
  }
  if (numbers.size() != 3 || numbers[2] < 0) return std::nullopt;
  const bool year_first = numbers[0] > 31;
  int year = year_first ? numbers[0] : numbers[2];
  if (year < 100) year += 2000;
  const auto iso = [&](int month, int day) {
    std::string out = fmt::format("{:04}-{:02}-{:02}", year, month, day);
    return parse_date(out) ? out : std::string();
  };
  if (year_first) return NumberDate{iso(numbers[1], numbers[2]), {}, 0, 0};
  return NumberDate{iso(numbers[1], numbers[0]), iso(numbers[0], numbers[1]), numbers[0],
                    numbers[1]};
}

// Where both orders are a day, the day is taken to stand first, as these sheets have it.
tl::unexpected<ValueProblem> wrong_day(std::string message, const NumberDate& date) {
  const std::string& only = date.day_first.empty() ? date.month_first : date.day_first;
  if (date.day_first.empty() || date.month_first.empty() || date.day_first == date.month_first) {
    return wrong(std::move(message), fmt::format("write it as year-month-day: `{}`", only), only);
  }
  const auto named = [](int day, int month) {
    std::string name(kMonths[static_cast<std::size_t>(month - 1)]);
    name[0] = static_cast<char>(name[0] - 'a' + 'A');
    return fmt::format("{} {}", day, name);
  };
  return wrong(
      std::move(message),
      fmt::format("write it as year-month-day: `{}` for {}, `{}` for {}", date.day_first,
                  named(date.first, date.second), date.month_first, named(date.second, date.first)),
      date.day_first);
}

// A number of one or two digits at the front of `text`, taken off it; nothing when there is none.
std::optional<int> take_number(std::string_view& text) {
  int value = 0;
  std::size_t n = 0;
  while (n < text.size() && n < 3 && text[n] >= '0' && text[n] <= '9') {
    value = value * 10 + (text[n++] - '0');
  }
  if (n == 0 || n > 2) return std::nullopt;
  text.remove_prefix(n);
  return value;
}

}  // namespace

Value<Duration> parse_duration(std::string_view text, Zero zero) {
  text = trim(text);
  const auto tokens = tokens_of(text);
  const std::string hint = "write it with its unit: `20 s`, `40 min`, `1 h` or `1:15 h`";
  if (tokens.size() == 1 && tokens[0].is(TokenKind::kNumber)) {
    return wrong(fmt::format("‘{}’ has no unit", text),
                 fmt::format("say what it is: `{0} s` or `{0} min`", text));
  }
  if (!tokens.empty() && tokens[0].is(TokenKind::kDash)) {
    return wrong(fmt::format("‘{}’ is less than nothing", text), "write a time above zero");
  }
  const auto time = read_time(tokens, 0, tokens.size());
  if (!time || time->next != tokens.size()) {
    return wrong(fmt::format("‘{}’ is not a length of time", text), hint);
  }
  if (time->bare_clock) {
    return wrong(fmt::format("‘{}’ could be hours or minutes", text),
                 fmt::format("say which: `{0} h` or `{0} min`", text));
  }
  if (time->too_large) {
    return wrong(fmt::format("‘{}’ is not a time to train for", text),
                 "write a time of at most 24 hours, in whole thousandths of a second");
  }
  if (time->value == Duration() && zero == Zero::kRefused) {
    return wrong(fmt::format("‘{}’ is no time at all", text), "write a time above zero");
  }
  return time->value;
}

Value<TimeOfDay> parse_time_of_day(std::string_view text) {
  text = trim(text);
  const auto bad = wrong(fmt::format("‘{}’ is not a time of day", text),
                         "write it as `17:00`, `17.00` or `5 pm`");
  std::string rest = lower_ascii(text);
  rest.erase(std::remove(rest.begin(), rest.end(), ' '), rest.end());
  std::string_view left = rest;
  const auto hours = take_number(left);
  if (!hours) return bad;
  std::optional<int> minutes;
  if (left.starts_with(':') || (left.starts_with('.') && left.size() >= 3)) {
    left.remove_prefix(1);
    const std::size_t before = left.size();
    minutes = take_number(left);
    if (!minutes || before - left.size() != 2) return bad;
  }
  int hour = *hours;
  if (left == "am" || left == "a.m." || left == "pm" || left == "p.m.") {
    if (hour < 1 || hour > 12) return bad;
    hour = hour % 12 + (left[0] == 'p' ? 12 : 0);
  } else if (!left.empty() || !minutes) {
    if (!left.empty()) return bad;
    // Gyms are open in the afternoon: a bare `5` is 17:00 there.
    const int meant = hour >= 1 && hour < 8 ? hour + 12 : hour;
    return wrong(fmt::format("‘{}’ is not a time of day", text),
                 hour > 12 ? fmt::format("write it with its minutes: `{}:00`", text)
                           : fmt::format("write `{0}:00`, or `{0} am` or `{0} pm`", text),
                 hour < 24 ? fmt::format("{:02}:00", meant) : std::string());
  }
  if (hour > 23 || minutes.value_or(0) > 59) return bad;
  return TimeOfDay{Duration::minutes(hour * 60 + minutes.value_or(0))};
}

Value<Date> parse_day(std::string_view text) {
  text = trim(text);
  if (const auto date = parse_date(text)) return *date;
  const bool iso_form = text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                        text.find_first_not_of("0123456789-") == std::string_view::npos;
  if (iso_form) {
    return wrong(fmt::format("there is no day ‘{}’", text), "check the month and the day");
  }
  const auto bad = fmt::format("‘{}’ is not a date that can be read", text);
  if (const auto date = date_of_numbers(text);
      date && !(date->day_first.empty() && date->month_first.empty()))
    return wrong_day(bad, *date);
  const std::string iso = iso_of_words(text);
  return wrong(
      bad, fmt::format("write it as year-month-day: `{}`", iso.empty() ? "2026-12-02" : iso), iso);
}

Value<std::vector<Weekday>> parse_weekdays(std::string_view text) {
  text = trim(text);
  std::string word = lower_ascii(text);
  while (word.ends_with('.')) word.pop_back();
  const auto from_to = [](int first, int last) {
    std::vector<Weekday> out;
    for (int i = first; i <= last; ++i) out.push_back(static_cast<Weekday>(i));
    return out;
  };
  if (word == "daily" || word == "every day" || word == "everyday") return from_to(0, 6);
  if (word == "weekdays") return from_to(0, 4);
  if (word == "weekends" || word == "weekend") return from_to(5, 6);
  if (word.size() > 6 && word.ends_with("days")) word.pop_back();
  for (std::size_t i = 0; i < kWeekdays.size(); ++i) {
    // Mon, Tues, Weds, Thurs: any beginning of three letters or more, and the common `Weds`.
    const bool begins = word.size() >= 3 && kWeekdays[i].starts_with(word);
    if (begins || (i == 2 && word == "weds"))
      return from_to(static_cast<int>(i), static_cast<int>(i));
  }
  std::string hint = "write days as `Mon, Wed, Fri`, or `daily` or `weekdays`";
  const std::vector<std::string> names{"Monday",   "Tuesday", "Wednesday", "Thursday", "Friday",
                                       "Saturday", "Sunday",  "daily",     "weekdays"};
  if (const auto meant = closest(word, names)) hint = fmt::format("did you mean `{}`?", *meant);
  return wrong(fmt::format("‘{}’ is not a day of the week", text), hint);
}

Value<Paper> parse_paper(std::string_view text) {
  if (const auto paper = read_paper(text)) return *paper;
  return wrong(fmt::format("‘{}’ is not a paper size we print on", trim(text)),
               fmt::format("write {}", kPaperChoices));
}

Value<PageCount> parse_page_count(std::string_view text) {
  constexpr std::string_view kHint =
      "write `1 sheet` (of paper, printed on both sides), `2 sheets`, `1 page` or `3 pages`";
  text = trim(text);
  const auto tokens = tokens_of(text);
  const bool number = !tokens.empty() && tokens[0].is(TokenKind::kNumber) && tokens[0].is_whole() &&
                      !tokens[0].too_large;
  if (number && tokens.size() == 1) {
    return wrong(fmt::format("‘{}’ could be pages or sheets of paper", text),
                 fmt::format("say which: `{0} {1}` or `{0} {2}`", text,
                             tokens[0].numerator == tokens[0].denominator ? "page" : "pages",
                             tokens[0].numerator == tokens[0].denominator ? "sheet" : "sheets"));
  }
  if (number && tokens.size() == 2) {
    const bool pages = tokens[1].is_word("page") || tokens[1].is_word("pages");
    const bool sheets = tokens[1].is_word("sheet") || tokens[1].is_word("sheets");
    const std::int64_t count = tokens[0].numerator / tokens[0].denominator * (sheets ? 2 : 1);
    if ((pages || sheets) && count >= 1 && count <= kMostPages)
      return PageCount{static_cast<int>(count), sheets};
    if (pages || sheets) {
      return wrong(fmt::format("‘{}’ is no length a sheet can have", text),
                   fmt::format("write from 1 to {} pages", kMostPages));
    }
  }
  return wrong(fmt::format("‘{}’ is not a number of pages", text), std::string(kHint));
}

Value<Ticks> parse_ticks(std::string_view text) {
  constexpr std::string_view kHint =
      "write `gymnasts`, `sets`, `days` or the length of the block: `6 weeks`";
  using Each = Ticks::Each;
  text = trim(text);
  auto tokens = tokens_of(text);
  if (tokens.size() == 2 && (tokens[0].is_word("each") || tokens[0].is_word("per")))
    tokens.erase(tokens.begin());
  const auto says = [](const Token& token, std::string_view one) {
    return token.is_word(one) || token.is_word(std::string(one) + "s");
  };
  if (tokens.size() == 1) {
    constexpr std::array<std::pair<std::string_view, Each>, 3> kWords{
        {{"gymnast", Each::kGymnast}, {"set", Each::kSet}, {"day", Each::kDay}}};
    for (const auto& [word, each] : kWords) {
      if (says(tokens[0], word)) return Ticks{each, 0};
    }
    if (says(tokens[0], "week"))
      return wrong("a block of weeks needs its length", "write it as `ticks: 6 weeks`");
  }
  if (tokens.size() == 2 && tokens[0].is(TokenKind::kNumber) && says(tokens[1], "week")) {
    const bool whole = tokens[0].is_whole() && !tokens[0].too_large;
    const std::int64_t weeks = whole ? tokens[0].numerator / tokens[0].denominator : 0;
    if (weeks >= 2 && weeks <= kMostWeeks) return Ticks{Each::kWeek, static_cast<int>(weeks)};
    return wrong(
        fmt::format("‘{}’ is no length of a block that fits beside a drill", text),
        fmt::format("write from 2 to {} weeks, and a new plan for the next block", kMostWeeks));
  }
  return wrong(fmt::format("‘{}’ is nothing to have a box for", text), std::string(kHint));
}

Value<int> parse_whole(std::string_view text, int least, int most) {
  text = trim(text);
  const auto tokens = tokens_of(text);
  if (tokens.size() == 1 && tokens[0].is(TokenKind::kNumber) && tokens[0].is_whole() &&
      !tokens[0].too_large) {
    const std::int64_t value = tokens[0].numerator / tokens[0].denominator;
    if (value >= least && value <= most) return static_cast<int>(value);
  }
  return wrong(fmt::format("‘{}’ is not a number that makes sense here", text),
               fmt::format("write a whole number from {} to {}", least, most));
}

Value<bool> parse_yes_no(std::string_view text) {
  const std::string word = lower_ascii(trim(text));
  if (word == "yes" || word == "true") return true;
  if (word == "no" || word == "false") return false;
  return wrong(fmt::format("‘{}’ is neither yes nor no", trim(text)), "write `yes` or `no`");
}

Value<bool> parse_on_off(std::string_view text) {
  const std::string word = lower_ascii(trim(text));
  if (word == "on" || word == "yes" || word == "true") return true;
  if (word == "off" || word == "no" || word == "false") return false;
  return wrong(fmt::format("‘{}’ is neither on nor off", trim(text)), "write `on` or `off`");
}

Value<std::pair<int, int>> parse_ages(std::string_view text) {
  text = trim(text);
  std::vector<Token> numbers;
  bool odd = false;  // something that is neither a number nor a dash
  for (Token& token : tokens_of(text)) {
    if (token.is(TokenKind::kNumber)) {
      numbers.push_back(std::move(token));
    } else if (!token.is(TokenKind::kDash) && !token.is_word("to") && !token.is_word("years")) {
      odd = true;
    }
  }
  const auto age = [](const Token& token) {
    const bool fine = token.is_whole() && !token.too_large;
    return fine ? static_cast<int>(token.numerator / token.denominator) : 0;
  };
  constexpr int kOldest = 99;
  if (!odd && (numbers.size() == 1 || numbers.size() == 2)) {
    const int youngest = age(numbers.front());
    const int oldest = age(numbers.back());
    if (youngest >= 1 && youngest <= oldest && oldest <= kOldest)
      return std::pair(youngest, oldest);
  }
  return wrong(fmt::format("‘{}’ is not a range of ages", text),
               "write the youngest and the oldest in years: `9–11`");
}

}  // namespace chalkleaf::plan
