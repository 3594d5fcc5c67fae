// See the header.
#include "plan/dose_phrases.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "plan/times.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using Kind = Token::Kind;

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

}  // namespace

Phrases::Phrases(const source::Text& text) : text_(text), tokens_(tokens_of(text.str())) {
  while (!tokens_.empty() && tokens_.back().is(Kind::kStop)) tokens_.pop_back();
}

std::size_t Phrases::read(std::size_t at, std::size_t end) {
  static constexpr std::array<Phrase, 11> kPhrases{
      &Phrases::rest,     &Phrases::sides,  &Phrases::tempo, &Phrases::pace,
      &Phrases::every,    &Phrases::effort, &Phrases::up_to, &Phrases::sets,
      &Phrases::max_hold, &Phrases::amount, &Phrases::again};
  while (at < end && !problem) {
    std::size_t next = 0;
    for (const Phrase phrase : kPhrases) {
      next = (this->*phrase)(at, end);
      if (next > at || problem) break;
    }
    if (next <= at) break;
    at = next;
  }
  return at;
}

bool Phrases::is_times(std::size_t at, std::size_t end) const {
  return at < end && (tokens_[at].is(Kind::kTimes) || tokens_[at].is_word("x"));
}
bool Phrases::is_word(std::size_t at, std::size_t end, std::string_view word) const {
  return at < end && tokens_[at].is_word(word);
}
bool Phrases::is_number(std::size_t at, std::size_t end) const {
  return at < end && tokens_[at].is(Kind::kNumber);
}
bool Phrases::has_digits(std::size_t begin, std::size_t end) const {
  return std::any_of(tokens_.begin() + static_cast<std::ptrdiff_t>(begin),
                     tokens_.begin() + static_cast<std::ptrdiff_t>(end), [](const Token& t) {
                       return t.is(Kind::kClock) || (t.is(Kind::kNumber) && !t.in_words);
                     });
}
std::string Phrases::quoted(std::size_t begin, std::size_t end) const {
  const std::size_t from = tokens_[begin].begin;
  std::string_view words = std::string_view(text_.str()).substr(from, tokens_[end - 1].end - from);
  constexpr std::size_t kLongest = 60;  // a message is not the place for an essay
  if (words.size() <= kLongest) return fmt::format("‘{}’", words);
  std::size_t cut = kLongest;
  while ((static_cast<unsigned char>(words[cut]) & 0xC0U) == 0x80U) --cut;
  return fmt::format("‘{}…’", words.substr(0, cut));
}
Words Phrases::words(std::size_t begin, std::size_t end) const {
  return words_of(text_.slice(tokens_[begin].begin, tokens_[end - 1].end));
}

void Phrases::fail(DoseProblem::Kind kind, std::size_t begin, std::size_t end, std::string message,
                   std::string hint) {
  if (problem) return;
  problem = DoseProblem{kind, tokens_[begin].begin, tokens_[end - 1].end, std::move(message),
                        std::move(hint)};
}
void Phrases::unreadable(std::size_t begin, std::size_t end, std::string message,
                         std::string hint) {
  fail(DoseProblem::Kind::kUnreadable, begin, end, std::move(message), std::move(hint));
}
void Phrases::bad_value(std::size_t begin, std::size_t end, std::string message, std::string hint) {
  fail(DoseProblem::Kind::kBadValue, begin, end, std::move(message), std::move(hint));
}

// A time behind a keyword that begins at `keyword`; 0 and a problem when there is none.
std::size_t Phrases::time_after(std::size_t keyword, std::size_t at, std::size_t end,
                                Duration& out) {
  if (at >= end) return 0;
  const auto time = read_time(tokens_, at, end);
  if (!time) {
    if (is_number(at, end)) {
      unreadable(keyword, at + 1, fmt::format("{} has no unit", quoted(keyword, at + 1)),
                 fmt::format("say seconds or minutes: `{} s`", words(keyword, at + 1).text));
    }
    return 0;
  }
  if (time->too_large) return too_long(at, time->next);
  out = time->value;
  return time->next;
}
std::size_t Phrases::too_long(std::size_t begin, std::size_t end) {
  bad_value(begin, end, fmt::format("{} is not a time to train for", quoted(begin, end)),
            "write a time of at most 24 hours, in whole thousandths of a second");
  return 0;
}
template <class T>
std::size_t Phrases::once(std::optional<T>& slot, T value, std::string_view what, std::size_t begin,
                          std::size_t end) {
  if (slot) {
    unreadable(begin, end, fmt::format("this dose gives the {} twice", what), "leave one out");
  }
  slot = value;
  return end;
}
// `every` and `pace` of no time would divide by nothing later.
std::size_t Phrases::positive(Duration time, std::size_t begin, std::size_t end) {
  if (end > begin && time <= Duration()) {
    bad_value(begin, end, fmt::format("{} is no time at all", quoted(begin, end)),
              "write a time above zero, such as `20 s`");
  }
  return end;
}

std::size_t Phrases::rest(std::size_t at, std::size_t end) {
  const std::size_t begin = at;
  while (is_any(at, end, "with", "and", "then")) ++at;
  Duration time;
  std::size_t next = 0;
  if (is_word(at, end, "no") && is_any(at + 1, end, "rest", "rests")) {
    next = at + 2;
  } else if (is_any(at, end, "rest", "rests")) {
    std::size_t value = at + 1;
    while (is_any(value, end, "of", "for")) ++value;
    next = time_after(at, value, end, time);
  } else if (const auto read = read_time(tokens_, at, end)) {
    std::size_t word = read->next;
    if (is_word(word, end, "of")) ++word;
    const bool between = is_word(word, end, "between");
    if (!between && !is_any(word, end, "rest", "rests")) return 0;
    if (read->too_large) return too_long(at, read->next);
    // `2 x 20 s rest 10 s`: the time behind the word is the rest, the one before it the amount.
    if (!between && !state.has_amount && read_time(tokens_, word + 1, end)) return 0;
    time = read->value;
    next = between ? word : word + 1;
  }
  if (next == 0) return 0;
  if (is_word(next, end, "between")) {
    ++next;
    while (is_any(next, end, "the", "sets", "goes", "them", "each", "rounds")) ++next;
  }
  return once(state.dose.rest, time, "rest", begin, next);
}

// The metre of one repetition: reference-values.md, 11: 10 × 3-0-1-0 = 40 s.
std::size_t Phrases::tempo(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "tempo") || at + 1 >= end) return 0;
  std::vector<std::int64_t> phases;
  std::size_t next = at + 1;
  while (is_number(next, end) && tokens_[next].is_whole() && !tokens_[next].too_large) {
    phases.push_back(tokens_[next].numerator);
    ++next;
    if (next + 1 < end && tokens_[next].is(Kind::kDash) && is_number(next + 1, end)) ++next;
  }
  const std::string form = "write four numbers of seconds, down, pause, up, pause: `tempo 3-0-1-0`";
  if (phases.size() != 4) {
    unreadable(at, end, fmt::format("{} cannot be read as a tempo", quoted(at, end)), form);
    return 0;
  }
  Tempo tempo{};
  for (std::size_t i = 0; i < 4; ++i) {
    if (phases[i] > 60) {
      bad_value(at, next, fmt::format("{} has a phase of more than 60 s", quoted(at, next)), form);
      return 0;
    }
    tempo.phases[i] = Duration::seconds(phases[i]);
  }
  positive(tempo.total(), at, next);
  state.tempo_begin = at;
  state.tempo_end = next;
  return once(state.dose.tempo, tempo, "tempo", at, next);
}

std::size_t Phrases::pace(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "pace")) return 0;
  Duration time;
  const std::size_t next = time_after(at, at + 1, end, time);
  if (next == 0) return 0;
  positive(time, at, next);
  state.pace_begin = at;
  state.pace_end = next;
  return once(state.dose.pace, time, "pace", at, next);
}

std::size_t Phrases::every(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "every")) return 0;
  Duration time;
  const std::size_t next = time_after(at, at + 1, end, time);
  if (next == 0) return 0;
  positive(time, at, next);
  return once(state.dose.every, time, "interval", at, next);
}

std::size_t Phrases::effort(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "effort") || !is_number(at + 1, end)) return 0;
  const Token& number = tokens_[at + 1];
  std::size_t next = at + 2;
  if (next < end && tokens_[next].is(Kind::kSlash)) {
    ++next;
  } else {
    while (is_any(next, end, "out", "of")) ++next;
  }
  if (next > at + 2) {
    if (!is_number(next, end) || tokens_[next].numerator != 10) return 0;
    ++next;
  }
  if (number.too_large || !number.is_whole() || number.numerator > 10 * number.denominator) {
    bad_value(at, next, fmt::format("{} is not on the scale", quoted(at, next)),
              "write a whole number from 0, rest, to 10, as hard as can be");
    return 0;
  }
  const int value = static_cast<int>(number.numerator / number.denominator);
  return once(state.dose.effort, value, "effort", at, next);
}

std::size_t Phrases::up_to(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "up") || !is_word(at + 1, end, "to")) return 0;
  Duration time;
  const std::size_t next = time_after(at, at + 2, end, time);
  if (next == 0) return 0;
  positive(time, at, next);
  state.cap_begin = at;
  state.cap_end = next;
  return once(state.cap, time, "cap", at, next);
}

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

bool Phrases::begins_amount(std::size_t at, std::size_t end) const {
  return at < end && (tokens_[at].is(Kind::kNumber) || tokens_[at].is(Kind::kClock) ||
                      is_any(at, end, "max", "maximum", "hold", "each", "both"));
}

std::size_t Phrases::sets(std::size_t at, std::size_t end) {
  if (!is_number(at, end)) return 0;
  if (is_any(at + 1, end, "goes", "go", "tries", "attempts")) {
    return set_sets(at, is_word(at + 2, end, "of") ? at + 3 : at + 2, true);
  }
  if (is_sets_word(at + 1, end)) {
    std::size_t next = at + 2;
    if (is_times(next, end) || is_word(next, end, "of")) ++next;
    return set_sets(at, next, false);
  }
  const bool marked = is_times(at + 1, end) || is_word(at + 1, end, "times");
  if (marked && is_number(at + 2, end) && is_sets_word(at + 3, end)) return 0;  // `10 x 3 sets`
  if (marked && begins_amount(at + 2, end)) return set_sets(at, at + 2, false);
  return 0;
}

bool Phrases::is_sets_word(std::size_t at, std::size_t end) const {
  return is_any(at, end, "sets", "set", "rounds", "round");
}

// `20 s x 3`, `10 reps x 3 sets`, `20 s twice`
std::size_t Phrases::again(std::size_t at, std::size_t end) {
  if (state.has_amount && is_times(at, end) && is_number(at + 1, end)) {
    return set_sets(at + 1, is_sets_word(at + 2, end) ? at + 3 : at + 2, false);
  }
  if (!is_any(at, end, "once", "twice")) return 0;
  const std::int64_t n = is_word(at, end, "once") ? 1 : 2;
  if (!state.has_amount) return set_amount({AmountKind::kRepetitions, n, {}, false}, at, at + 1);
  if (state.has_sets) {
    unreadable(at, at + 1, "this dose gives the number of sets twice", "leave one out");
    return 0;
  }
  state.has_sets = true;
  state.dose.sets = n;
  return at + 1;
}

std::size_t Phrases::set_amount(Amount amount, std::size_t begin, std::size_t next) {
  if (state.has_amount) {
    unreadable(begin, next, fmt::format("{} is a second amount", quoted(begin, next)),
               "write one amount, such as `2 x 20 s`, and put another drill on a line of its own");
    return 0;
  }
  state.has_amount = true;
  state.dose.amount = amount;
  return next;
}

std::size_t Phrases::max_hold(std::size_t at, std::size_t end) {
  std::size_t next = 0;
  if (is_any(at, end, "max", "maximum")) {
    next = is_any(at + 1, end, "hold", "holds") ? at + 2 : at + 1;
  } else if (is_word(at, end, "hold") && is_any(at + 1, end, "max", "maximum")) {
    next = at + 2;
  }
  if (next == 0) return 0;
  return set_amount({AmountKind::kMaxHold, 0, std::nullopt, false}, at, next);
}

std::size_t Phrases::amount(std::size_t at, std::size_t end) {
  const std::size_t begin = at;
  bool held = false;
  if (is_word(at, end, "hold")) {
    held = true;
    ++at;
    if (is_number(at, end) && !read_time(tokens_, at, end)) {
      Duration unused;
      return time_after(begin, at, end, unused);
    }
  }
  if (is_word(at, end, "for")) ++at;
  if (const auto time = read_time(tokens_, at, end)) {
    if (time->too_large) return too_long(at, time->next);
    std::size_t next = time->next;
    if (!held && is_any(next, end, "hold", "holds", "held")) {
      held = true;
      ++next;
    }
    positive(time->value, at, next);
    return set_amount({AmountKind::kTime, 0, time->value, held}, begin, next);
  }
  if (held || at != begin || !is_number(at, end)) return 0;
  return counted(at, end);
}

// `10`, `10 reps`, `20 steps`
std::size_t Phrases::counted(std::size_t at, std::size_t end) {
  const bool range = at + 2 < end && is_number(at + 2, end) &&
                     (tokens_[at + 1].is(Kind::kDash) || is_word(at + 1, end, "to"));
  if (range) return 0;
  Amount amount{AmountKind::kRepetitions, 0, std::nullopt, false};
  std::size_t next = at + 1;
  for (const CountWord& known : kCountWords) {
    if (!is_word(next, end, known.word)) continue;
    amount.kind = known.kind;
    ++next;
    break;
  }
  const auto value = count(at, kMostCount,
                           amount.kind == AmountKind::kSteps     ? "steps"
                           : amount.kind == AmountKind::kLengths ? "lengths"
                                                                 : "repetitions");
  if (!value) return 0;
  amount.count = *value;
  return set_amount(amount, at, next);
}

}  // namespace chalkleaf::plan
