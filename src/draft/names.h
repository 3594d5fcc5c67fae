// Names of drills among the words of a line: what is one, what is a remark, how it is spelled out.
// Tested by tests/draft/drills_test.cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "draft/elements.h"

namespace chalkleaf::draft {

/// Words that wait for a dose, perhaps with sides of their own; pieces of the line.
struct Name {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::vector<Element> own = {};
  bool sure = false;  ///< one of several a word joins: no remark, however it begins
};

class NameReader {
 public:
  NameReader(const Lexicon& words, const Pieces& pieces, std::string_view line)
      : words_(words), pieces_(pieces), line_(line) {}

  /// Pieces as typed.
  std::string raw(std::size_t begin, std::size_t end) const;
  /// The same with trade shorthand spelled out.
  std::string spelled(std::size_t begin, std::size_t end) const;
  /// A clause that says when, who or how, and names no drill.
  bool is_remark(const Name& name) const;
  /// `ladder` in `ladder 5-4-3-2-1 pull ups`
  bool is_ladder(const Name& name) const;
  /// `leaps + split jumps`, `walkover fwd and back`: two drills where each has a dose.
  /// `each` or `lengths` was said of the dose.
  std::vector<Name> parted(const Name& name, bool each, bool lengths) const;
  /// The same where both are held: `pike + straddle`.
  std::vector<Name> held_shapes(const Name& name) const;
  /// The same for each of the names that `and` joins: `butterfly and long-sit, both 20 s`.
  std::vector<Name> all_of(const Name& name) const;
  /// The name without words that end none: `march for`.
  Name without_tail(Name name) const;
  /// True when a clause begins at the piece.
  bool starts_clause(std::size_t piece) const;

 private:
  bool is(Role role, std::size_t begin, std::size_t end) const {
    return words_.is(role, pieces_, begin, end);
  }
  std::vector<Name> animals(const Name& name) const;
  std::vector<Name> slashed(const Name& name) const;
  std::vector<Name> any_slashed(const Name& name) const;
  bool names_way_to_go(std::size_t begin, std::size_t end) const;
  bool is_counted_thing(const Name& name) const;
  bool counts_something(const Name& name) const;

  const Lexicon& words_;
  const Pieces& pieces_;
  std::string_view line_;
};

}  // namespace chalkleaf::draft
