// Trade shorthand: spelled out where it has one meaning (AMRAP, EMOM, BW, `10 L 10 R`), refused
// with the form to write where it has several or none for children (`to failure`, `10/10`, RPE).
//
// What the letters stand for is common practice, no source. Tested by
// tests/plan/dose_corpus_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "dose/phrases.h"

namespace chalkleaf::dose {
namespace {

// As remarks, alone between commas or behind the amount.
struct Spelled {
  std::string_view letters;
  std::string_view words;
};
constexpr std::array<Spelled, 5> kSpelled{{{"bw", "body weight"},
                                           {"alt", "alternating"},
                                           {"alt legs", "alternating legs"},
                                           {"alt arms", "alternating arms"},
                                           {"full rom", "full range of movement"}}};

constexpr std::array<std::string_view, 24> kManner{
    "slow",        "slowly",    "fast",  "quick", "quickly",    "steady",  "steadily", "controlled",
    "tall",        "smooth",    "total", "in",    "altogether", "overall", "bw",       "bodyweight",
    "alternating", "alternate", "alt",   "legs",  "arms",       "sides",   "feet",     "hands"};

}  // namespace

Words Phrases::remark(std::size_t begin, std::size_t end) const {
  Words out = words(begin, end);
  const std::string lower = lower_ascii(out.text);
  for (const Spelled& known : kSpelled) {
    if (known.letters == lower) out.text = known.words;
  }
  return out;
}

std::size_t Phrases::shorthand(std::size_t at, std::size_t end) {
  if (at == 0 && is_word(at, end, "do")) return 1;  // `do 10`
  if (const std::size_t next = refused_words(at, end); next > 0 || problem) return next;
  if (const std::size_t next = refused_numbers(at, end); next > 0 || problem) return next;
  if (const std::size_t next = two_numbers(at, end); next > 0 || problem) return next;
  return as_many(at, end);
}

std::size_t Phrases::refused_words(std::size_t at, std::size_t end) {
  const std::size_t word = is_any(at, end, "to", "till", "until") ? at + 1 : at;
  if (is_any(word, end, "failure", "fail", "exhaustion")) {
    return refuse(at, word + 1, fmt::format("{} is no dose for children", quoted(at, word + 1)),
                  "say how many good ones are enough, `8–12`, or for how long: `AMRAP 30 s` (as "
                  "many good ones as fit), `max hold, up to 15 s`");
  }
  if (is_word(at, end, "rpe")) {
    const std::size_t last = is_number(at + 1, end) ? at + 2 : at + 1;
    const std::string level = last > at + 1 ? words(at + 1, last).text : "6";
    return refuse(
        at, last, fmt::format("{} may be on one of two scales", quoted(at, last)),
        fmt::format("write `effort {}`, where 0 is rest and 10 as hard as can be", level));
  }
  if (is_word(at, end, "tabata")) {
    return refuse(at, at + 1, fmt::format("{} does not say how long", quoted(at, at + 1)),
                  "write it out: `8 x 20 s, rest 10 s`");
  }
  return 0;
}

std::size_t Phrases::refused_numbers(std::size_t at, std::size_t end) {
  const bool about =
      is_any(at, end, "about", "approx", "approximately", "roughly", "around", "circa", "ca") ||
      is_sign(at, end, "~") || is_sign(at, end, "≈");
  if (about && (is_number(at + 1, end) || is_kind(at + 1, end, TokenKind::kClock))) {
    return refuse(at, at + 2, fmt::format("{} leaves the number open", quoted(at, at + 2)),
                  "write the number you would call out, or a range: `8–12`, `20–30 s`");
  }
  if (!is_number(at, end)) return 0;
  const std::size_t word = at + 1;
  if (is_any(word, end, "kg", "kgs", "kilo", "kilos", "lb", "lbs")) {
    return refuse(at, word + 1, fmt::format("{} is a weight", quoted(at, word + 1)),
                  "write how many or how long, and say what is used in `uses:` below the drill");
  }
  if (is_any(word, end, "lap", "laps", "width", "widths")) {
    return refuse(at, word + 1, fmt::format("{} may be of any length", quoted(at, word + 1)),
                  "write `lengths`, `steps` or a time: `4 lengths`, `20 steps`, `2 min`");
  }
  if (is_any(word, end, "breath", "breaths", "count", "counts", "beat", "beats")) {
    return refuse(at, word + 1, fmt::format("{} is no length of time", quoted(at, word + 1)),
                  "write the seconds it takes: `20 s`");
  }
  if (is_any(word, end, "on", "work") &&
      (word + 1 == end || is_number(word + 1, end) || is_kind(word + 1, end, TokenKind::kSlash))) {
    return refuse(at, word + 1, fmt::format("{} has no unit", quoted(at, word + 1)),
                  fmt::format("say seconds or minutes: `{} s {}`", words(at, word).text,
                              words(word, word + 1).text));
  }
  const std::size_t each = is_word(word, end, "times") || is_times(word, end) ? word + 1 : word;
  if (is_any(each, end, "a", "per", "each") && is_any(each + 1, end, "week", "day")) {
    return refuse(at, each + 2, fmt::format("{} is no dose of one session", quoted(at, each + 2)),
                  "write what is done in one session; the days go into `repeat:` at the top of the "
                  "plan");
  }
  return 0;
}

// `10+10`, `10/10`, `3/10`, `10-8-6`: two or three numbers that may mean several things.
std::size_t Phrases::two_numbers(std::size_t at, std::size_t end) {
  if (!is_number(at, end) || !is_number(at + 2, end)) return 0;
  const bool plus = is_sign(at + 1, end, "+");
  const bool slash = is_kind(at + 1, end, TokenKind::kSlash);
  const bool dash = is_kind(at + 1, end, TokenKind::kDash) &&
                    is_kind(at + 3, end, TokenKind::kDash) && is_number(at + 4, end);
  const bool slashes = slash && is_kind(at + 3, end, TokenKind::kSlash) && is_number(at + 4, end);
  const std::string one = words(at, at + 1).text;
  const std::string two = words(at + 2, at + 3).text;
  if (dash && !is_word(at + 7, end, "tempo")) return 0;  // a ladder: an amount
  if (dash || slashes) {
    if (is_word(at + 7, end, "tempo")) return 0;
    return refuse(at, at + 5, fmt::format("{} has a number for each set", quoted(at, at + 5)),
                  "write one number for all of them, `3 x 8`, or a line for each set");
  }
  if (plus && !read_time(tokens_, at + 2, end)) {
    return refuse(at, at + 3, fmt::format("{} may be two sets or two sides", quoted(at, at + 3)),
                  fmt::format("write `2 x {0}` for sets, `{0} each side` for sides", one));
  }
  if (!slash || read_time(tokens_, at, end) || is_word(at + 3, end, "effort")) return 0;
  if (one == two) {
    return refuse(at, at + 3,
                  fmt::format("{} may be two sides, or work and rest", quoted(at, at + 3)),
                  fmt::format("write `{0} each side`, or `{0} s on, {0} s off`", one));
  }
  const Token& first = tokens_[at];
  const Token& second = tokens_[at + 2];
  const bool falls = first.numerator * second.denominator > second.numerator * first.denominator;
  return refuse(
      at, at + 3, fmt::format("{} may mean several things", quoted(at, at + 3)),
      falls ? fmt::format("write `{} s on, {} s off` for work and rest, `{} x {}` for sets", one,
                          two, one, two)
            : fmt::format("write `{} x {}` for sets, `effort {}` for how hard it is, `{}–{}` for "
                          "a range",
                          one, two, one, one, two));
}

// `AMRAP 60 s`, `60 s AMRAP`, `as many good ones as possible in 60 s`, `max reps in 60 s`
std::size_t Phrases::as_many(std::size_t at, std::size_t end) {
  std::size_t next = 0;
  if (is_word(at, end, "amrap")) {
    next = at + 1;
  } else if (is_any(at, end, "max", "maximum") && is_any(at + 1, end, "reps", "rep")) {
    next = at + 2;
  } else if (is_word(at, end, "as") && is_word(at + 1, end, "many")) {
    std::size_t i = at + 2;
    while (i < at + 5 && is_any(i, end, "good", "clean", "reps", "ones", "of", "them")) ++i;
    if (!is_word(i, end, "as")) return 0;
    if (is_any(i + 1, end, "possible", "fit")) next = i + 2;
    if (is_any(i + 1, end, "you", "they") && is_word(i + 2, end, "can")) next = i + 3;
  }
  if (next == 0) return 0;
  state.as_many_at = {at, next};
  if (state.has_amount && state.dose.amount.kind == AmountKind::kTime) {
    state.dose.amount.as_many = true;
    return next;
  }
  const std::size_t value = is_any(next, end, "in", "for", "within", "into", "x", "of") ||
                                    is_kind(next, end, TokenKind::kColon) ||
                                    is_kind(next, end, TokenKind::kTimes)
                                ? next + 1
                                : next;
  if (is_number(value, end) && !read_times(value, end)) {
    Duration unused;
    return time_after(at, value, end, unused);
  }
  return read_times(value, end) ? value : next;
}

// `EMOM 10 min: 5 reps`, `5 reps EMOM x 10`, `10 min EMOM, 5 reps`: every minute, so many times.
std::size_t Phrases::on_the_minute(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "emom")) return 0;
  std::size_t next = at + 1;
  state.minute_at = {at, next};
  const bool marked = is_times(next, end) || is_word(next, end, "for");
  const std::size_t value = marked ? next + 1 : next;
  const auto whole_minutes = [](Duration time) {
    const std::int64_t minute = Duration::minutes(1).in_milliseconds();
    return time.in_milliseconds() % minute == 0 ? time.in_milliseconds() / minute : 0;
  };
  std::int64_t minutes = 0;
  const auto time = read_time(tokens_, value, end);
  if (time && whole_minutes(time->value) > 0) {
    minutes = whole_minutes(time->value);
    next = time->next;
  } else if (!time && is_number(value, end) && tokens_[value].denominator == 1 &&
             (marked || value + 1 == end || is_kind(value + 1, end, TokenKind::kColon))) {
    minutes = tokens_[value].numerator;
    next = value + 1;
  } else if (state.has_amount && !state.has_sets && state.dose.amount.kind == AmountKind::kTime &&
             !state.dose.amount.time_to &&
             whole_minutes(*state.dose.amount.time) > 0) {  // `10 min EMOM`
    minutes = whole_minutes(*state.dose.amount.time);
    state.has_amount = false;
    state.dose.amount = {};
  }
  if (is_kind(next, end, TokenKind::kColon) || is_word(next, end, "of")) ++next;
  if (minutes > 0) {
    if (state.has_sets) {
      unreadable(at, next, "this dose gives the number of sets twice", "leave one out");
      return 0;
    }
    if (minutes > kMostSets) return too_long(at, next);
    state.has_sets = true;
    state.dose.sets = minutes;
  }
  return once(state.dose.every, Duration::minutes(1), "interval", at, next);
}

// `3 x 10 slow`, `20 alternating legs`, `3 x 10 @ BW`: words of manner need no comma.
std::size_t Phrases::manner(std::size_t at, std::size_t end) {
  const std::size_t begin = is_sign(at, end, "@") ? at + 1 : at;
  if (state.ways_open || begin >= end) return 0;
  bool alternates = false;
  for (std::size_t i = begin; i < end; ++i) {
    const bool limb = is_any(i, end, "legs", "arms", "sides", "feet", "hands");
    const bool known = tokens_[i].is(TokenKind::kWord) &&
                       std::find(kManner.begin(), kManner.end(), tokens_[i].word) != kManner.end();
    const bool in_total = !is_word(i, end, "in") || is_any(i + 1, end, "total", "all");
    const bool all = is_word(i, end, "all") && i > begin && is_word(i - 1, end, "in");
    if ((!known && !all) || (limb && !alternates) || !in_total) return 0;
    alternates = alternates || is_any(i, end, "alternating", "alternate", "alt");
  }
  state.dose.remarks.push_back(remark(begin, end));
  return end;
}

}  // namespace chalkleaf::dose
