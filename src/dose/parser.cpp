// See the header.
#include "dose/parser.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"
#include "dose/moves.h"
#include "dose/phrases.h"
#include "dose/words_of.h"

namespace chalkleaf::dose {
namespace {

// Clauses without a number that mean something: a slip in one must not pass for a remark.
constexpr std::array<std::string_view, 12> kWordClauses{
    "each side", "each way",  "each leg",        "each arm", "each direction", "both sides",
    "both ways", "both legs", "both directions", "per side", "max hold",       "no rest"};
const std::vector<std::string> kKeywords{"rest", "tempo",   "pace",    "effort",  "every", "hold",
                                         "max",  "each",    "both",    "reps",    "steps", "goes",
                                         "sets", "lengths", "seconds", "minutes", "rounds"};

class Parser {
 public:
  explicit Parser(const source::Text& text)
      : text_(text), phrases_(text), tokens_(phrases_.tokens()), state_(phrases_.state) {}

  tl::expected<Dose, DoseProblem> run(MovesIn where) {
    gather_moves(phrases_, where);
    for (std::size_t at = 0; at <= tokens_.size() && !phrases_.problem;) {
      std::size_t end = at;
      while (end < tokens_.size() && !divides(end)) ++end;
      if (end > at) clause(at, end);
      at = end + 1;
    }
    if (!phrases_.problem) finish();
    if (phrases_.problem) return tl::unexpected(std::move(*phrases_.problem));
    return std::move(state_.dose);
  }

 private:
  static bool is_divider(const Token& token) {
    return token.is(TokenKind::kComma) || token.is(TokenKind::kSemicolon) ||
           token.is(TokenKind::kOpen) || token.is(TokenKind::kClose);
  }

  bool divides(std::size_t i) const {
    return is_divider(tokens_[i]) && !phrases_.joins_left_and_right(i);
  }

  void clause(std::size_t begin, std::size_t end) {
    while (end > begin + 1 && tokens_[end - 1].is(TokenKind::kStop)) --end;
    // `– slow`; but `-5` is no dose.
    while (begin + 1 < end && tokens_[begin].is(TokenKind::kDash) &&
           tokens_[begin].end < tokens_[begin + 1].begin) {
      ++begin;
    }
    const DoseState before = state_;
    std::size_t stuck = phrases_.read(begin, end);
    // `3 x 20 s – slow`: a dash with space around it parts clauses too.
    if (stuck > begin && stuck < end && !phrases_.problem && phrases_.is_spaced_dash(stuck)) {
      return clause(stuck + 1, end);
    }
    if (stuck == end && !phrases_.problem) {
      if (before.ways_open) state_.ways_open = false;  // `forwards, backwards, rest 20 s`
      return;
    }
    if (phrases_.has_digits(begin, end)) {
      if (!phrases_.problem) explain(begin, stuck, end);
    } else if (phrases_.refused) {
      return;
    } else if (!phrases_.problem || !phrases_.is_dose_clause(begin, end)) {
      // A clause that clashes with the rest of the dose is a mistake only where it could be read on
      // its own: `one leg at a time` begins like a second amount and is a remark.
      phrases_.problem.reset();
      state_ = before;
      word_clause(begin, end);
    }
  }

  // Words without a number: the name of a way, or a remark.
  void word_clause(std::size_t begin, std::size_t end) {
    const Words said = phrases_.words(begin, end);
    for (const std::string_view known : kWordClauses) {
      if (edit_distance(lower_ascii(said.text), known) == 1) {
        return phrases_.unreadable(begin, end,
                                   fmt::format("{} is not known here", phrases_.quoted(begin, end)),
                                   fmt::format("did you mean `{}`?", known));
      }
    }
    if (end == begin + 1 &&
        phrases_.is_any(begin, end, "rest", "tempo", "pace", "effort", "every")) {
      return phrases_.unreadable(
          begin, end, fmt::format("{} has no number", phrases_.quoted(begin, end)), kDoseForms);
    }
    if (!state_.ways_open && phrases_.begins_with_each_side(begin, end)) {
      return phrases_.unreadable(
          begin, end, fmt::format("{} is not known here", phrases_.quoted(begin, end)),
          "write `each side`, `each leg`, `each arm` or `each way` alone between commas; say the "
          "rest in a `note:` below the drill");
    }
    if (state_.ways_open) {
      state_.dose.ways.push_back(said);
    } else {
      state_.dose.remarks.push_back(phrases_.remark(begin, end));
    }
  }

  void explain(std::size_t begin, std::size_t stuck, std::size_t end) {
    const std::string clause_text = phrases_.quoted(begin, end);
    if (phrases_.is_times(stuck, end) && stuck + 1 == end) {
      return phrases_.unreadable(begin, end, fmt::format("{} does not say how much", clause_text),
                                 kDoseForms);
    }
    phrases_.unreadable(begin, end, fmt::format("{} cannot be read as a dose", clause_text),
                        hint_for(begin, stuck, end));
  }

  std::string hint_for(std::size_t begin, std::size_t stuck, std::size_t end) const {
    const Token& odd = tokens_[stuck];
    if (phrases_.is_any(stuck, end, "m", "metre", "metres", "meter", "meters", "km", "yards")) {
      return "write `min` for minutes; distances are `steps` or `lengths`";
    }
    if (odd.is(TokenKind::kWord) && odd.word.size() > 2) {
      const auto meant = closest(odd.word, kKeywords);
      if (meant && *meant != odd.word) return fmt::format("did you mean `{}`?", *meant);
    }
    if (stuck > begin && phrases_.speaks_of_sides(stuck, end)) {
      return "write `each side`, `each leg`, `each arm` or `each way` behind the amount";
    }
    if (stuck > begin && odd.is(TokenKind::kWord) && !phrases_.has_digits(stuck, end)) {
      return fmt::format("put a comma before {} if it is a remark; {}", phrases_.quoted(stuck, end),
                         kDoseForms);
    }
    return kDoseForms;
  }

  void finish() {
    Dose& dose = state_.dose;
    if (tokens_.empty()) {
      phrases_.problem = DoseProblem{DoseProblem::Kind::kUnreadable, 0, text_.str().size(),
                                     "there is no dose here", kDoseForms};
      return;
    }
    const std::size_t end = tokens_.size();
    if (state_.as_many_at && !dose.amount.as_many) {
      return phrases_.unreadable(
          state_.as_many_at.begin, state_.as_many_at.end,
          fmt::format("{} does not say for how long",
                      phrases_.quoted(state_.as_many_at.begin, state_.as_many_at.end)),
          "write the time in which as many good ones as possible are done: `AMRAP 30 s`");
    }
    if (!state_.has_amount && state_.has_sets && dose.in_goes) {  // `3 goes`: a go is doing it once
      state_.has_amount = true;
      dose.amount.count = 1;
    }
    if (!state_.has_amount) {
      const std::string all = phrases_.quoted(0, end);
      if (phrases_.has_digits(0, end)) {  // all of it was read, but no phrase was an amount
        return phrases_.unreadable(0, end, fmt::format("{} does not say how much", all),
                                   kDoseForms);
      }
      return phrases_.unreadable(
          0, end, fmt::format("{} cannot be read as a dose", all),
          fmt::format("{}; if these words are not a dose, write a dash instead of the colon",
                      kDoseForms));
    }
    if (!finish_shorthand()) return;
    if (state_.cap) {
      if (dose.amount.kind != AmountKind::kMaxHold) {
        return phrases_.unreadable(state_.cap_at.begin, state_.cap_at.end,
                                   "only a `max hold` can have a cap",
                                   "write `max hold, up to 15 s`, or the time alone");
      }
      dose.amount.time = state_.cap;
    }
    check_speed();
    if (phrases_.problem) return;
    if (dose.ways.size() == 1) split_way();
    dose.span = text_.span(tokens_.front().begin, tokens_.back().end);
  }

  // What shorthand needs besides, which may stand in another clause; false, and a problem, when it
  // is missing.
  bool finish_shorthand() {
    if (state_.minute_at && !state_.has_sets) {
      phrases_.unreadable(
          state_.minute_at.begin, state_.minute_at.end,
          fmt::format("{} does not say for how many minutes",
                      phrases_.quoted(state_.minute_at.begin, state_.minute_at.end)),
          "write how often: `EMOM 6 min, 5 reps`, or `6 x 5, every 1 min`");
    } else if (state_.hold_at) {
      phrases_.unreadable(state_.hold_at.begin, tokens_.size(), "this hold does not say how long",
                          "write the seconds of one hold: `3 x 20 s hold`, `hold 20–30 s`");
    } else if (state_.between_sides_at && state_.dose.sets > 1) {
      phrases_.unreadable(state_.between_sides_at.begin, state_.between_sides_at.end,
                          "a rest between the sides is counted in a single set only",
                          "write `rest 20 s` for a rest between the sets, and say the rest between "
                          "the sides in a `note:` below the drill");
    }
    return !phrases_.problem;
  }

  // A tempo or a pace gives the time of one repetition: only one of them can, and only where there
  // are repetitions.
  void check_speed() {
    const Dose& dose = state_.dose;
    if (dose.tempo && dose.pace) {
      return phrases_.unreadable(state_.pace_at.begin, state_.pace_at.end,
                                 "this dose has a tempo and a pace",
                                 "keep one of the two: both say how long one repetition takes");
    }
    const AmountKind kind = dose.amount.kind;
    const bool timed = kind == AmountKind::kTime || kind == AmountKind::kMaxHold ||
                       (kind == AmountKind::kMoves &&
                        std::all_of(dose.moves.begin(), dose.moves.end(), [](const Move& move) {
                          return move.amount.kind == AmountKind::kTime;
                        }));
    if (dose.tempo && kind == AmountKind::kMoves) {
      return phrases_.unreadable(state_.tempo_at.begin, state_.tempo_at.end,
                                 "a tempo is the time of one repetition",
                                 "leave it out, or give the move that has a tempo a line of its "
                                 "own");
    }
    if (dose.tempo && kind != AmountKind::kRepetitions) {
      return phrases_.unreadable(
          state_.tempo_at.begin, state_.tempo_at.end, "a tempo is the time of one repetition",
          timed ? "leave it out, or write the amount in repetitions: `10 reps, tempo 3-0-1-0`"
                : "write `pace` and the time of one step or length: `20 steps, pace 2 s`");
    }
    if (dose.pace && timed) {
      return phrases_.unreadable(
          state_.pace_at.begin, state_.pace_at.end,
          "a pace is the time of one repetition, step or length",
          "leave it out, or write the amount as a number: `10 reps, pace 3 s`");
    }
  }

  // `each way: forwards and backwards` names two.
  void split_way() {
    std::size_t colon = 0;
    while (!tokens_[colon].is(TokenKind::kColon)) ++colon;
    std::size_t end = colon + 1;
    while (end < tokens_.size() && !is_divider(tokens_[end])) ++end;
    for (std::size_t i = colon + 2; i + 1 < end; ++i) {
      if (!tokens_[i].is_word("and")) continue;
      state_.dose.ways = {phrases_.words(colon + 1, i), phrases_.words(i + 1, end)};
      return;
    }
  }

  const source::Text& text_;
  Phrases phrases_;
  const std::vector<Token>& tokens_;
  DoseState& state_;
};

}  // namespace

tl::expected<Dose, DoseProblem> parse_dose(const source::Text& text) {
  if (text.str().size() > kLongestDose) {
    return tl::unexpected(DoseProblem{DoseProblem::Kind::kUnreadable, 0, text.str().size(),
                                      "this is too long to be a dose", kDoseForms});
  }
  return Parser(text).run(MovesIn::kDose);
}

std::optional<Dose> parse_moves_line(const source::Text& text) {
  if (text.str().size() > kLongestDose) return std::nullopt;
  auto dose = Parser(text).run(MovesIn::kLine);
  if (!dose || dose->amount.kind != AmountKind::kMoves) return std::nullopt;
  return std::move(*dose);
}

}  // namespace chalkleaf::dose
