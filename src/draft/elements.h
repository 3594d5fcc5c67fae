// What a dose is said with: `x5`, `3 x 10 s`, `e/s`, `rest 30`, `there and back`, `until stuck 5`.
//
// Each is found by itself, left to right; which of them belong together is decided by
// draft/drills.h, what they come to by draft/spoken_dose.h. Tested by tests/draft/drills_test.cpp.
#pragma once

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
  bool held = false;   ///< written with `hold`
  bool leads = false;  ///< a number before the name it counts: `10 star jumps`
  bool between_rounds = false;
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
  bool is_name_number(std::size_t name, std::size_t at, std::size_t end) const;
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
  std::optional<Element> held(std::size_t at, std::size_t end) const;
  std::optional<Element> rest(std::size_t at, std::size_t end) const;
  std::optional<Element> until(std::size_t at, std::size_t end) const;
  std::optional<Element> times(std::size_t at, std::size_t end) const;
  std::optional<Element> rounds(std::size_t at, std::size_t end) const;
  std::optional<Element> sets_of(std::size_t at, std::size_t end) const;
  std::optional<Element> number(std::size_t at, std::size_t end, Place place) const;
  std::optional<Element> timed(const Numbers& read, std::size_t at, std::size_t end) const;
  std::optional<Element> on_off(std::size_t at, std::size_t end) const;
  std::optional<Element> by_direction(const Numbers& read, std::size_t at, std::size_t end) const;
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
