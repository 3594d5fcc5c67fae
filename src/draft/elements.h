// What a dose is said with: `x5`, `3 x 10 s`, `e/s`, `rest 30`, `there and back`, `until stuck 5`.
//
// Each is found by itself, left to right; which of them belong together is decided by
// draft/drills.h, what they come to by draft/spoken_dose.h. Tested by tests/draft/drills_test.cpp.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "draft/lexicon.h"

namespace chalkleaf::draft {

enum class Unit {
  kBare,     ///< `10`
  kTimes,    ///< `x 10`, `10 x`, `10 times`
  kReps,     ///< `10 reps`
  kGoes,     ///< `5 goes`, `5 turns`
  kOwn,      ///< `5 breaths`: the word is a remark
  kLengths,  ///< `2 laps`
  kSteps,
  kSets,
};

struct Element {
  enum class Kind {
    kCount,    ///< `values` of `unit`
    kSetsOf,   ///< `sets` times `values`, of `unit` or, if `timed`, seconds
    kTime,     ///< `values` in seconds
    kRest,     ///< `values[0]` seconds
    kOnOff,    ///< `values[0]` seconds of work, `values[1]` of rest
    kRounds,   ///< `values[0]`
    kSides,    ///< `sides`, or `ways` by name
    kEach,     ///< each of the moves, gymnasts or groups named
    kMaxHold,  ///< also `to fatigue`
    kAsMany,
    kEmom,     ///< `values[0]` minutes, perhaps none
    kNothing,  ///< understood, and of no effect on the dose: `no rest`
  };
  Kind kind = Kind::kNothing;
  Unit unit = Unit::kBare;
  std::vector<double> values = {};
  double sets = 0;
  bool timed = false;
  bool held = false;      ///< written with `hold`
  bool each = false;      ///< `hold each 5 s`
  bool of_each = false;   ///< `5 of each`, `15 s each position`: of the moves, not of the gymnasts
  bool at_place = false;  ///< `5 low beam`: of a name before it, where it is done
  bool leads = false;     ///< a number before the name it counts: `10 star jumps`
  bool between_rounds = false;
  bool after_each = false;  ///< a rest `after each`, `between them`
  bool of_one = false;      ///< `each` behind the dose of one drill: its sides, if it has any
  Role sides = Role::kEachSide;
  std::vector<std::string> ways = {};
  std::string remark = {};  ///< words that belong to the amount: `until stuck`
  std::size_t begin = 0;    ///< pieces
  std::size_t next = 0;

  bool is_amount() const {
    return kind == Kind::kCount || kind == Kind::kSetsOf || kind == Kind::kTime ||
           kind == Kind::kMaxHold || kind == Kind::kAsMany;
  }
};

/// True when one of them is an amount of every move.
inline bool is_of_each(const std::vector<Element>& elements) {
  return std::any_of(elements.begin(), elements.end(), [](const Element& e) { return e.of_each; });
}

/// Where in its clause a number stands.
enum class Place { kFirst, kInside };

class ElementReader {
 public:
  ElementReader(const Lexicon& words, const Pieces& pieces, std::string_view line)
      : words_(words), pieces_(pieces), line_(line) {}

  /// The element that begins at `at` and ends before `end`.
  std::optional<Element> read(std::size_t at, std::size_t end, Place place) const;
  /// True when nothing of the clause follows at `at`.
  bool is_clause_end(std::size_t at, std::size_t end) const;

  /// Whatever stands there, before it is asked whether it is how often in a week.
  std::optional<Element> read_any(std::size_t at, std::size_t end, Place place) const;

 private:
  using Kind = Piece::Kind;
  bool is(std::size_t at, std::size_t end, Kind kind) const {
    return at < end && pieces_[at].is(kind);
  }
  bool has(Role role, std::size_t at, std::size_t end) const {
    return words_.is(role, pieces_, at, end);
  }
  std::size_t skip(Role role, std::size_t at, std::size_t end) const {
    return at + words_.match(role, pieces_, at, end);
  }
  bool is_number(std::size_t at, std::size_t end) const;
  std::size_t slash_ladder(std::size_t at, std::size_t end) const;
  bool is_name_number(std::size_t name, std::size_t at, std::size_t end) const;
  bool is_next_name_number(std::size_t at) const;
  bool at_place(std::size_t at, std::size_t end) const;
  bool counts_inside(std::size_t at, std::size_t next, std::size_t end) const;
  bool is_way(std::size_t at, std::size_t end) const;
  void there_again(Element& out, std::size_t end) const;
  void of_what(Element& out, std::size_t end) const;
  bool counts_clause_before(std::size_t at) const;
  bool is_chain(std::size_t at, std::size_t next, std::size_t end) const;
  std::optional<Element> comma_ladder(const Element& first, std::size_t end) const;
  bool pairs(std::size_t at, std::size_t end) const;
  bool names_move(std::size_t at, std::size_t end) const;
  std::string text(std::size_t begin, std::size_t end) const;

  /// `5`, `3-5`, `5-4-3-2-1`
  struct Numbers {
    std::vector<double> values;
    std::size_t next = 0;
    bool whole = true;
  };
  std::optional<Numbers> numbers(std::size_t at, std::size_t end) const;
  std::optional<double> unit_seconds(std::size_t& at, std::size_t end) const;
  struct UnitRead {
    Unit unit;
    std::size_t next;
    std::string remark;
  };
  std::optional<UnitRead> unit(std::size_t at, std::size_t end) const;

  std::optional<Element> phrase(std::size_t at, std::size_t end) const;
  std::optional<Element> there_and_back(std::size_t at, std::size_t end) const;
  std::optional<Element> side_list(std::size_t at, std::size_t end) const;
  std::optional<Element> sides(std::size_t at, std::size_t end) const;
  /// `each leg`, `over either shoulder`, `/ side`: the element, perhaps behind a word between.
  std::optional<Element> each_limb(std::size_t at, std::size_t end) const;
  std::optional<Element> other_side(std::size_t at, std::size_t end) const;
  std::size_t hold_for(std::size_t at, std::size_t end) const;
  std::optional<Element> held(std::size_t at, std::size_t end) const;
  std::optional<Element> rest(std::size_t at, std::size_t end) const;
  std::optional<Element> until(std::size_t at, std::size_t end) const;
  std::optional<Element> times(std::size_t at, std::size_t end) const;
  std::optional<Element> rounds(std::size_t at, std::size_t end) const;
  std::optional<Element> sets_of(std::size_t at, std::size_t end) const;
  std::optional<Element> number(std::size_t at, std::size_t end, Place place) const;
  std::optional<Element> timed(const Numbers& read, std::size_t at, std::size_t end) const;
  std::optional<Element> on_off(std::size_t at, std::size_t end) const;
  std::optional<Element> bare_on_off(std::size_t at, std::size_t end) const;
  std::optional<Element> work_rest(std::size_t at, std::size_t end) const;
  /// One of several equal amounts, each with its side: `20 s right`, `10 with the left hand`.
  struct Sided {
    double value = 0;
    double seconds = 0;  ///< of its unit; 0 where there is none
    Unit unit = Unit::kBare;
    Role role = Role::kLeft;  ///< left, right, middle, forward-back or one-way
    std::optional<Role> limb = {};
    std::string word = {};
    std::size_t next = 0;
  };
  std::optional<Sided> sided(std::size_t at, std::size_t end) const;
  /// The same with the side in front: `right 20 s`.
  std::optional<Sided> side_first(std::size_t at, std::size_t end) const;
  /// Behind what joins two of them: a comma, a slash, `and`, `then`.
  std::size_t past_joints(std::size_t at, std::size_t end) const;
  /// The amount of one of them, from `at` to the last one's end.
  static Element amount_of(const Sided& first, std::size_t at, const Sided& last);
  std::optional<Element> by_direction(std::size_t at, std::size_t end) const;
  std::optional<Element> direction_before(std::size_t at, std::size_t end) const;
  std::optional<Element> plus_same(std::size_t at, std::size_t end) const;
  std::optional<Role> limb(std::size_t at, std::size_t end, std::size_t& next) const;
  std::optional<Element> bare(const Numbers& read, std::size_t at, std::size_t end,
                              Place place) const;
  /// A number, or `x 3`, `3 x`, `twice`, `3 times`: how often; moves `at` behind it.
  std::optional<double> how_often(std::size_t& at, std::size_t end) const;
  std::size_t behind_between(std::size_t at, std::size_t end, Element& rest) const;

  const Lexicon& words_;
  const Pieces& pieces_;
  std::string_view line_;
};

}  // namespace chalkleaf::draft
