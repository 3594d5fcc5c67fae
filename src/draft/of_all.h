// What is said of all drills of a list at once: `3 sets of each`, `go through it twice`, `10 of
// each`. Internal to the room. Tested by tests/draft/document_test.cpp and write_test.cpp.
#pragma once

#include <optional>
#include <string_view>

#include "draft/drills.h"

namespace chalkleaf::draft {

struct OfAll {
  double sets = 0;                     ///< each drill, one after the other
  double rounds = 0;                   ///< the list, again and again
  std::optional<double> rest = {};     ///< seconds
  std::optional<double> minutes = {};  ///< of the part
  bool plainly = false;  ///< `everything`, `go through it`: can be said of no one drill
};

class OfAllReader {
 public:
  explicit OfAllReader(const Lexicon& words) : words_(words) {}

  /// `all x3, 30 s rest`, `2 sets of everything, sit down between sets`: a clause that says nothing
  /// else, and beside it rests, and words without a number.
  std::optional<OfAll> said(std::string_view text) const;
  /// The same of one clause, which may be a rest or the part's minutes alone.
  std::optional<OfAll> clause(std::string_view text) const;
  /// Nothing but an amount, and that each has it.
  std::optional<Element> amount_of_each(std::string_view text) const;

 private:
  // Nothing from there on but words that stand for the whole list, or for going through it.
  bool is_only_of_all(const Pieces& pieces, std::size_t at) const;
  bool is_between(const Pieces& pieces) const;

  const Lexicon& words_;
};

}  // namespace chalkleaf::draft
