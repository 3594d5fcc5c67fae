// Chooses where the lines of a paragraph end, before they are filled.
//
// Each stretch between two line ends of the text that fits a line needs no choice. For the others
// the lines that are possible become a graph, `total_fit` (type/total_fit.h) finds the best way
// through it, and the pieces are marked with it. What it cannot plan is left to be filled first
// fit: a stretch with a word that must be cut, with an unbroken inline that must be broken after
// all, with words of many inner breaks (text without spaces, as in Han), or with lines that hold
// more places to end at than any sheet of ours has room for. Only for this room. Tested by
// tests/type/lines_test.cpp and tests/type/total_fit_test.cpp.
#pragma once

#include "type/pieces.h"
#include "type/total_fit.h"

namespace chalkleaf::type {

/// Plans one paragraph; `run` may be called once.
class Planner {
 public:
  Planner(Pieces& pieces, Length width) : pieces_(pieces), measure_(width) {}
  /// Marks the pieces of every stretch that can be planned, and takes apart those inside which a
  /// line is to end.
  void run();

 private:
  // A place where a line may end: after a whole piece, or at an inner break of it.
  struct Stop {
    std::uint32_t piece = 0;
    std::uint32_t inner = kWhole;  // in inner_
  };
  static constexpr std::uint32_t kWhole = static_cast<std::uint32_t>(-1);
  static constexpr std::uint32_t kNone = static_cast<std::uint32_t>(-1);
  // What is known of a piece of the stretch.
  struct Known {
    std::uint32_t stop = kNone;  // after it
    std::uint32_t first_inner = 0;
    std::uint32_t inner_count = 0;
    std::uint32_t first_inner_stop = 0;
  };
  // A line as far as it has been walked along.
  struct Reach {
    Pen pen;
    Length solid;  // up to the last word
    bool begun = false;
    bool spaced = false;
    bool one_word = true;
  };

  const Piece& piece(std::size_t index) const { return pieces_.all()[begin_ + index]; }
  bool fits_one_line() const;
  void plan();
  // Whether words are hyphenated that fit a line.
  enum class Hyphens { kNeeded, kAlsoForLooks };
  bool find_stops(Hyphens hyphens);
  void find_hyphens(std::size_t index);
  std::uint32_t add_stop(std::size_t piece, std::uint32_t inner, Ending ending);
  bool find_lines();
  void lines_from(std::uint32_t stop);
  bool pass_word(Reach& reach, std::uint32_t stop, std::size_t index, const Piece& word,
                 std::uint32_t first_inner);
  void offer(std::uint32_t from, std::uint32_t to, Length width, const Reach& reach);
  void add_as_is(bool planned);
  void add_planned(const Fit& fit);

  Pieces& pieces_;
  Length measure_;
  std::vector<Piece> out_;
  // Of the stretch being planned; its pieces are counted from begin_.
  std::size_t begin_ = 0;
  std::size_t count_ = 0;
  LineGraph graph_;
  std::vector<Stop> stops_;
  std::vector<InnerBreak> inner_;
  std::vector<Known> known_;
  std::vector<bool> reached_;
  std::vector<std::uint32_t> hyphens_;
};

}  // namespace chalkleaf::type
