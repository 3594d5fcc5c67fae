// The phrases a dose is made of: `2 x`, `20 s`, `rest 20 s`, `each side`, … — one function each,
// tried in the order of one table. Inside the room; others use plan/read.h.
//
// Adding a form is adding a phrase. They stand in four files: phrases.cpp (what is said beside
// the amount), amounts.cpp (amounts and sets), sides.cpp, and shorthand.cpp (trade
// shorthand, spelled out or refused). Tested by tests/plan/dose_test.cpp and
// dose_corpus_test.cpp.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dose/parser.h"
#include "dose/times.h"
#include "dose/tokens.h"

namespace chalkleaf::dose {

/// A stretch of tokens that a message may point at; empty when there was none.
struct TokenRange {
  std::size_t begin = 0;
  std::size_t end = 0;
  explicit operator bool() const { return end > begin; }
};

/// What has been read so far.
struct DoseState {
  Dose dose;
  bool has_amount = false;
  bool has_sets = false;
  bool ways_open = false;   ///< behind `each way:`, words are names of ways
  bool in_seconds = false;  ///< a time in seconds was written: `rest 20` behind it means seconds
  std::optional<Duration> cap;
  TokenRange cap_at;            ///< `up to 15 s`
  TokenRange tempo_at;          ///< `tempo 3-0-1-0`
  TokenRange pace_at;           ///< `pace 3 s`
  TokenRange hold_at;           ///< `hold` whose time is still to come: `hold 3 x 20 s`
  TokenRange as_many_at;        ///< `AMRAP`, `as many as possible`
  TokenRange minute_at;         ///< `EMOM`
  TokenRange between_sides_at;  ///< `rest 10 s between sides`
};

/// Reads phrases from tokens into a state. Does not own the text.
class Phrases {
 public:
  explicit Phrases(const source::Text& text);

  /// Reads as many phrases as stand between two tokens; returns where it could not go on.
  std::size_t read(std::size_t at, std::size_t end);

  DoseState state;
  std::optional<DoseProblem> problem;  ///< the first one; nothing is read behind it
  bool refused = false;                ///< the problem holds even where the words could be a remark

  const std::vector<Token>& tokens() const { return tokens_; }
  /// Puts one token of kind kMoves in the place of others; `moves` are what it stands for.
  void replace_by_moves(TokenRange at, std::vector<Move> moves);

  /// An amount and where it ends, read without touching the state.
  struct AmountRead {
    Amount amount;
    std::size_t next = 0;
  };
  std::optional<AmountRead> read_amount(std::size_t at, std::size_t end);
  /// Where `each leg`, `L/R` or `left and right` ends, and which sides it means.
  struct SidesRead {
    Sides sides;
    std::size_t next;
  };
  std::optional<SidesRead> read_sides(std::size_t at, std::size_t end) const;
  /// True when the tokens are nothing but phrases of a dose, whatever was read before.
  bool is_dose_clause(std::size_t begin, std::size_t end);

  bool is_number(std::size_t at, std::size_t end) const;
  bool is_times(std::size_t at, std::size_t end) const;
  bool is_kind(std::size_t at, std::size_t end, TokenKind kind) const {
    return at < end && tokens_[at].is(kind);
  }
  bool is_sign(std::size_t at, std::size_t end, std::string_view sign) const {
    return at < end && tokens_[at].is_sign(sign);
  }
  bool is_range_mark(std::size_t at, std::size_t end) const;
  /// True when the dash at `at` has space on both sides.
  bool is_spaced_dash(std::size_t at) const;
  /// True when a comma stands in `10 left, 10 right`.
  bool joins_left_and_right(std::size_t comma) const;
  bool has_digits(std::size_t begin, std::size_t end) const;
  /// True when the tokens speak of sides, legs, arms or ways.
  bool speaks_of_sides(std::size_t begin, std::size_t end) const;
  /// True when they begin like `each leg` or `on each leg`, whatever follows.
  bool begins_with_each_side(std::size_t at, std::size_t end) const;
  template <class... Wanted>
  bool is_any(std::size_t at, std::size_t end, Wanted... wanted) const {
    return (is_word(at, end, wanted) || ...);
  }
  bool is_sets_word(std::size_t at, std::size_t end) const;
  /// The text of tokens, for a message and for the model.
  std::string quoted(std::size_t begin, std::size_t end) const;
  Words words(std::size_t begin, std::size_t end) const;
  /// The same as a remark, with trade shorthand spelled out.
  Words remark(std::size_t begin, std::size_t end) const;
  void unreadable(std::size_t begin, std::size_t end, std::string message, std::string hint);
  void bad_value(std::size_t begin, std::size_t end, std::string message, std::string hint);
  /// Unreadable for good: never taken for a remark.
  std::size_t refuse(std::size_t begin, std::size_t end, std::string message, std::string hint);

 private:
  /// Reads a phrase at `at` before `end` and returns where it stopped; 0 when it is none.
  using Phrase = std::size_t (Phrases::*)(std::size_t at, std::size_t end);

  std::optional<SidesRead> left_and_right(std::size_t at, std::size_t end) const;
  std::optional<Sides> side_word(std::size_t at, std::size_t end) const;

  bool is_word(std::size_t at, std::size_t end, std::string_view word) const;
  bool begins_amount(std::size_t at, std::size_t end) const;
  void join_sentences();
  void fail(DoseProblem::Kind kind, std::size_t begin, std::size_t end, std::string message,
            std::string hint);
  std::size_t too_long(std::size_t begin, std::size_t end);
  std::size_t a_range(std::size_t begin, std::size_t end);
  std::size_t time_after(std::size_t keyword, std::size_t at, std::size_t end, Duration& out);
  bool is_fit(const TimeRead& time, std::size_t begin);
  template <class T>
  std::size_t once(std::optional<T>& slot, T value, std::string_view what, std::size_t begin,
                   std::size_t end) {
    if (slot) {
      unreadable(begin, end, twice_message(what), "leave one out");
    }
    slot = value;
    return end;
  }
  static std::string twice_message(std::string_view what);
  std::size_t positive(Duration time, std::size_t begin, std::size_t end);
  std::optional<std::int64_t> count(std::size_t at, std::int64_t most, std::string_view what);
  std::size_t set_sets(std::size_t number, std::size_t next, bool goes);
  std::size_t set_amount(Amount amount, std::size_t begin, std::size_t next);
  std::size_t set_cap(Duration time, std::size_t begin, std::size_t end);
  enum class Written { kPlain, kTimes };  ///< `10`, or `x 10`
  std::size_t counted(std::size_t at, std::size_t end, Written written);
  std::size_t ladder(std::size_t at, std::size_t end) const;
  std::optional<std::size_t> count_word(std::size_t at, std::size_t end, Amount& amount) const;
  std::size_t timed(std::size_t begin, std::size_t at, std::size_t end, bool held);

  /// A time or a range of two, `20–30 s`.
  struct Times {
    TimeRead first;
    std::optional<Duration> to;
    std::size_t next = 0;
  };
  std::optional<Times> read_times(std::size_t at, std::size_t end) const;
  bool is_rest_word(std::size_t at, std::size_t end) const;
  std::size_t behind_between(std::size_t at, std::size_t end);
  std::size_t rest_joiners(std::size_t at, std::size_t end) const;
  std::size_t bare_rest(std::size_t begin, std::size_t at, std::size_t end);

  std::size_t shorthand(std::size_t at, std::size_t end);
  std::size_t refused_words(std::size_t at, std::size_t end);
  std::size_t refused_numbers(std::size_t at, std::size_t end);
  std::size_t two_numbers(std::size_t at, std::size_t end);
  std::size_t on_the_minute(std::size_t at, std::size_t end);
  std::size_t as_many(std::size_t at, std::size_t end);
  std::size_t manner(std::size_t at, std::size_t end);
  std::size_t left_then_right(std::size_t at, std::size_t end);
  std::size_t each_gymnast(std::size_t at, std::size_t end);
  std::size_t moves(std::size_t at, std::size_t end);
  std::size_t rest(std::size_t at, std::size_t end);
  std::size_t sides(std::size_t at, std::size_t end);
  std::size_t tempo(std::size_t at, std::size_t end);
  std::size_t pace(std::size_t at, std::size_t end);
  std::size_t pace_each(std::size_t at, std::size_t end);
  std::size_t every(std::size_t at, std::size_t end);
  std::size_t effort(std::size_t at, std::size_t end);
  std::size_t up_to(std::size_t at, std::size_t end);
  std::size_t sets(std::size_t at, std::size_t end);
  std::size_t max_hold(std::size_t at, std::size_t end);
  std::size_t amount(std::size_t at, std::size_t end);
  std::size_t again(std::size_t at, std::size_t end);

  const source::Text& text_;
  std::vector<Token> tokens_;
  std::vector<Move> moves_;  ///< of the one kMoves token
};

}  // namespace chalkleaf::dose
