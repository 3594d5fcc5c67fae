// What the patterns of a danger book are compiled into (word_patterns.h). Inside the room, for
// those who make, keep and search them.
#pragma once

#include <cstdint>
#include <vector>

#include "reason/word_patterns.h"

namespace chalkleaf::reason {

/// One place of a clause.
struct Atom {
  enum class Kind : std::uint32_t { kWord, kConcept, kGap, kLonger, kBelow, kAbove, kNumber };
  Kind kind = Kind::kWord;
  int id = 0;        // of the word or the concept
  double limit = 0;  // of a test
};
using Atoms = std::vector<Atom>;

constexpr std::size_t kWindow = 12;  // words between two clauses that belong together

/// A run of words; how it hangs together with those before it.
struct Clause {
  Atoms run;
  bool ordered = false;
  bool absent = false;
  std::size_t window = kWindow;
};

class Pattern {
 public:
  std::vector<Clause> clauses;
  bool has_negation = false;  // one of its own words negates: `not need to watch`
};

/// A set of words, by their numbers in the vocabulary.
class WordSet {
 public:
  void resize(std::size_t words) { bits_.resize((words + 63) / 64); }
  void add(int id) { bits_[at(id)] |= bit(id); }
  void add_all(const WordSet& other) {
    for (std::size_t i = 0; i < other.bits_.size(); ++i) bits_[i] |= other.bits_[i];
  }
  bool has(int id) const { return (bits_[at(id)] & bit(id)) != 0; }
  std::vector<std::uint64_t>& bits() { return bits_; }
  const std::vector<std::uint64_t>& bits() const { return bits_; }

 private:
  static std::size_t at(int id) { return static_cast<std::size_t>(id) / 64; }
  static std::uint64_t bit(int id) { return std::uint64_t{1} << (static_cast<unsigned>(id) % 64U); }
  std::vector<std::uint64_t> bits_;
};

struct WordPatterns::Concept {
  std::vector<Atoms> ways;
  WordSet first;           // words it can begin with
  bool any_first = false;  // it may begin with a number
};

}  // namespace chalkleaf::reason
