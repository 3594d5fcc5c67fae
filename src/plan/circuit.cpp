// See the header.
#include "plan/circuit.h"

#include <fmt/format.h>

#include "dose/phrases.h"

namespace chalkleaf::plan {
namespace {

/// Reads the phrases of a circuit one behind the other: rounds, work, rest, the rest between
/// rounds.
class CircuitReader {
 public:
  CircuitReader(const source::Text& text, BareRounds bare)
      : phrases_(text), size_(phrases_.tokens().size()), bare_(bare) {}

  bool read() {
    std::size_t at = 0;
    while (at < size_ && !phrases_.problem) {
      if (parts(at)) {
        ++at;
        continue;
      }
      const std::size_t next = phrase(at);
      if (next <= at) break;
      at = next;
    }
    stuck_ = at;
    return at == size_ && !phrases_.problem && size_ > 0;
  }

  const Circuit& circuit() const { return circuit_; }
  /// It speaks of rounds, of stations, or of work and rest, as no dose does.
  bool evident() const { return rounds_ || station_words_ || (work_word_ && rest_word_); }
  bool has_rounds() const { return rounds_; }
  /// Like `evident`, where it was not read to its end.
  bool begun() const { return rounds_ || (work_word_ && rest_word_); }
  /// A rest that may be after a station or after a round, in a circuit without a time of work.
  bool rest_unclear() const { return circuit_.rest && !circuit_.work && !rest_is_stations_; }

  DoseProblem problem() {
    if (!phrases_.problem && rest_unclear() && stuck_ == size_) {
      phrases_.unreadable(rest_at_.begin, rest_at_.end,
                          fmt::format("{} may be after each station or after each round",
                                      phrases_.quoted(rest_at_.begin, rest_at_.end)),
                          fmt::format("write `{0} between stations` or `{0} between rounds`",
                                      exact_text(*circuit_.rest)));
    }
    if (!phrases_.problem) {
      std::size_t end = stuck_;
      while (end < size_ && !phrases_.is_kind(end, size_, TokenKind::kComma)) ++end;
      if (end == stuck_) ++end;
      phrases_.unreadable(
          stuck_, end,
          fmt::format("{} cannot be read as a part of a circuit", phrases_.quoted(stuck_, end)),
          kCircuitForms);
    }
    return *phrases_.problem;
  }

 private:
  template <class... Wanted>
  bool is_any(std::size_t at, Wanted... wanted) const {
    return phrases_.is_any(at, size_, wanted...);
  }
  bool is_kind(std::size_t at, TokenKind kind) const { return phrases_.is_kind(at, size_, kind); }

  bool parts(std::size_t at) const {
    const Token& token = phrases_.tokens()[at];
    return token.is(TokenKind::kComma) || token.is(TokenKind::kSemicolon) ||
           token.is(TokenKind::kSlash) || token.is(TokenKind::kOpen) ||
           token.is(TokenKind::kClose) || token.is(TokenKind::kStop) || token.is_sign("+") ||
           token.is_sign("&") || is_any(at, "then", "and", "with", "of") ||
           phrases_.is_spaced_dash(at);
  }

  std::size_t phrase(std::size_t at) {
    for (const auto read : {&CircuitReader::rounds, &CircuitReader::bare_rounds,
                            &CircuitReader::between, &CircuitReader::rest, &CircuitReader::work}) {
      const std::size_t next = (this->*read)(at);
      if (next > at || phrases_.problem) return next;
    }
    return 0;
  }

  bool is_round_word(std::size_t at) const {
    return is_any(at, "round", "rounds", "lap", "laps", "circuit", "circuits");
  }
  bool is_station_word(std::size_t at) const {
    return is_any(at, "station", "stations", "exercise", "exercises", "drill", "drills", "move",
                  "moves");
  }
  // Behind `the`, `each`, `every`, `a`, `two`.
  std::size_t behind_article(std::size_t at) const {
    while (is_any(at, "the", "each", "every", "a", "per", "all")) ++at;
    return at;
  }

  // `3 rounds`, `3 x round`, `3 times round`, `twice through`, `rounds: 3`
  std::size_t rounds(std::size_t at) {
    if (is_any(at, "once", "twice") && is_any(at + 1, "round", "through", "around")) {
      return set_rounds(at, is_any(at, "once") ? 1 : 2, at + 2);
    }
    if (is_any(at, "rounds", "laps") && is_kind(at + 1, TokenKind::kColon) &&
        phrases_.is_number(at + 2, size_)) {
      return set_rounds(at + 2, whole(at + 2), at + 3);
    }
    if (!phrases_.is_number(at, size_)) return 0;
    const bool range = phrases_.is_range_mark(at + 1, size_) && phrases_.is_number(at + 2, size_);
    const std::size_t number = range ? at + 2 : at;
    std::size_t word = number + 1;
    const bool times = phrases_.is_times(word, size_) || is_any(word, "times", "time");
    if (times) ++word;
    if (!is_round_word(word) && !(times && is_any(word, "through", "around"))) return 0;
    if (range) {
      phrases_.unreadable(at, at + 3, fmt::format("{} is a range", phrases_.quoted(at, at + 3)),
                          "choose one number of rounds");
      rounds_ = true;  // it is one that was begun
      return 0;
    }
    ++word;
    if (is_kind(word, TokenKind::kColon) || phrases_.is_times(word, size_)) ++word;
    return set_rounds(at, whole(at), word);
  }

  // `3`, `x 3`, `3 x`, `3 times`, `3 goes`, `repeat 3 times`, with nothing else in their clause
  // but, behind `x`, the time of work: `3 x 30 s`.
  std::size_t bare_rounds(std::size_t begin) {
    if (bare_ == BareRounds::kNo || rounds_) return 0;
    std::size_t at = begin;
    if (is_any(at, "repeat", "do", "go")) ++at;
    if (is_any(at, "once", "twice")) {
      const bool ends = at + 1 == size_ || parts(at + 1);
      return ends ? set_rounds(at, is_any(at, "once") ? 1 : 2, at + 1) : 0;
    }
    const bool before = phrases_.is_times(at, size_);
    if (before) ++at;
    if (!phrases_.is_number(at, size_)) return 0;
    const std::size_t number = at++;
    const bool times = !before && phrases_.is_times(at, size_);
    if (times || is_any(at, "times", "time", "sets", "set", "goes", "go", "reps", "runs")) ++at;
    const bool ends = at == size_ || (parts(at) && !is_kind(at, TokenKind::kSlash));
    if (!ends && !(times && read_time(phrases_.tokens(), at, size_))) return 0;
    return set_rounds(number, whole(number), at);
  }

  std::int64_t whole(std::size_t at) const {
    const Token& number = phrases_.tokens()[at];
    return number.is_whole() && !number.too_large ? number.numerator / number.denominator : 0;
  }

  std::size_t set_rounds(std::size_t at, std::int64_t value, std::size_t next) {
    if (value < 1 || value > kMostSets) {
      phrases_.bad_value(at, at + 1,
                         fmt::format("{} is not a number of rounds", phrases_.quoted(at, at + 1)),
                         fmt::format("write a whole number from 1 to {}", kMostSets));
      rounds_ = true;
      return 0;
    }
    if (rounds_) return twice(at, next, "number of rounds");
    rounds_ = true;
    circuit_.rounds = value;
    return next;
  }

  std::size_t twice(std::size_t begin, std::size_t end, std::string_view what) {
    phrases_.unreadable(begin, end, fmt::format("this circuit gives the {} twice", what),
                        "leave one out");
    return 0;
  }

  struct Read {
    Duration time;
    std::size_t next = 0;
  };
  // A time at `at`; a number alone has the unit of the seconds before it, where a word of work or
  // rest follows, or is asked about.
  std::optional<Read> time(std::size_t at) {
    if (const auto read = read_time(phrases_.tokens(), at, size_)) {
      if (read->too_large) {
        phrases_.bad_value(
            at, read->next,
            fmt::format("{} is not a time to train for", phrases_.quoted(at, read->next)),
            "write a time of at most 24 hours, in whole thousandths of a second");
        return std::nullopt;
      }
      if (phrases_.is_range_mark(read->next, size_) &&
          read_time(phrases_.tokens(), read->next + 1, size_)) {
        return a_range(at, read->next + 2);
      }
      in_seconds_ = in_seconds_ || read->seconds;
      return Read{read->value, read->next};
    }
    if (!phrases_.is_number(at, size_)) return std::nullopt;
    if (phrases_.is_range_mark(at + 1, size_) && phrases_.is_number(at + 2, size_)) {
      return a_range(at, at + 3);
    }
    const bool behind = is_any(at + 1, "work", "on", "rest", "off", "between", "break", "recovery");
    const bool before = at > 0 && is_any(at - 1, "work", "rest", "on", "off");
    const bool pair = is_kind(at + 1, TokenKind::kSlash) && phrases_.is_number(at + 2, size_);
    if (!behind && !before && !pair) return std::nullopt;
    if (in_seconds_ && whole(at) > 0) return Read{Duration::seconds(whole(at)), at + 1};
    const std::size_t begin = before ? at - 1 : at;
    const std::size_t end = behind ? at + 2 : pair ? at + 3 : at + 1;
    const std::string number = phrases_.words(at, at + 1).text;
    std::string form = fmt::format("{} s", number);
    if (behind) form += " " + phrases_.words(at + 1, at + 2).text;
    if (before) form = phrases_.words(at - 1, at).text + " " + form;
    if (pair) {
      form = fmt::format("{} s on / {} s off", number, phrases_.words(at + 2, at + 3).text);
    }
    phrases_.unreadable(begin, end, fmt::format("{} has no unit", phrases_.quoted(begin, end)),
                        fmt::format("say seconds or minutes: `{}`", form));
    return std::nullopt;
  }
  std::optional<Read> a_range(std::size_t begin, std::size_t end) {
    end = std::min(end, size_);
    if (unit_at(phrases_.tokens(), end, size_)) ++end;
    phrases_.unreadable(begin, end, fmt::format("{} is a range", phrases_.quoted(begin, end)),
                        "choose one number, the one you would call out");
    return std::nullopt;
  }

  // Behind `between rounds`, `after each round`; 0 when nothing of the kind stands there.
  std::size_t behind_between(std::size_t at, bool of_rounds) const {
    if (is_any(at, "in") && is_any(at + 1, "between")) ++at;
    if (!is_any(at, "between", "after", "before")) return 0;
    const std::size_t word = behind_article(at + 1);
    return (of_rounds ? is_round_word(word) : is_station_word(word)) ? word + 1 : 0;
  }

  // `1 min between rounds`, `rest 1 min after each round`, `between rounds: 1 min`
  std::size_t between(std::size_t at) {
    const std::size_t begin = at;
    if (std::size_t value = behind_between(at, true)) {
      if (is_kind(value, TokenKind::kColon)) ++value;
      if (is_any(value, "rest")) ++value;
      const auto read = time(value);
      if (!read) return 0;
      return set_between(read->time, begin,
                         is_any(read->next, "rest") ? read->next + 1 : read->next);
    }
    if (is_any(at, "rest", "break", "recovery")) ++at;
    if (is_kind(at, TokenKind::kColon)) ++at;
    const auto read = read_time(phrases_.tokens(), at, size_);
    if (!read) return 0;
    std::size_t word = read->next;
    if (is_any(word, "of")) ++word;
    if (is_any(word, "rest", "break", "recovery", "off")) ++word;
    const std::size_t next = behind_between(word, true);
    if (next == 0) return 0;
    const auto value = time(at);
    return value ? set_between(value->time, begin, next) : 0;
  }
  std::size_t set_between(Duration value, std::size_t begin, std::size_t next) {
    if (circuit_.between) return twice(begin, next, "rest between rounds");
    circuit_.between = value;
    rest_word_ = station_words_ = true;
    return next;
  }

  // Behind a word for the rest of a station: `rest`, `off`, `to change`, `changeover`.
  std::size_t behind_rest_word(std::size_t at) const {
    if (is_any(at, "of")) ++at;
    if (is_any(at, "to") && is_any(at + 1, "change", "move", "swap", "rotate")) {
      ++at;
      return is_any(at + 1, "stations", "over", "on") ? at + 2 : at + 1;
    }
    if (is_any(at, "rest", "off", "break", "recovery", "recover", "change", "changeover",
               "change-over", "transition")) {
      return at + 1;
    }
    return 0;
  }

  // `15 s rest`, `rest 15 s`, `15 s off`, `15 s between stations`, `no rest`
  std::size_t rest(std::size_t at) {
    const std::size_t begin = at;
    if (is_any(at, "no") && is_any(at + 1, "rest", "rests")) {
      return set_rest(Duration(), begin, behind_stations(at + 2));
    }
    const bool before = is_any(at, "rest", "off", "break", "recovery");
    if (before) ++at;
    while (before && (is_kind(at, TokenKind::kColon) || is_any(at, "of", "for"))) ++at;
    const bool slashed = begin > 0 && is_kind(begin - 1, TokenKind::kSlash) && circuit_.work;
    const bool number = phrases_.is_number(at, size_) || is_kind(at, TokenKind::kClock);
    if (!number && !read_time(phrases_.tokens(), at, size_)) return 0;
    if (!before && !slashed && !is_rest_behind(at)) return 0;
    const auto read = time(at);
    if (!read) return 0;
    std::size_t next = read->next;
    if (const std::size_t word = before ? 0 : behind_rest_word(next)) next = word;
    return set_rest(read->time, begin, behind_stations(next));
  }
  // Whether the time or bare number at `at` is followed by a word of rest.
  bool is_rest_behind(std::size_t at) const {
    const auto read = read_time(phrases_.tokens(), at, size_);
    const std::size_t next = read ? read->next : at + 1;
    return behind_rest_word(next) > 0 || behind_between(next, false) > 0;
  }
  std::size_t behind_stations(std::size_t at) {
    std::size_t next = behind_between(at, false);
    if (next == 0 && is_any(at, "in") && is_any(at + 1, "between")) next = at + 2;
    if (next == 0 && is_any(at, "between") &&
        (at + 1 == size_ || is_kind(at + 1, TokenKind::kComma))) {
      next = at + 1;
    }
    if (next > 0) rest_is_stations_ = true;
    return next > 0 ? next : at;
  }
  std::size_t set_rest(Duration value, std::size_t begin, std::size_t next) {
    if (circuit_.rest) return twice(begin, next, "rest");
    circuit_.rest = value;
    rest_at_ = {begin, next};
    rest_word_ = true;
    return next;
  }

  // `30 s work`, `30 s on`, `work 30 s`, `30 s at each station`, `30 s each`, or a time alone
  std::size_t work(std::size_t at) {
    const std::size_t begin = at;
    const bool before = is_any(at, "work", "on");
    if (before) ++at;
    while (before && (is_kind(at, TokenKind::kColon) || is_any(at, "of", "for"))) ++at;
    const auto read = time(at);
    if (!read) return 0;
    std::size_t next = read->next;
    if (is_any(next, "of")) ++next;
    bool word = before;
    if (is_any(next, "work", "working") ||
        (is_any(next, "on") && !is_any(next + 1, "each", "every", "the"))) {
      word = true;
      ++next;
    }
    const std::size_t station = behind_article(is_any(next, "at", "on") ? next + 1 : next);
    if (is_station_word(station)) {
      station_words_ = true;
      next = station + 1;
    } else if (is_any(next, "each")) {
      ++next;
    }
    work_word_ = work_word_ || word;
    if (circuit_.work) return twice(begin, next, "time of work");
    if (read->time <= Duration()) {
      phrases_.bad_value(begin, next,
                         fmt::format("{} is no time at all", phrases_.quoted(begin, next)),
                         "write a time above zero, such as `30 s work`");
      return 0;
    }
    circuit_.work = read->time;
    return next;
  }

  Phrases phrases_;
  std::size_t size_;
  BareRounds bare_;
  Circuit circuit_;
  std::size_t stuck_ = 0;
  TokenRange rest_at_;
  bool rounds_ = false;
  bool work_word_ = false;
  bool rest_word_ = false;
  bool station_words_ = false;
  bool rest_is_stations_ = false;
  bool in_seconds_ = false;
};

}  // namespace

tl::expected<std::optional<CircuitRead>, DoseProblem> parse_circuit(const source::Text& text,
                                                                    BareRounds bare) {
  if (text.str().size() > kLongestDose) return std::nullopt;
  CircuitReader reader(text, bare);
  const bool whole = reader.read();
  const bool may_be_dose = parse_dose(text).has_value();
  if (whole && reader.evident() && !reader.rest_unclear()) {
    CircuitRead out{reader.circuit(), may_be_dose, reader.has_rounds()};
    out.circuit.span = text.span();
    return out;
  }
  const bool half = whole ? reader.evident() : reader.begun();
  if (!half || may_be_dose) return std::nullopt;
  return tl::unexpected(reader.problem());
}

}  // namespace chalkleaf::plan
