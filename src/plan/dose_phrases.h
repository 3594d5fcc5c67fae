// The phrases a dose is made of: `2 x`, `20 s`, `rest 20 s`, `each side`, … — one function each,
// tried in the order of one table. Inside the room; others use plan/read.h.
//
// Adding a form is adding a phrase. Tested by tests/plan/dose_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/dose_parser.h"
#include "plan/tokens.h"

namespace chalkleaf::plan {

/// What has been read so far.
struct DoseState {
  Dose dose;
  bool has_amount = false;
  bool has_sets = false;
  bool ways_open = false;  ///< behind `each way:`, words are names of ways
  std::optional<Duration> cap;
  std::size_t cap_begin = 0;  ///< tokens of `up to 15 s`
  std::size_t cap_end = 0;
  std::size_t tempo_begin = 0;  ///< tokens of `tempo 3-0-1-0`, and of `pace 3 s`
  std::size_t tempo_end = 0;
  std::size_t pace_begin = 0;
  std::size_t pace_end = 0;
};

/// Reads phrases from tokens into a state. Does not own the text.
class Phrases {
 public:
  explicit Phrases(const source::Text& text);

  /// Reads as many phrases as stand between two tokens; returns where it could not go on.
  std::size_t read(std::size_t at, std::size_t end);

  DoseState state;
  std::optional<DoseProblem> problem;  ///< the first one; nothing is read behind it

  const std::vector<Token>& tokens() const { return tokens_; }
  bool is_number(std::size_t at, std::size_t end) const;
  bool is_times(std::size_t at, std::size_t end) const;
  bool has_digits(std::size_t begin, std::size_t end) const;
  /// True when the tokens speak of sides, legs, arms or ways.
  bool speaks_of_sides(std::size_t begin, std::size_t end) const;
  /// True when they begin like `each leg` or `on each leg`, whatever follows.
  bool begins_with_each_side(std::size_t at, std::size_t end) const;
  template <class... Wanted>
  bool is_any(std::size_t at, std::size_t end, Wanted... wanted) const {
    return (is_word(at, end, wanted) || ...);
  }
  /// The text of tokens, for a message and for the model.
  std::string quoted(std::size_t begin, std::size_t end) const;
  Words words(std::size_t begin, std::size_t end) const;
  void unreadable(std::size_t begin, std::size_t end, std::string message, std::string hint);
  void bad_value(std::size_t begin, std::size_t end, std::string message, std::string hint);

 private:
  /// Reads a phrase at `at` before `end` and returns where it stopped; 0 when it is none.
  using Phrase = std::size_t (Phrases::*)(std::size_t at, std::size_t end);

  /// Where `each leg`, `L/R` or `left and right` ends, and which sides it means.
  struct SidesRead {
    Sides sides;
    std::size_t next;
  };
  std::optional<SidesRead> read_sides(std::size_t at, std::size_t end) const;
  std::optional<SidesRead> left_and_right(std::size_t at, std::size_t end) const;
  std::optional<Sides> side_word(std::size_t at, std::size_t end) const;

  bool is_word(std::size_t at, std::size_t end, std::string_view word) const;
  bool is_sets_word(std::size_t at, std::size_t end) const;
  bool begins_amount(std::size_t at, std::size_t end) const;
  void fail(DoseProblem::Kind kind, std::size_t begin, std::size_t end, std::string message,
            std::string hint);
  std::size_t too_long(std::size_t begin, std::size_t end);
  std::size_t time_after(std::size_t keyword, std::size_t at, std::size_t end, Duration& out);
  template <class T>
  std::size_t once(std::optional<T>& slot, T value, std::string_view what, std::size_t begin,
                   std::size_t end);
  std::size_t positive(Duration time, std::size_t begin, std::size_t end);
  std::optional<std::int64_t> count(std::size_t at, std::int64_t most, std::string_view what);
  std::size_t set_sets(std::size_t number, std::size_t next, bool goes);
  std::size_t set_amount(Amount amount, std::size_t begin, std::size_t next);
  std::size_t counted(std::size_t at, std::size_t end);

  std::size_t rest(std::size_t at, std::size_t end);
  std::size_t sides(std::size_t at, std::size_t end);
  std::size_t tempo(std::size_t at, std::size_t end);
  std::size_t pace(std::size_t at, std::size_t end);
  std::size_t every(std::size_t at, std::size_t end);
  std::size_t effort(std::size_t at, std::size_t end);
  std::size_t up_to(std::size_t at, std::size_t end);
  std::size_t sets(std::size_t at, std::size_t end);
  std::size_t max_hold(std::size_t at, std::size_t end);
  std::size_t amount(std::size_t at, std::size_t end);
  std::size_t again(std::size_t at, std::size_t end);

  const source::Text& text_;
  std::vector<Token> tokens_;
};

}  // namespace chalkleaf::plan
