// See the header. Here: how phrases are tried, and what is said beside the amount.
#include "dose/phrases.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/span.h"
#include "dose/words_of.h"

namespace chalkleaf::dose {
namespace {

// Words cut short, whose stop is no end of a sentence: `30 sec. hold`.
constexpr std::array<std::string_view, 12> kCutShort{"s",   "sec", "secs", "min", "mins",   "hr",
                                                     "hrs", "rep", "reps", "ea",  "approx", "max"};

// The signs that open what a mark of seconds or minutes would close.
std::string_view opening_of(std::string_view mark) {
  if (mark == "”") return "“";
  if (mark == "’") return "‘";
  return mark == "\"" || mark == "'" ? mark : std::string_view();
}

// Whether the line before `at` in the file opens a quotation that `mark` closes: `Play “Level 2”`.
bool is_quoted_before(const Span& at, std::string_view mark) {
  const std::string_view open = opening_of(mark);
  if (open.empty() || at.source == nullptr) return false;
  constexpr std::size_t kFar = 300;  // bytes; no name of a drill is longer
  std::string_view before = at.source->text().substr(0, at.begin);
  before.remove_prefix(before.size() - std::min(before.size(), kFar));
  if (const std::size_t line = before.rfind('\n'); line != std::string_view::npos) {
    before.remove_prefix(line + 1);
  }
  bool inside = false;
  for (std::size_t i = 0; i < before.size(); ++i) {
    const std::string_view rest = before.substr(i);
    if (rest.starts_with(open) && open != mark) {
      inside = true;
    } else if (rest.starts_with(mark)) {
      const bool begins = i == 0 || before[i - 1] == ' ' || before[i - 1] == '(';
      inside = open == mark && begins && !inside;  // not the apostrophe of `coach's`
    }
  }
  return inside;
}

}  // namespace

Phrases::Phrases(const source::Text& text) : text_(text), tokens_(tokens_of(text.str())) {
  for (Token& token : tokens_) {
    const std::string_view mark =
        std::string_view(text.str()).substr(token.begin, token.end - token.begin);
    if (!token.is(TokenKind::kWord) || opening_of(mark).empty()) continue;
    if (is_quoted_before(text.span(token.begin, token.end), mark)) {
      token.kind = TokenKind::kOther;
      token.word = mark;
    }
  }
  while (!tokens_.empty() && tokens_.back().is(TokenKind::kStop)) tokens_.pop_back();
  join_sentences();
}

// `3 x 10. Rest 20 s.`: a stop before a capital or a digit ends a clause, one behind a word cut
// short is no stop at all.
void Phrases::join_sentences() {
  std::vector<Token> kept;
  kept.reserve(tokens_.size());
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    Token& token = tokens_[i];
    if (!token.is(TokenKind::kStop) || i == 0 || i + 1 == tokens_.size()) {
      kept.push_back(std::move(token));
      continue;
    }
    const Token& next = tokens_[i + 1];
    const char first = text_.str()[next.begin];
    const bool capital = first >= 'A' && first <= 'Z';
    const bool digit = next.is(TokenKind::kNumber) || next.is(TokenKind::kClock);
    const bool cut_short =
        !kept.empty() && kept.back().is(TokenKind::kWord) && kept.back().end == token.begin &&
        std::find(kCutShort.begin(), kCutShort.end(), kept.back().word) != kCutShort.end();
    if (cut_short && !capital) continue;
    if (next.begin > token.end && (capital || digit)) token.kind = TokenKind::kSemicolon;
    kept.push_back(std::move(token));
  }
  tokens_ = std::move(kept);
}

std::size_t Phrases::read(std::size_t at, std::size_t end) {
  static constexpr std::array<Phrase, 18> kPhrases{
      &Phrases::shorthand,     &Phrases::moves, &Phrases::rest,   &Phrases::left_then_right,
      &Phrases::each_gymnast,  &Phrases::sides, &Phrases::tempo,  &Phrases::pace,
      &Phrases::pace_each,     &Phrases::every, &Phrases::effort, &Phrases::max_hold,
      &Phrases::up_to,         &Phrases::again, &Phrases::sets,   &Phrases::amount,
      &Phrases::on_the_minute, &Phrases::manner};
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

bool Phrases::is_dose_clause(std::size_t begin, std::size_t end) {
  DoseState kept = std::move(state);
  auto kept_problem = std::move(problem);
  const bool kept_refused = refused;
  state = {};
  problem.reset();
  const bool whole = read(begin, end) == end && !problem;
  state = std::move(kept);
  problem = std::move(kept_problem);
  refused = kept_refused;
  return whole;
}

void Phrases::replace_by_moves(TokenRange at, std::vector<Move> moves) {
  Token token;
  token.kind = TokenKind::kMoves;
  token.begin = tokens_[at.begin].begin;
  token.end = tokens_[at.end - 1].end;
  const auto first = tokens_.begin() + static_cast<std::ptrdiff_t>(at.begin);
  tokens_.erase(first + 1, tokens_.begin() + static_cast<std::ptrdiff_t>(at.end));
  tokens_[at.begin] = std::move(token);
  moves_ = std::move(moves);
}

std::size_t Phrases::moves(std::size_t at, std::size_t end) {
  if (!is_kind(at, end, TokenKind::kMoves)) return 0;
  if (at > 0 && is_number(at - 1, end)) {  // `10 (5 slow, 5 fast)`
    const std::string number = words(at - 1, at).text;
    unreadable(
        at - 1, at, fmt::format("‘{}’ may be how often, or how many in all", number),
        fmt::format("write `{} x {}`, or leave the number out", number, words(at, at + 1).text));
    return 0;
  }
  Amount amount;
  amount.kind = AmountKind::kMoves;
  state.dose.moves = moves_;
  return set_amount(amount, at, at + 1);
}

bool Phrases::is_times(std::size_t at, std::size_t end) const {
  return at < end && (tokens_[at].is(TokenKind::kTimes) || tokens_[at].is_word("x"));
}
bool Phrases::is_word(std::size_t at, std::size_t end, std::string_view word) const {
  return at < end && tokens_[at].is_word(word);
}
bool Phrases::is_number(std::size_t at, std::size_t end) const {
  return at < end && tokens_[at].is(TokenKind::kNumber);
}
bool Phrases::is_range_mark(std::size_t at, std::size_t end) const {
  return at < end && (tokens_[at].is(TokenKind::kDash) || tokens_[at].is_word("to"));
}
bool Phrases::is_spaced_dash(std::size_t at) const {
  return at > 0 && at + 1 < tokens_.size() && tokens_[at].is(TokenKind::kDash) &&
         tokens_[at - 1].end < tokens_[at].begin && tokens_[at].end < tokens_[at + 1].begin;
}
bool Phrases::has_digits(std::size_t begin, std::size_t end) const {
  return std::any_of(tokens_.begin() + static_cast<std::ptrdiff_t>(begin),
                     tokens_.begin() + static_cast<std::ptrdiff_t>(end), [](const Token& t) {
                       return t.is(TokenKind::kClock) || t.is(TokenKind::kMoves) ||
                              (t.is(TokenKind::kNumber) && !t.in_words);
                     });
}
std::string Phrases::quoted(std::size_t begin, std::size_t end) const {
  const std::size_t from = tokens_[begin].begin;
  std::string_view words = std::string_view(text_.str()).substr(from, tokens_[end - 1].end - from);
  constexpr std::size_t kLongestShown = 60;  // a message is not the place for an essay
  if (words.size() <= kLongestShown) return fmt::format("‘{}’", words);
  std::size_t cut = kLongestShown;
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
std::size_t Phrases::refuse(std::size_t begin, std::size_t end, std::string message,
                            std::string hint) {
  unreadable(begin, end, std::move(message), std::move(hint));
  refused = true;
  return 0;
}
std::string Phrases::twice_message(std::string_view what) {
  return fmt::format("this dose gives the {} twice", what);
}

// False, and a problem, where the time is none to train for or may mean two things.
bool Phrases::is_fit(const TimeRead& time, std::size_t begin) {
  if (time.too_large) {
    too_long(begin, time.next);
    return false;
  }
  if (!time.doubtful) return true;
  const Token& number = tokens_[begin];
  const std::int64_t tenths =
      number.numerator * 100 / std::max<std::int64_t>(1, number.denominator);
  unreadable(
      begin, time.next,
      fmt::format("{} may be a decimal, or minutes and seconds", quoted(begin, time.next)),
      fmt::format("write `{}:{:02}` or `{}`", tenths / 100, tenths % 100, exact_text(time.value)));
  return false;
}

// A time behind a keyword that begins at `keyword`; 0 and a problem when there is none.
std::size_t Phrases::time_after(std::size_t keyword, std::size_t at, std::size_t end,
                                Duration& out) {
  if (at >= end) return 0;
  const auto times = read_times(at, end);
  if (times && times->to) return a_range(at, times->next);
  if (!times) {
    if (is_number(at, end)) {
      if (is_range_mark(at + 1, end) && is_number(at + 2, end)) return a_range(at, at + 3);
      unreadable(keyword, at + 1, fmt::format("{} has no unit", quoted(keyword, at + 1)),
                 fmt::format("say seconds or minutes: `{} s`", words(keyword, at + 1).text));
    }
    return 0;
  }
  if (!is_fit(times->first, at)) return 0;
  out = times->first.value;
  return times->next;
}
std::size_t Phrases::a_range(std::size_t begin, std::size_t end) {
  unreadable(begin, end, fmt::format("{} is a range", quoted(begin, end)),
             "choose one number, the one you would call out");
  return 0;
}
std::size_t Phrases::too_long(std::size_t begin, std::size_t end) {
  bad_value(begin, end, fmt::format("{} is not a time to train for", quoted(begin, end)),
            "write a time of at most 24 hours, in whole thousandths of a second");
  return 0;
}
// `every` and `pace` of no time would divide by nothing later.
std::size_t Phrases::positive(Duration time, std::size_t begin, std::size_t end) {
  if (end > begin && time <= Duration()) {
    bad_value(begin, end, fmt::format("{} is no time at all", quoted(begin, end)),
              "write a time above zero, such as `20 s`");
  }
  return end;
}

// The metre of one repetition: reference-values.md, 11: 10 × 3-0-1-0 = 40 s. Also `tempo 3010`,
// `tempo 3/0/1/0` and `3-0-1-0 tempo`.
std::size_t Phrases::tempo(std::size_t at, std::size_t end) {
  const bool behind = is_number(at, end) && is_kind(at + 1, end, TokenKind::kDash) &&
                      is_number(at + 6, end) && is_word(at + 7, end, "tempo");
  if (!behind && (!is_word(at, end, "tempo") || at + 1 >= end)) return 0;
  std::vector<std::int64_t> phases;
  std::size_t next = behind ? at : at + 1;
  if (is_kind(next, end, TokenKind::kColon)) ++next;
  while (phases.size() < 5 && is_number(next, end) && tokens_[next].is_whole() &&
         !tokens_[next].too_large) {
    const Token& number = tokens_[next];
    const std::int64_t value = number.numerator / number.denominator;
    if (phases.empty() && value > 999 && value < 10'000) {  // `3010`
      phases = {value / 1000, value / 100 % 10, value / 10 % 10, value % 10};
      ++next;
      break;
    }
    phases.push_back(value);
    ++next;
    const bool parted = is_kind(next, end, TokenKind::kDash) ||
                        is_kind(next, end, TokenKind::kSlash) ||
                        is_kind(next, end, TokenKind::kColon);
    if (parted && is_number(next + 1, end)) ++next;
  }
  if (behind) ++next;
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
  state.tempo_at = {at, next};
  return once(state.dose.tempo, tempo, "tempo", at, next);
}

std::size_t Phrases::pace(std::size_t at, std::size_t end) {
  if (!is_word(at, end, "pace")) return 0;
  Duration time;
  const std::size_t value = is_kind(at + 1, end, TokenKind::kColon) ? at + 2 : at + 1;
  const std::size_t next = time_after(at, value, end, time);
  if (next == 0) return 0;
  positive(time, at, next);
  state.pace_at = {at, next};
  return once(state.dose.pace, time, "pace", at, next);
}

// `10 reps, 3 s each`, as the card prints a pace; `3 s per rep`. Behind a number of repetitions,
// steps or lengths a time can be nothing else.
std::size_t Phrases::pace_each(std::size_t at, std::size_t end) {
  const AmountKind kind = state.dose.amount.kind;
  const bool is_count = kind == AmountKind::kRepetitions || kind == AmountKind::kSteps ||
                        kind == AmountKind::kLengths;
  if (!state.has_amount || !is_count) return 0;
  const auto time = read_time(tokens_, at, end);
  if (!time || !is_any(time->next, end, "each", "per", "a")) return 0;
  const std::size_t word = time->next;
  std::size_t next = word + 1;
  if (is_any(next, end, "rep", "repetition", "step", "length", "one", "jump", "swing")) {
    ++next;
  } else if (!is_word(word, end, "each") || next != end) {
    return 0;
  }
  if (!is_fit(*time, at)) return 0;
  positive(time->value, at, next);
  state.pace_at = {at, next};
  return once(state.dose.pace, time->value, "pace", at, next);
}

// `every 45 s`, `every minute`, `on the minute`
std::size_t Phrases::every(std::size_t at, std::size_t end) {
  Duration time = Duration::minutes(1);
  std::size_t next = 0;
  if (is_word(at, end, "on") && is_word(at + 1, end, "the") && is_word(at + 2, end, "minute")) {
    next = at + 3;
  } else if (!is_word(at, end, "every")) {
    return 0;
  } else if (is_any(at + 1, end, "minute", "min")) {
    next =
        is_word(at + 2, end, "on") && is_word(at + 3, end, "the") && is_word(at + 4, end, "minute")
            ? at + 5
            : at + 2;
  } else {
    next = time_after(at, at + 1, end, time);
  }
  if (next == 0) return 0;
  positive(time, at, next);
  return once(state.dose.every, time, "interval", at, next);
}

std::size_t Phrases::effort(std::size_t at, std::size_t end) {
  const bool before = is_number(at, end);  // `6/10 effort`
  if (!before && !is_word(at, end, "effort")) return 0;
  std::size_t value = before ? at : at + 1;
  if (is_kind(value, end, TokenKind::kColon) || is_word(value, end, "of")) ++value;
  if (!is_number(value, end)) return 0;
  const Token& number = tokens_[value];
  std::size_t next = value + 1;
  const bool slash = is_kind(next, end, TokenKind::kSlash);
  const bool of = is_word(next, end, "of") || is_word(next, end, "out");
  if (slash || of) {
    next += is_word(next, end, "out") && is_word(next + 1, end, "of") ? 2 : 1;
    if (!is_number(next, end) || tokens_[next].numerator != 10) return 0;
    ++next;
  }
  if (before) {
    if (!is_word(next, end, "effort")) return 0;
    ++next;
  }
  if (is_range_mark(next, end) && is_number(next + 1, end)) return a_range(value, next + 2);
  if (number.too_large || !number.is_whole() || number.numerator > 10 * number.denominator) {
    bad_value(at, next, fmt::format("{} is not on the scale", quoted(at, next)),
              "write a whole number from 0, rest, to 10, as hard as can be");
    return 0;
  }
  const int level = static_cast<int>(number.numerator / number.denominator);
  return once(state.dose.effort, level, "effort", at, next);
}

std::size_t Phrases::set_cap(Duration time, std::size_t begin, std::size_t end) {
  positive(time, begin, end);
  state.cap_at = {begin, end};
  return once(state.cap, time, "cap", begin, end);
}

// `up to 15 s`, `at most 15 s`, `no more than 15 s`, and `max 15 s` behind a max hold
std::size_t Phrases::up_to(std::size_t at, std::size_t end) {
  std::size_t value = 0;
  if ((is_word(at, end, "up") && is_word(at + 1, end, "to")) ||
      (is_word(at, end, "at") && is_word(at + 1, end, "most"))) {
    value = at + 2;
  } else if (is_word(at, end, "no") && is_word(at + 1, end, "more") &&
             is_word(at + 2, end, "than")) {
    value = at + 3;
  } else if (is_sign(at, end, "≤") || is_sign(at, end, "<")) {
    value = is_sign(at + 1, end, "=") ? at + 2 : at + 1;
  } else if (is_any(at, end, "cap", "capped", "limit")) {
    value = is_word(at + 1, end, "at") || is_kind(at + 1, end, TokenKind::kColon) ? at + 2 : at + 1;
  }
  if (value == 0) return 0;
  Duration time;
  const std::size_t next = time_after(at, value, end, time);
  return next == 0 ? 0 : set_cap(time, at, next);
}

}  // namespace chalkleaf::dose
