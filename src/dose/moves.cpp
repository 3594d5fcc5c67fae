// See the header.
#include "dose/moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"

namespace chalkleaf::dose {
namespace {

constexpr const char* kMovesForm =
    "write several moves in a row as `10 star jumps, 10 high knees`, and what is done again in "
    "brackets: `2 x (10 star jumps, 10 high knees), rest 30 s`";

// Words that begin something else than the name of a move.
constexpr std::array<std::string_view, 46> kNoName{
    "amrap", "attempts", "between", "break",   "bw",     "each",    "effort",   "emom",
    "every", "failure",  "go",      "goes",    "hold",   "kg",      "kgs",      "l",
    "lap",   "laps",     "left",    "lengths", "lots",   "max",     "no",       "of",
    "off",   "on",       "pace",    "per",     "r",      "recover", "recovery", "reps",
    "rest",  "rests",    "right",   "round",   "rounds", "set",     "sets",     "steps",
    "tempo", "times",    "to",      "tries",   "up",     "work"};
// Slips of these are no names either: `10 rpes`.
constexpr std::array<std::string_view, 8> kCounted{"reps",    "steps", "lengths", "rest",
                                                   "seconds", "secs",  "minutes", "goes"};
// Counted, these are kit or people standing ready, not moves.
constexpr std::array<std::string_view, 103> kThings{
    "adult",   "adults",   "aider",   "aiders",   "ball",     "balls",       "band",
    "bands",   "bar",      "bars",    "beam",     "beams",    "beanbag",     "beanbags",
    "bench",   "benches",  "bib",     "bibs",     "blanket",  "blankets",    "block",
    "blocks",  "book",     "books",   "bottle",   "bottles",  "box",         "boxes",
    "carpet",  "chair",    "chairs",  "child",    "children", "coach",       "coaches",
    "cone",    "cones",    "cushion", "cushions", "day",      "days",        "drink",
    "group",   "groups",   "gymnast", "gymnasts", "helper",   "helpers",     "hoop",
    "hoops",   "line",     "lines",   "mat",      "mats",     "minute",      "month",
    "months",  "pair",     "pairs",   "parent",   "parents",  "pen",         "pencil",
    "pencils", "people",   "pillow",  "pillows",  "point",    "points",      "ribbon",
    "ribbons", "rope",     "ropes",   "row",      "rows",     "sheet",       "sheets",
    "sock",    "socks",    "sofa",    "spot",     "spots",    "springboard", "springboards",
    "station", "stations", "stool",   "stools",   "table",    "tables",      "tape",
    "team",    "teams",    "towel",   "towels",   "toy",      "toys",        "wall",
    "walls",   "week",     "weeks",   "year",     "years"};
// Behind these a number in a name is part of it: `10 jumps over 2 hoops`.
constexpr std::array<std::string_view, 12> kBeforeNumber{"over", "on",     "between", "from",
                                                         "in",   "round",  "around",  "off",
                                                         "onto", "across", "past",    "by"};

template <std::size_t N>
bool is_one_of(const std::array<std::string_view, N>& words, const Token& token) {
  return token.is(TokenKind::kWord) &&
         std::find(words.begin(), words.end(), token.word) != words.end();
}

class Finder {
 public:
  Finder(Phrases& phrases, MovesIn where) : phrases_(phrases), where_(where) {}

  bool run() {
    for (std::size_t i = 0; i < size(); ++i) {
      if (token(i).is(TokenKind::kOpen) && in_brackets(i)) return true;
      if (phrases_.problem) return false;
    }
    return without_brackets();
  }

 private:
  /// How the moves of one row are written; a row does not mix the two.
  enum class Order { kAmountFirst, kNameFirst };
  struct Piece {
    TokenRange at;
    std::optional<Move> move;
    Order order = Order::kAmountFirst;
  };

  std::size_t size() const { return phrases_.tokens().size(); }
  const Token& token(std::size_t i) const { return phrases_.tokens()[i]; }
  bool is_amount_start(std::size_t i, std::size_t end) const {
    return i < end && (token(i).is(TokenKind::kNumber) || token(i).is(TokenKind::kClock));
  }

  // The length of what parts two moves at `i`: a comma, or `then`, `and`, `+`, `/` before a number;
  // 0 when nothing does.
  std::size_t parted_at(std::size_t i, std::size_t end) const {
    if (token(i).is(TokenKind::kComma) || token(i).is(TokenKind::kSemicolon)) {
      if (phrases_.joins_left_and_right(i)) return 0;
      const bool joined = phrases_.is_any(i + 1, end, "then", "and") && is_amount_start(i + 2, end);
      return joined ? 2 : 1;
    }
    const bool sign =
        token(i).is_sign("+") || token(i).is_sign("&") || token(i).is(TokenKind::kSlash);
    const bool word = phrases_.is_any(i, end, "then", "and", "plus");
    // Not the slash of `1/2 min`, the dash of a range, or `1 min and 30 s`.
    const bool number_before = i > 0 && token(i - 1).is(TokenKind::kNumber);
    const bool unit_before = i > 0 && unit_at(phrases_.tokens(), i - 1, end);
    return (sign || word) && !number_before && !unit_before && is_amount_start(i + 1, end) ? 1 : 0;
  }

  // `10 high knees rest 30 s`, `10 high knees with 30 s rest`
  bool is_rest_without_comma(std::size_t i, std::size_t end) const {
    return phrases_.is_any(i, end, "rest", "with") &&
           read_time(phrases_.tokens(), i + 1, end).has_value();
  }

  // The pieces between `begin` and `end`, brackets inside them kept whole.
  std::vector<TokenRange> pieces(std::size_t begin, std::size_t end) const {
    std::vector<TokenRange> out;
    std::size_t depth = 0;
    std::size_t from = begin;
    for (std::size_t i = begin; i < end; ++i) {
      if (token(i).is(TokenKind::kOpen)) ++depth;
      if (token(i).is(TokenKind::kClose) && depth > 0) --depth;
      if (depth == 0 && i > from && is_rest_without_comma(i, end)) {
        out.push_back({from, i});
        from = i;
      }
      const std::size_t parts = depth == 0 ? parted_at(i, end) : 0;
      if (parts == 0) continue;
      if (i > from) out.push_back({from, i});
      from = i + parts;
      i = from - 1;
    }
    if (end > from) out.push_back({from, end});
    return out;
  }

  // Where the sides at the end of a move begin, brackets and all; `end` when it names none.
  std::size_t sides_begin(std::size_t begin, std::size_t end, Sides& out) const {
    const bool bracketed = token(end - 1).is(TokenKind::kClose);
    const std::size_t last = bracketed ? end - 1 : end;
    for (std::size_t i = begin; i < last; ++i) {
      const auto sides = phrases_.read_sides(i, last);
      if (!sides || sides->next != last) continue;
      if (bracketed && (i == begin || !token(i - 1).is(TokenKind::kOpen))) continue;
      out = sides->sides;
      return bracketed ? i - 1 : i;
    }
    return end;
  }

  bool is_name(std::size_t begin, std::size_t end, Order order) const {
    if (begin >= end || !token(begin).is(TokenKind::kWord)) return false;
    if (is_one_of(kNoName, token(begin)) ||
        phrases_.is_any(end - 1, end, "of", "sets", "x", "each", "ea", "per", "both")) {
      return false;
    }
    if (end == begin + 1) {
      for (const std::string_view known : kCounted) {
        if (edit_distance(token(begin).word, known) == 1) return false;
      }
    }
    for (std::size_t i = begin; i < end; ++i) {
      if (token(i).is(TokenKind::kColon) || phrases_.is_times(i, end)) return false;
      if (phrases_.is_any(i, end, "once", "twice", "amrap", "emom", "failure")) return false;
      const bool number =
          token(i).is(TokenKind::kClock) || (token(i).is(TokenKind::kNumber) && !token(i).in_words);
      if (!number) continue;
      if (order == Order::kNameFirst || !is_one_of(kBeforeNumber, token(i - 1))) return false;
      if (unit_at(phrases_.tokens(), i + 1, end)) return false;
    }
    return true;
  }

  // `2 hoops`, `1 large sofa cushion`; not `5 jumps over cones`.
  bool is_thing(const Amount& amount, std::size_t begin, std::size_t end) const {
    if (amount.kind != AmountKind::kRepetitions || !amount.bare_number) return false;
    for (std::size_t i = begin; i < end; ++i) {
      if (is_one_of(kBeforeNumber, token(i)) || phrases_.is_any(i, end, "with", "to")) return false;
    }
    return is_one_of(kThings, token(end - 1));
  }

  std::optional<Move> amount_first(TokenRange at) {
    const auto read = phrases_.read_amount(at.begin, at.end);
    if (!read) return std::nullopt;
    Move move;
    move.amount = read->amount;
    std::size_t begin = read->next;
    // `10 step ups` are no steps.
    if (begin > at.begin + 1 && begin < at.end && move.amount.count != 1 &&
        phrases_.is_any(begin - 1, at.end, "step", "length", "rep")) {
      --begin;
      move.amount.kind = AmountKind::kRepetitions;
    }
    if (phrases_.is_times(begin, at.end) || phrases_.is_any(begin, at.end, "of")) ++begin;
    std::size_t end = at.end;
    if (const auto sides = phrases_.read_sides(begin, at.end); sides && sides->next < at.end) {
      move.sides = sides->sides;  // `5 each leg lunges`
      begin = sides->next;
    } else if (begin < end) {
      end = sides_begin(begin + 1, end, move.sides);
    }
    if (begin >= end || !is_name(begin, end, Order::kAmountFirst)) return std::nullopt;
    if (is_thing(move.amount, begin, end)) return std::nullopt;
    move.amount.bare_number = false;  // its name says what is counted
    move.name = phrases_.words(begin, end);
    return move;
  }

  // `star jumps 10`, `star jumps x 10`, `plank: 20 s`, `lunges 5 each leg`
  std::optional<Move> name_first(TokenRange at) {
    if (where_ == MovesIn::kLine) return std::nullopt;
    std::size_t value = at.begin;
    while (value < at.end && !is_amount_start(value, at.end)) ++value;
    if (value == at.begin || value == at.end) return std::nullopt;
    std::size_t end = value;
    const auto parts = [&](std::size_t i) {
      return phrases_.is_times(i, at.end) || token(i).is(TokenKind::kColon) ||
             token(i).is(TokenKind::kDash) || phrases_.is_any(i, at.end, "for");
    };
    if (parts(end - 1)) --end;
    const auto read = phrases_.read_amount(value, at.end);
    if (!read || !is_name(at.begin, end, Order::kNameFirst)) return std::nullopt;
    Move move;
    move.amount = read->amount;
    move.amount.bare_number = false;
    if (read->next < at.end) {
      const auto sides = phrases_.read_sides(read->next, at.end);
      if (!sides || sides->next != at.end) return std::nullopt;
      move.sides = sides->sides;
    }
    move.name = phrases_.words(at.begin, end);
    return move;
  }

  Piece read_piece(TokenRange at) {
    Piece out{at, std::nullopt, Order::kAmountFirst};
    if (at.end - at.begin < 2) return out;
    if (is_amount_start(at.begin, at.end)) {
      out.move = amount_first(at);
    } else {
      out.move = name_first(at);
      out.order = Order::kNameFirst;
    }
    return out;
  }

  // `10 s hold` among moves is one, called by its own word.
  std::optional<Move> plain_hold(TokenRange at) {
    const auto read = phrases_.read_amount(at.begin, at.end);
    if (!read || read->next != at.end || !read->amount.held ||
        !phrases_.is_any(at.end - 1, at.end, "hold", "holds")) {
      return std::nullopt;
    }
    Move move;
    move.amount = read->amount;
    move.name = phrases_.words(at.end - 1, at.end);
    return move;
  }

  // The moves that `all` begins with, and where they end; two at least, or none.
  struct Row {
    std::vector<Move> moves;
    std::size_t count = 0;  ///< of the pieces
  };
  Row row_of(const std::vector<TokenRange>& all) {
    Row row;
    Order order = Order::kAmountFirst;
    for (const TokenRange at : all) {
      Piece piece = read_piece(at);
      if (!piece.move && !row.moves.empty()) {
        piece.move = plain_hold(at);
        piece.order = order;
      }
      if (!piece.move || (!row.moves.empty() && piece.order != order)) break;
      order = piece.order;
      row.moves.push_back(std::move(*piece.move));
      ++row.count;
    }
    return row;
  }

  bool in_brackets(std::size_t open) {
    std::size_t close = open + 1;
    for (std::size_t depth = 1; close < size(); ++close) {
      if (token(close).is(TokenKind::kOpen)) ++depth;
      if (token(close).is(TokenKind::kClose) && --depth == 0) break;
    }
    const auto all = pieces(open + 1, close);
    if (all.empty()) return false;
    Row row = row_of(all);
    const bool again = is_again(open) || phrases_.is_times(close + 1, size());
    if (row.count < 2) {
      if (again && row.count == 1) one_move(open, close, all);
      return false;
    }
    if (interrupted(all, row.count)) return false;
    TokenRange at{all.front().begin, all[row.count - 1].end};
    if (row.count == all.size()) at = {open, std::min(close + 1, size())};
    phrases_.replace_by_moves(at, std::move(row.moves));
    return true;
  }

  // `3 x`, `2 rounds of` before a bracket.
  bool is_again(std::size_t open) const {
    return open > 0 && (phrases_.is_times(open - 1, size()) ||
                        phrases_.is_any(open - 1, size(), "of", "times", "rounds", "sets") ||
                        token(open - 1).is(TokenKind::kNumber));
  }

  void one_move(std::size_t open, std::size_t close, const std::vector<TokenRange>& all) {
    if (interrupted(all, 1) || all.size() > 1) return;
    if (phrases_.is_dose_clause(all[0].begin, all[0].end)) return;  // `3 x (10 slow)`
    phrases_.unreadable(open, std::min(close + 1, size()),
                        "there is only one move in these brackets",
                        "write the move as the drill’s name, and how often behind the colon: `Star "
                        "jumps: 3 x 10`");
  }

  // True, and reported, when the piece behind a row is none and another move follows it.
  bool interrupted(const std::vector<TokenRange>& all, std::size_t from) {
    std::size_t last = all.size();
    while (last > from && !read_piece(all[last - 1]).move) --last;
    if (last == from) return false;
    const TokenRange at = all[from];
    const std::string said = phrases_.quoted(at.begin, at.end);
    if (read_piece(at).move) {
      phrases_.refuse(at.begin, at.end,
                      fmt::format("{} is written another way round than the move before it", said),
                      kMovesForm);
    } else if (phrases_.is_dose_clause(at.begin, at.end) && !is_amount(at)) {
      phrases_.refuse(at.begin, at.end, fmt::format("{} stands between two moves", said),
                      "write rest, sets and sides behind the last move; with a rest after every "
                      "move it is a circuit: `Circuit: 2 rounds, 30 s work, 15 s rest`, and the "
                      "moves in a list below it");
    } else {
      phrases_.refuse(at.begin, at.end, fmt::format("{} is no move", said), kMovesForm);
    }
    return true;
  }
  bool is_amount(TokenRange at) {
    const auto read = phrases_.read_amount(at.begin, at.end);
    return read.has_value() && read->next == at.end;
  }

  bool without_brackets() {
    std::size_t begin = 0;
    bool doubtful = false;  // `3 x 10 star jumps, 10 high knees`
    if (phrases_.is_number(0, size()) && !unit_at(phrases_.tokens(), 1, size())) {
      const bool rounds = phrases_.is_any(1, size(), "rounds", "round");
      const bool sets = phrases_.is_sets_word(1, size());
      if (phrases_.is_times(1, size()) || phrases_.is_any(1, size(), "times", "by") || sets) {
        begin = 2;
        const bool colon = begin < size() && token(begin).is(TokenKind::kColon);
        doubtful = !rounds && !colon;
        if (colon || phrases_.is_any(begin, size(), "of") || phrases_.is_times(begin, size())) {
          ++begin;
        } else if (begin < size() && token(begin).is(TokenKind::kComma)) {
          doubtful = false;  // `3 sets, 10 star jumps, 10 high knees`
          ++begin;
        }
      }
    }
    const auto all = pieces(begin, size());
    if (all.size() < 2) return false;
    // `10 x star jumps, 10 x high knees`: the first number is the first move's own.
    if (doubtful && row_of(pieces(0, size())).count >= 2) return row_from(0);
    if (!doubtful) return row_from(begin);
    const Row row = row_of(all);
    if (row.count < 2) return false;
    const std::string moves = phrases_.words(all[0].begin, all[row.count - 1].end).text;
    const std::string sets = phrases_.words(0, 1).text;
    phrases_.refuse(
        0, all[row.count - 1].end,
        fmt::format("{} may be for the first move or for all of them", phrases_.quoted(0, begin)),
        fmt::format("put what is done again in brackets: `{} x ({})`", sets, moves));
    return false;
  }

  bool row_from(std::size_t begin) {
    const auto all = pieces(begin, size());
    Row row = row_of(all);
    if (row.count == 0 || again_at_the_end(all, row.count)) return false;
    if (interrupted(all, row.count) || row.count < 2) return false;
    phrases_.replace_by_moves({all.front().begin, all[row.count - 1].end}, std::move(row.moves));
    return true;
  }

  // `10 star jumps, 10 high knees x 3`, `… twice`: what is done again?
  bool again_at_the_end(const std::vector<TokenRange>& all, std::size_t row) {
    if (row >= all.size()) return false;
    const TokenRange last = all[row];
    std::size_t again = last.end - 1;
    if (phrases_.is_number(again, last.end) && again > last.begin &&
        phrases_.is_times(again - 1, last.end)) {
      --again;
    } else if (!phrases_.is_any(again, last.end, "twice")) {
      return false;
    }
    if (!read_piece({last.begin, again}).move) return false;
    const std::string sets =
        again + 1 == last.end ? "2" : phrases_.words(last.end - 1, last.end).text;
    phrases_.refuse(all[0].begin, last.end,
                    fmt::format("{} may be for the last move or for all of them",
                                phrases_.quoted(again, last.end)),
                    fmt::format("put what is done again in brackets: `{} x ({})`", sets,
                                phrases_.words(all[0].begin, again).text));
    return true;
  }

  Phrases& phrases_;
  MovesIn where_;
};

}  // namespace

bool gather_moves(Phrases& phrases, MovesIn where) { return Finder(phrases, where).run(); }

}  // namespace chalkleaf::dose
