// A paragraph taken apart: words, spaces and line ends, each in one style, with the places where a
// line may end. Only for this room. Tested through tests/type/lines_test.cpp.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "type/breaks.h"
#include "type/hyphenator.h"
#include "type/lines.h"
#include "type/shape.h"

namespace chalkleaf::type {

/// Whether a line may end at a place.
enum class After {
  kNone,
  kAllowed,
  kHeld,  ///< allowed by UAX 14, but inside an unbroken inline
};

/// A place inside a word where a line may end.
struct InnerBreak {
  std::uint32_t offset = 0;  ///< in Pieces::text()
  bool hyphen = false;       ///< a line that ends there shows a hyphen the text does not have
};

/// A stretch of one inline that is shaped as a whole.
struct Piece {
  enum class Kind { kWord, kSpace, kLineEnd };
  Kind kind = Kind::kWord;
  std::uint32_t inline_index = 0;
  std::uint32_t begin = 0;  ///< bytes of Pieces::text()
  std::uint32_t end = 0;
  After after = After::kNone;
  bool soft_hyphen = false;            ///< a line that ends after it shows a hyphen
  bool held = false;                   ///< its inner breaks are
  bool planned = false;                ///< its line is chosen: it is placed without a look
  bool ends_line = false;              ///< planned, and the line ends after it
  const ShapedWord* shaped = nullptr;  ///< null for a line end
  std::uint32_t first_inner_break = 0;
  std::uint32_t inner_break_count = 0;
};

/// One paragraph's pieces. Reused from one paragraph to the next.
class Pieces {
 public:
  Pieces(Shaper& shaper, Breaker& breaker, Hyphenator& hyphenator)
      : shaper_(shaper), breaker_(breaker), hyphenator_(hyphenator) {}

  /// Takes the text apart; inner breaks of unbroken inlines are held if the inline fits `width`. A
  /// word that is wider gets a hyphen's inner breaks where the language allows them.
  void prepare(std::span<const Inline> text, Length width);
  /// In reading order. The filler takes them from here.
  std::vector<Piece>& all() { return pieces_; }
  std::string_view text() const { return text_; }
  std::string_view text(const Piece& piece) const {
    return std::string_view(text_).substr(piece.begin, piece.end - piece.begin);
  }
  std::span<const InnerBreak> inner_breaks(const Piece& piece) const {
    return std::span(inner_).subspan(piece.first_inner_break, piece.inner_break_count);
  }
  /// Where a word that stands alone may be hyphenated although it fits a line, ascending.
  void find_hyphens(const Piece& piece, std::vector<std::uint32_t>& offsets);
  bool shows_hyphen(const InnerBreak& inner) const;
  const Inline& source(const Piece& piece) const { return inlines_[piece.inline_index]; }
  /// The piece cut at its inner breaks, in reading order.
  std::vector<Piece> taken_apart(const Piece& piece);
  /// The part of a piece before its first inner break.
  Piece first_part(const Piece& piece);
  /// A part of a piece, shaped on its own. `end` must be the piece's own for it to keep what comes
  /// after; `hyphen` is of the inner break it ends at.
  Piece part(const Piece& piece, std::uint32_t begin, std::uint32_t end, bool hyphen = false);
  /// The hyphen that shows where a line ends inside a word of this style.
  const ShapedWord& hyphen(const Piece& piece);

 private:
  void join_texts(std::span<const Inline> text);
  void split_inline(std::uint32_t index, std::uint32_t begin, std::uint32_t end);
  void add_word(std::uint32_t index, std::uint32_t begin, std::uint32_t end);
  void add(Piece piece);
  void hyphenate_wide(Length width);
  void hyphenate_wide(Piece& piece, Length width, bool alone);
  void hold_inline(std::uint32_t index, std::size_t first_piece, Length width);
  After after(std::uint32_t offset);
  void shape(Piece& piece);

  Shaper& shaper_;
  Breaker& breaker_;
  Hyphenator& hyphenator_;
  std::span<const Inline> inlines_;
  std::string text_;
  std::vector<std::uint32_t> ends_;  // of the inlines, in text_
  std::vector<Break> breaks_;
  std::size_t next_break_ = 0;
  std::vector<InnerBreak> inner_;
  std::vector<Piece> pieces_;
};

/// Measures what a line would hold: text of one inline and face is rounded as a whole.
class Pen {
 public:
  Length width() const;
  void add(const ShapedRun& run, std::uint32_t inline_index, Length size);
  void add(const ShapedWord& word, std::uint32_t inline_index, Length size);

 private:
  Length closed_;  // what is rounded already
  const Face* face_ = nullptr;
  std::uint32_t inline_index_ = 0;
  Length size_;
  std::int64_t units_ = 0;
};

/// Font units at a size, to the nearest thousandth of a point.
Length scaled_units(std::int64_t units, Length size, std::uint32_t units_per_em);

}  // namespace chalkleaf::type
