// Patterns over the words of a sentence: what a coach means, whatever the order and the form.
//
// A sentence becomes words without endings (the Snowball stemmer, Porter 2001), numbers become
// numbers, and each word knows whether something negates it. A pattern is written in the danger
// book: clauses joined by `&` (near each other, in any order) or `>` (in this order), each clause
// a run of words, `{concepts}` and tests such as `[time>60]`; `!` before a clause forbids it.
// Inside the room. Tested by tests/reason/guard_test.cpp.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/danger_book.h"

namespace chalkleaf::reason {

/// A word of a sentence as it is compared.
struct Lexeme {
  int id = -1;              ///< in the vocabulary; -1: no pattern has it
  std::uint32_t begin = 0;  ///< bytes in the text the sentence was taken from
  std::uint32_t end = 0;
  double number = -1;    ///< of a number
  double seconds = -1;   ///< of the unit behind a number: `two minutes` is 120
  int negated_by = -1;   ///< the word that negates this one
  bool negator = false;  ///< it negates what follows
  enum class Edge { kNone, kComma, kClause } edge = Edge::kNone;  ///< what stands before it
};

/// One sentence, ready to be searched.
struct Sentence {
  std::vector<Lexeme> words;
  std::vector<bool> has;   ///< by vocabulary id
  bool forbidden = false;  ///< it stands below a line such as `Never at home:`
};

/// Where a pattern was found: places of words in the sentence, in ascending order.
using Match = std::vector<std::size_t>;
/// The numbers among the words of a match, in order.
std::vector<int> numbers_of(const Sentence& sentence, const Match& match);

/// A compiled pattern, and one place of it (word_parts.h).
class Pattern;
struct Atom;

/// The concepts and the patterns of one danger book, compiled. Read-only; safe to share.
class WordPatterns {
 public:
  /// `image`: what image() gave for exactly this book, or anything: then the book is compiled.
  explicit WordPatterns(const plan::DangerBook& book, std::string_view image = {});
  ~WordPatterns();
  WordPatterns(const WordPatterns&) = delete;
  WordPatterns& operator=(const WordPatterns&) = delete;

  /// The sentences of a text, in order. A line end counts as a blank.
  std::vector<Sentence> sentences(std::string_view text) const;
  /// The pattern of these words; known for as long as this object lives.
  const Pattern& pattern(const plan::Words& words);
  /// To be called once, when every pattern is there: what concepts can begin with is known then.
  void seal();
  /// Where the sentence says it, not negated and not forbidden.
  std::optional<Match> find(const Pattern& pattern, const Sentence& sentence) const;
  /// All of this once it is sealed, in bytes. Compiling a book takes ten times as long as a plan,
  /// so it is done when the program is built (base/pack.h).
  std::string image() const;
  /// True when a pattern of one clause begins at this word.
  bool matches_at(const Pattern& pattern, const Sentence& sentence, std::size_t at) const;
  /// Patterns that name a concept that is not there, or cannot be read.
  const std::vector<plan::Words>& broken() const { return broken_; }

 private:
  class Compiler;
  struct Concept;
  void compile(const plan::DangerBook& book);
  /// True when the bytes are an image of a sealed book; false, and nothing taken, when not.
  bool take_image(std::string_view image);
  bool image_is_sound() const;
  friend class Pattern;
  friend class Searcher;

  void negate(Sentence& sentence) const;
  bool negates(const std::vector<Atom>& run, int depth) const;
  int meant_by(const std::string& word) const;
  std::map<std::string, int, std::less<>> vocabulary_;
  std::map<std::string, double, std::less<>> numbers_;
  std::map<std::string, double, std::less<>> units_;
  std::map<std::string, std::string, std::less<>> contractions_;
  std::map<std::string, int, std::less<>> concept_names_;
  std::vector<Concept> concepts_;
  std::vector<bool> fillers_;   // by vocabulary id
  std::vector<bool> negators_;  // by vocabulary id
  std::vector<bool> joiners_;   // by vocabulary id
  std::vector<bool> turns_;     // by vocabulary id
  std::vector<const Pattern*> not_negating_;
  std::vector<const Pattern*> forbids_;
  std::vector<std::unique_ptr<Pattern>> patterns_;
  std::vector<plan::Words> broken_;
  bool kept_ = false;     // from an image: its patterns are handed out in their order
  std::size_t next_ = 0;  // the next of them
};

}  // namespace chalkleaf::reason
