// The rest of a dose: `rest 20 s`, `20 s off`, `1 min between sets`, `no break`.
//
// Which words coaches use is common practice, no source. Tested by tests/plan/dose_test.cpp and
// dose_corpus_test.cpp.
#include <fmt/format.h>

#include "dose/phrases.h"

namespace chalkleaf::dose {
namespace {}  // namespace

bool Phrases::is_rest_word(std::size_t at, std::size_t end) const {
  return is_any(at, end, "rest", "rests", "resting", "recovery", "recover", "break", "breaks",
                "off");
}

// What may stand before a rest: `with`, `w/`, `then`, `+`, `/`, a dash with space around it.
std::size_t Phrases::rest_joiners(std::size_t at, std::size_t end) const {
  for (;;) {
    if (is_any(at, end, "with", "and", "then", "plus", "followed", "by") ||
        (is_word(at, end, "a") && is_number(at + 1, end)) || is_sign(at, end, "+") ||
        is_sign(at, end, "&") || is_kind(at, end, TokenKind::kSlash)) {
      ++at;
    } else if (is_word(at, end, "w") && is_kind(at + 1, end, TokenKind::kSlash)) {
      at += 2;
    } else if (state.has_amount && at < end && is_spaced_dash(at)) {
      ++at;
    } else {
      return at;
    }
  }
}

// Behind `between the sets`, `in between`, `after each set`; `at` itself where none stands.
std::size_t Phrases::behind_between(std::size_t at, std::size_t end) {
  const std::size_t begin = at;
  if (is_word(at, end, "in") && is_word(at + 1, end, "between")) ++at;
  const bool after = is_word(at, end, "after") && is_any(at + 1, end, "each", "every");
  if (!after && !is_word(at, end, "between")) return begin;
  ++at;
  bool sides = false;
  while (is_any(at, end, "the", "sets", "set", "goes", "go", "them", "each", "every", "rounds",
                "round", "two", "of", "tries", "attempts", "reps") ||
         (side_word(at, end) &&
          is_any(at, end, "sides", "legs", "arms", "ways", "side", "leg", "arm", "way"))) {
    // A rest between repetitions is none between sets: leave it to be asked about.
    if (is_word(at, end, "reps")) return begin;
    sides = sides || side_word(at, end);
    ++at;
  }
  if (sides) state.between_sides_at = {begin, at};
  return at;
}

// `20 s on, 10 off`: the second time has the unit of the first.
std::size_t Phrases::bare_rest(std::size_t begin, std::size_t at, std::size_t end) {
  if (!is_number(at, end) || tokens_[at].in_words || !is_rest_word(at + 1, end)) return 0;
  // `3 x 20 rest 10 s`: the time behind the word is the rest.
  if (read_time(tokens_, at + 2, end)) return 0;
  const Token& number = tokens_[at];
  if (!state.in_seconds || !number.is_whole() || number.too_large || number.numerator > 999) {
    unreadable(at, at + 2, fmt::format("{} has no unit", quoted(at, at + 2)),
               fmt::format("say seconds or minutes: `{} s {}`", words(at, at + 1).text,
                           words(at + 1, at + 2).text));
    return 0;
  }
  const std::size_t next = behind_between(at + 2, end);
  return once(state.dose.rest, Duration::seconds(number.numerator / number.denominator), "rest",
              begin, next);
}

std::size_t Phrases::rest(std::size_t at, std::size_t end) {
  const std::size_t begin = at;
  at = rest_joiners(at, end);
  Duration time;
  std::size_t next = 0;
  if (is_any(at, end, "no", "without") && is_rest_word(at + 1, end)) {
    next = at + 2;
  } else if (is_rest_word(at, end) && !is_word(at, end, "off")) {
    std::size_t value = at + 1;
    while (is_any(value, end, "of", "for", "is", "time") ||
           is_kind(value, end, TokenKind::kColon) || is_sign(value, end, "=")) {
      ++value;
    }
    const bool bare = state.in_seconds && is_number(value, end) && !tokens_[value].in_words &&
                      tokens_[value].is_whole() && tokens_[value].numerator < 1000 &&
                      !read_times(value, end) && !is_range_mark(value + 1, end);
    if (bare) {
      time = Duration::seconds(tokens_[value].numerator / tokens_[value].denominator);
      next = value + 1;
    } else {
      next = time_after(at, value, end, time);
    }
  } else if (const auto read = read_times(at, end)) {
    std::size_t word = read->next;
    if (is_word(word, end, "of")) ++word;
    const bool between = behind_between(word, end) > word;
    const bool is_rest = between || is_rest_word(word, end);
    const bool pair = at == begin + 1 && is_kind(begin, end, TokenKind::kSlash) &&
                      state.has_amount && state.dose.amount.kind == AmountKind::kTime;
    if (!is_rest && !pair) return 0;
    if (read->to) return a_range(at, read->next);
    if (!is_fit(read->first, at)) return 0;
    if (!is_rest && state.dose.amount.time == read->first.value) {  // `30 s/30 s`
      const std::string one = words(at, read->next).text;
      return refuse(at, read->next, "two equal times may be two sides, or work and rest",
                    fmt::format("write `{0} each side`, or `{0}, rest {0}`", one));
    }
    // `2 x 20 s rest 10 s`: the time behind the word is the rest, the one before it the amount.
    const bool again =
        read_time(tokens_, word + 1, end) || (is_number(word + 1, end) && word + 2 == end);
    if (!between && !state.has_amount && again) return 0;
    time = read->first.value;
    next = is_rest_word(word, end) ? word + 1 : word;
  }
  if (next == 0) return problem ? 0 : bare_rest(begin, at, end);
  next = behind_between(next, end);
  return once(state.dose.rest, time, "rest", begin, next);
}

}  // namespace chalkleaf::dose
