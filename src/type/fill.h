// Fills lines with pieces: where the ends of lines are planned (type/plan.h) at those, elsewhere
// first fit, each line as full as it goes. Only for this room. Tested by tests/type/lines_test.cpp.
#pragma once

#include <set>
#include <string>
#include <tuple>

#include "type/pieces.h"

namespace chalkleaf::type {

/// What filling is for: lines to print, or only how wide they are.
enum class Purpose { kPrint, kMeasure };

class Filler {
 public:
  Filler(Pieces& pieces, Breaker& breaker, Shaper& shaper, std::span<const Inline> text,
         Length width, Purpose purpose);
  /// Sets all pieces; every step places something, takes a piece apart or ends a line.
  Paragraph run();

 private:
  /// What stands before the next place where the line may end.
  struct Look {
    std::size_t count = 0;  // pieces looked at; the last one is too wide when it does not fit
    bool fits = true;
    std::size_t to_take_apart = kNothing;  // the first of them with inner breaks
    bool held = false;                     // some of their breaks are held
  };
  static constexpr std::size_t kNothing = static_cast<std::size_t>(-1);

  const Piece& ahead(std::size_t n) const { return waiting_[waiting_.size() - 1 - n]; }
  Piece& ahead(std::size_t n) { return waiting_[waiting_.size() - 1 - n]; }
  void step();
  Look look() const;
  bool fits(Pen pen, const Piece& piece) const;
  bool first_part_fits(std::size_t n);
  void take_apart(std::size_t n);
  void release(std::size_t count);
  void cut(std::size_t count);
  void cut_piece(const Piece& piece);
  void report(TextProblem::Kind kind, const std::string& text, const Span& origin);
  void report_cut_word(const Piece& piece);
  void place(const Piece& piece);
  void place_word(const ShapedWord& word, std::uint32_t inline_index);
  void end_line(const Piece* soft_hyphen_after);
  Length inline_size(const Piece& piece) const { return text_[piece.inline_index].size; }

  Pieces& pieces_;
  Breaker& breaker_;
  Shaper& shaper_;
  std::span<const Inline> text_;
  Length limit_;
  Purpose purpose_;

  std::vector<Piece> waiting_;  // the next piece last
  Paragraph out_;
  Line line_;
  Pen pen_;
  Length solid_width_;  // up to the last word
  bool line_begun_ = false;
  Piece last_placed_;
  std::uint32_t reported_until_ = 0;  // offset up to which a cut word is reported
  // Each thing is told once. The order is never seen: problems are listed as they are met.
  std::set<std::tuple<TextProblem::Kind, std::string, const Source*, std::uint32_t, std::uint32_t>>
      reported_;
};

}  // namespace chalkleaf::type
