// The amount of a dose and how many times it is done: `10 reps`, `20–30 s`, `max hold`, `3 sets
// of`, `x 3`, `twice`.
//
// Which words coaches use is common practice, no source. Tested by tests/plan/dose_test.cpp and
// dose_corpus_test.cpp.
#include <fmt/format.h>

#include <array>

#include "dose/phrases.h"

namespace chalkleaf::dose {
namespace {

struct CountWord {
  std::string_view word;
  AmountKind kind;
};
constexpr std::array<CountWord, 9> kCountWords{{{"reps", AmountKind::kRepetitions},
                                                {"rep", AmountKind::kRepetitions},
                                                {"repetitions", AmountKind::kRepetitions},
                                                {"repetition", AmountKind::kRepetitions},
                                                {"times", AmountKind::kRepetitions},
                                                {"steps", AmountKind::kSteps},
                                                {"step", AmountKind::kSteps},
                                                {"lengths", AmountKind::kLengths},
                                                {"length", AmountKind::kLengths}}};

std::string_view count_name(AmountKind kind) {
  if (kind == AmountKind::kSteps) return "steps";
  return kind == AmountKind::kLengths ? "lengths" : "repetitions";
}

}  // namespace

// A whole number within limits at `at`; nothing, and a problem, when it is not.
std::optional<std::int64_t> Phrases::count(std::size_t at, std::int64_t most,
                                           std::string_view what) {
  const Token& number = tokens_[at];
  const bool whole = number.is_whole() && !number.too_large;
  const std::int64_t value = whole ? number.numerator / number.denominator : 0;
  if (whole && value >= 1 && value <= most) return value;
  bad_value(at, at + 1, fmt::format("{} is not a number of {}", quoted(at, at + 1), what),
            fmt::format("write a whole number from 1 to {}", most));
  return std::nullopt;
}

std::size_t Phrases::set_sets(std::size_t number, std::size_t next, bool goes) {
  if (state.has_sets) {
    unreadable(number, next, "this dose gives the number of sets twice", "leave one out");
    return 0;
  }
  const auto value = count(number, kMostSets, goes ? "goes" : "sets");
  if (!value) return 0;
  state.has_sets = true;
  state.dose.sets = *value;
  state.dose.in_goes = goes;
  return next;
}

bool Phrases::is_sets_word(std::size_t at, std::size_t end) const {
  return is_any(at, end, "sets", "set", "rounds", "round", "lots", "lot");
}

bool Phrases::begins_amount(std::size_t at, std::size_t end) const {
  if (at == end && at < tokens_.size() && tokens_[at].is(TokenKind::kOpen))
    return true;  // `3 x (20 s)`
  return is_number(at, end) || is_kind(at, end, TokenKind::kClock) ||
         is_kind(at, end, TokenKind::kMoves) || read_time(tokens_, at, end) ||
         is_any(at, end, "max", "maximum", "hold", "holds", "each", "both", "amrap", "as", "up",
                "about", "to", "till", "until", "failure");
}

std::size_t Phrases::sets(std::size_t at, std::size_t end) {
  if (is_any(at, end, "sets", "rounds")) {  // `sets: 3, reps: 10`
    const std::size_t value =
        is_kind(at + 1, end, TokenKind::kColon) || is_sign(at + 1, end, "=") ? at + 2 : at + 1;
    return is_number(value, end) && value + 1 == end ? set_sets(value, end, false) : 0;
  }
  if (!is_number(at, end)) return 0;
  const auto is_mark = [&](std::size_t i) {
    return is_times(i, end) || is_any(i, end, "times", "by", "goes") || is_sets_word(i, end);
  };
  if (is_range_mark(at + 1, end) && is_number(at + 2, end) && is_mark(at + 3)) {
    if (!is_word(at + 3, end, "times") || begins_amount(at + 4, end)) return a_range(at, at + 3);
  }
  if (is_any(at + 1, end, "goes", "go", "tries", "attempts")) {
    const bool more = is_word(at + 2, end, "of") || is_times(at + 2, end) ||
                      is_kind(at + 2, end, TokenKind::kColon);
    return set_sets(at, more ? at + 3 : at + 2, true);
  }
  if (is_sets_word(at + 1, end)) {
    std::size_t next = at + 2;
    if (is_times(next, end) || is_word(next, end, "of") || is_kind(next, end, TokenKind::kColon) ||
        is_sign(next, end, "@")) {
      ++next;
    }
    return set_sets(at, next, false);
  }
  if (is_any(at + 1, end, "holds", "hold") &&
      (is_any(at + 2, end, "of", "for") || is_times(at + 2, end)) &&
      read_time(tokens_, at + 3, end)) {  // `3 holds of 20 s`
    state.hold_at = {at + 1, at + 2};
    return set_sets(at, at + 3, false);
  }
  const bool marked = is_times(at + 1, end) || is_any(at + 1, end, "times", "by");
  if (!marked) return 0;
  if (is_number(at + 2, end) && is_sets_word(at + 3, end)) return 0;  // `10 x 3 sets`
  if (is_sets_word(at + 2, end)) {                                    // `3 x sets of 10`
    return set_sets(at, is_word(at + 3, end, "of") ? at + 4 : at + 3, false);
  }
  if (!begins_amount(at + 2, end)) return 0;
  const auto each = state.has_sets ? read_time(tokens_, at + 2, end) : std::nullopt;
  if (each) {  // `3 x 5 x 3 s`
    const std::string count = words(at, at + 1).text;
    unreadable(
        at, each->next, "this dose gives the number of sets twice",
        fmt::format("if each of {} takes {}, write `{} x {}, pace {}`", count,
                    exact_text(each->value), state.dose.sets, count, exact_text(each->value)));
    return 0;
  }
  return set_sets(at, at + 2, false);
}

// `20 s x 3`, `10 reps x 3 sets`, `20 s twice`, `20 s, 3 times`; `twice through` without an amount
std::size_t Phrases::again(std::size_t at, std::size_t end) {
  const auto through = [&](std::size_t next) {
    return is_any(next, end, "through", "over") ? next + 1 : next;
  };
  if (state.has_amount) {
    if ((is_times(at, end) || is_word(at, end, "times")) && is_number(at + 1, end)) {
      return set_sets(at + 1, is_sets_word(at + 2, end) ? at + 3 : through(at + 2), false);
    }
    const bool behind = is_times(at + 1, end) || is_word(at + 1, end, "times");
    if (is_number(at, end) && behind && !begins_amount(at + 2, end)) {
      return set_sets(at, through(at + 2), false);
    }
  }
  if (!is_any(at, end, "once", "twice")) return 0;
  const std::int64_t n = is_word(at, end, "once") ? 1 : 2;
  const std::size_t next = through(at + 1);
  if (!state.has_amount) {
    Amount amount;
    amount.count = n;
    return set_amount(amount, at, next);
  }
  if (state.has_sets) {
    unreadable(at, next, "this dose gives the number of sets twice", "leave one out");
    return 0;
  }
  state.has_sets = true;
  state.dose.sets = n;
  return next;
}

std::size_t Phrases::set_amount(Amount amount, std::size_t begin, std::size_t next) {
  if (state.has_amount) {
    const Amount& first = state.dose.amount;
    std::string hint =
        "write one amount, such as `2 x 20 s`, and put another drill on a line of its own";
    if (first.kind == AmountKind::kMoves) {
      hint =
          "write rest, sets and sides behind the last move: "
          "`2 x (10 star jumps, 10 high knees), rest 30 s`";
    } else if (first.kind == AmountKind::kRepetitions && amount.held && amount.time) {
      hint = fmt::format("if each one is held, write how long one takes: `{} reps, pace {}`",
                         first.count, exact_text(*amount.time));
    }
    unreadable(begin, next, fmt::format("{} is a second amount", quoted(begin, next)),
               std::move(hint));
    return 0;
  }
  state.has_amount = true;
  state.dose.amount = amount;
  return next;
}

std::optional<Phrases::AmountRead> Phrases::read_amount(std::size_t at, std::size_t end) {
  DoseState kept = std::move(state);
  auto kept_problem = std::move(problem);
  const bool kept_refused = refused;
  state = {};
  problem.reset();
  const std::size_t next = amount(at, end);
  std::optional<AmountRead> out;
  if (next > at && !problem && state.has_amount) out = AmountRead{state.dose.amount, next};
  state = std::move(kept);
  problem = std::move(kept_problem);
  refused = kept_refused;
  return out;
}

// `max hold`, `hold max`, `max 15 s hold`, `hold for as long as you can`
std::size_t Phrases::max_hold(std::size_t at, std::size_t end) {
  const auto as_long = [&](std::size_t i) -> std::size_t {
    if (is_word(i, end, "for")) ++i;
    if (!is_word(i, end, "as") || !is_word(i + 1, end, "long") || !is_word(i + 2, end, "as")) {
      return 0;
    }
    if (is_word(i + 3, end, "possible")) return i + 4;
    if (is_any(i + 3, end, "you", "they") && is_word(i + 4, end, "can")) return i + 5;
    const bool looks =
        is_word(i + 3, end, "it") && is_word(i + 4, end, "looks") && is_word(i + 5, end, "good");
    return looks ? i + 6 : 0;
  };
  std::size_t next = as_long(at);
  if (is_any(at, end, "max", "maximum")) {
    next = is_any(at + 1, end, "hold", "holds") ? at + 2 : at + 1;
  } else if (is_any(at, end, "hold", "holds")) {
    const std::size_t value = is_word(at + 1, end, "for") ? at + 2 : at + 1;
    if (is_any(value, end, "max", "maximum")) next = value + 1;
    if (const std::size_t behind = as_long(at + 1)) next = behind;
    // `hold up to 15 s`: the cap is read next.
    if (is_word(value, end, "up") && is_word(value + 1, end, "to")) next = value;
  }
  if (next == 0) return 0;
  if (is_any(at, end, "max", "maximum") && next == at + 1 && state.has_amount &&
      state.dose.amount.kind == AmountKind::kMaxHold) {  // `max hold, max 15 s`
    Duration time;
    const std::size_t behind = time_after(at, next, end, time);
    return behind == 0 ? 0 : set_cap(time, at, behind);
  }
  // `max hold, as long as you can` says it twice.
  if (next == as_long(at) && state.has_amount && state.dose.amount.kind == AmountKind::kMaxHold)
    return next;
  Amount amount;
  amount.kind = AmountKind::kMaxHold;
  return set_amount(amount, at, next);
}

// A time, or a range of two: `20–30 s`, `20 s to 30 s`; not `20 s - 10 s rest`.
std::optional<Phrases::Times> Phrases::read_times(std::size_t at, std::size_t end) const {
  if (const auto first = read_time(tokens_, at, end)) {
    Times out{*first, std::nullopt, first->next};
    if (!is_range_mark(first->next, end)) return out;
    const auto second = read_time(tokens_, first->next + 1, end);
    if (!second || is_rest_word(second->next, end) || is_word(second->next, end, "between")) {
      return out;
    }
    out.to = second->value;
    out.first.too_large = out.first.too_large || second->too_large;
    out.next = out.first.next = second->next;
    return out;
  }
  if (!is_number(at, end) || !is_range_mark(at + 1, end)) return std::nullopt;
  const auto second = read_time(tokens_, at + 2, end);
  const auto unit = unit_at(tokens_, at + 3, end);
  if (!second || !unit || second->next != at + 4) return std::nullopt;
  const Token& number = tokens_[at];
  Times out{*second, second->value, second->next};
  const std::int64_t product = number.numerator * *unit;  // at most 10^10 × 3.6 × 10^6
  out.first.value = Duration::milliseconds(product / number.denominator);
  if (number.too_large || product % number.denominator != 0 || out.first.value > kLongestDuration) {
    out.first.too_large = true;
  }
  return out;
}

// The time at `at` of an amount that begins at `begin`.
std::size_t Phrases::timed(std::size_t begin, std::size_t at, std::size_t end, bool held) {
  const auto times = read_times(at, end);
  if (!times) return 0;
  if (!is_fit(times->first, at)) return 0;
  std::size_t next = times->next;
  if (is_any(next, end, "iso", "isometric", "static")) ++next;
  if (is_any(next, end, "hold", "holds", "held")) {
    held = true;
    ++next;
  }
  const bool capped = is_any(next, end, "max", "maximum");
  if (capped) next += is_any(next + 1, end, "hold", "holds") ? 2 : 1;
  const bool is_max = state.has_amount && state.dose.amount.kind == AmountKind::kMaxHold;
  if (capped && !state.has_amount) {  // `15 s max hold`
    Amount most;
    most.kind = AmountKind::kMaxHold;
    set_amount(most, begin, next);
  }
  if (capped || (is_max && !state.cap)) {
    return times->to ? a_range(at, times->next) : set_cap(times->first.value, begin, next);
  }
  // `30 s work`, `30 s on, 15 s off`; not `30 s on each leg`
  if (is_any(next, end, "work", "working")) {
    ++next;
  } else if (is_word(next, end, "on") &&
             !is_any(next + 1, end, "each", "every", "both", "the", "left", "right", "either")) {
    ++next;
  }
  Amount amount;
  amount.kind = AmountKind::kTime;
  amount.time = times->first.value;
  amount.time_to = times->to;
  amount.held = held || state.hold_at;
  amount.as_many = static_cast<bool>(state.as_many_at);
  if (times->to && *times->to <= times->first.value) {
    unreadable(at, times->next,
               fmt::format("{} is not a range that goes up", quoted(at, times->next)),
               "write the smaller number first: `20–30 s`");
    return 0;
  }
  positive(times->first.value, at, next);
  state.in_seconds = state.in_seconds || times->first.seconds;
  state.hold_at = {};
  return set_amount(amount, begin, next);
}

std::size_t Phrases::amount(std::size_t at, std::size_t end) {
  const std::size_t begin = at;
  bool held = false;
  if (is_any(at, end, "hold", "holds")) {
    held = true;
    ++at;
    const bool crossed = is_times(at, end);
    if (crossed || is_kind(at, end, TokenKind::kColon) || is_word(at, end, "of"))
      ++at;  // `hold x 20 s`
    if (is_number(at, end) && !read_times(at, end)) {
      if (is_times(at + 1, end) && begins_amount(at + 2, end)) {  // `hold 3 x 20 s`
        state.hold_at = {begin, begin + 1};
        return at;
      }
      if (crossed || is_range_mark(at + 1, end)) {
        const std::size_t last = crossed ? at + 1 : std::min(at + 3, end);
        unreadable(begin, last, fmt::format("{} does not say how long", quoted(begin, last)),
                   "write the seconds of one hold: `3 x 20 s hold`, `hold 20–30 s`");
        return 0;
      }
      Duration unused;
      return time_after(begin, at, end, unused);
    }
  }
  if (is_word(at, end, "for")) ++at;
  if (held && refused_numbers(at, end) == 0 && problem) return 0;  // `hold for 10 counts`
  if (const std::size_t next = timed(begin, at, end, held); next > 0 || problem) return next;
  if (held || at != begin) return 0;
  // `x10`, `x 10`: ten times; behind an amount it is a number of sets (`again`).
  if (is_times(at, end) && is_number(at + 1, end)) return counted(at + 1, end, Written::kTimes);
  if (is_any(at, end, "reps", "steps", "lengths")) {  // `reps: 10`
    const std::size_t value =
        is_kind(at + 1, end, TokenKind::kColon) || is_sign(at + 1, end, "=") ? at + 2 : at + 1;
    Amount amount;
    if (!is_number(value, end) || value + 1 != end || !count_word(at, end, amount)) return 0;
    const auto n = count(value, kMostCount, count_name(amount.kind));
    if (!n) return 0;
    amount.count = *n;
    return set_amount(amount, begin, end);
  }
  return is_number(at, end) ? counted(at, end, Written::kPlain) : 0;
}

// Where a word such as `reps` ends, its kind set; nothing when none stands there.
std::optional<std::size_t> Phrases::count_word(std::size_t at, std::size_t end,
                                               Amount& amount) const {
  for (const CountWord& known : kCountWords) {
    if (!is_word(at, end, known.word)) continue;
    amount.kind = known.kind;
    return at + 1;
  }
  return std::nullopt;
}

// `5-4-3-2-1`: how many tokens the rungs take; 0 when there are fewer than three.
std::size_t Phrases::ladder(std::size_t at, std::size_t end) const {
  constexpr std::size_t kMostRungs = 20;
  std::size_t next = at + 1;
  std::size_t rungs = 1;
  while (is_kind(next, end, TokenKind::kDash) && is_number(next + 1, end) && rungs < kMostRungs) {
    next += 2;
    ++rungs;
  }
  return rungs > 2 ? next - at : 0;
}

// `10`, `10 reps`, `8–12`, `5-4-3-2-1`, `20 steps`, `10x`
std::size_t Phrases::counted(std::size_t at, std::size_t end, Written written) {
  Amount amount;
  if (const std::size_t rungs = ladder(at, end); rungs > 0) {
    for (std::size_t i = at; i < at + rungs; i += 2) {
      const auto rung = count(i, kMostCount, count_name(amount.kind));
      if (!rung) return 0;
      amount.ladder.push_back(*rung);
      amount.count += *rung;
    }
    const std::size_t behind = at + rungs;
    amount.bare_number = !count_word(behind, end, amount);
    return set_amount(amount, at, count_word(behind, end, amount).value_or(behind));
  }
  const bool range = is_range_mark(at + 1, end) && is_number(at + 2, end);
  const std::size_t last = range ? at + 2 : at;
  std::size_t next = last + 1;
  const bool crossed = written == Written::kTimes;
  amount.bare_number = !crossed;
  if (const auto behind = count_word(next, end, amount)) {
    amount.bare_number = false;
    next = *behind;
    if (is_word(next, end, "through")) ++next;
  } else if (next + 1 == end && is_times(next, end) && tokens_[next].begin == tokens_[last].end) {
    amount.bare_number = false;  // `10x`, but not `3 x`, of which something is missing
    ++next;
  }
  const auto value = count(at, kMostCount, count_name(amount.kind));
  if (!value) return 0;
  amount.count = *value;
  if (range) {
    const auto to = count(last, kMostCount, count_name(amount.kind));
    if (!to) return 0;
    if (*to <= *value) {
      unreadable(at, last + 1, fmt::format("{} is not a range that goes up", quoted(at, last + 1)),
                 "write the smaller number first: `8–12`");
      return 0;
    }
    amount.count_to = *to;
  }
  return set_amount(amount, crossed ? at - 1 : at, next);
}

}  // namespace chalkleaf::dose
