// Running text becomes shaped, broken, measured lines.
//
// Words are shaped once per worker and remembered; break opportunities come from ICU (UAX 14).
// Where the lines end is chosen for the whole paragraph (type/total_fit.h). Lines are never
// justified. Tested by tests/type/lines_test.cpp.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "base/colour.h"
#include "base/geometry.h"
#include "base/span.h"
#include "type/fonts.h"

namespace chalkleaf::type {

/// How figures are set.
enum class Figures {
  kOfTheFont,
  kTabular,  ///< all of one width (OpenType `tnum`), so that those of a column stand below each
             ///< other
};

/// A stretch of text in one style. Line ends inside (`\n`) end the line.
struct Inline {
  std::string text;
  StyleId style = 0;
  Length size;
  Colour colour;
  Span origin = {};        ///< where the coach wrote it; nowhere for the program's own words
  bool unbroken = false;   ///< never broken inside, if it fits a line at all (doses, clock times)
  bool hyphenate = false;  ///< its words may be hyphenated where that makes better lines
  Figures figures = Figures::kOfTheFont;
};

/// Glyphs of one face on one line, left to right.
struct Fragment {
  std::size_t inline_index = 0;
  FaceId face = 0;
  Length size;
  Colour colour;
  Length x;  ///< from the line's left edge
  Length width;
  std::string text;  ///< UTF-8; glyph clusters count its bytes
  std::vector<Glyph>
      glyphs;  ///< a line that was broken at a space keeps that space, beyond `Line::width`
};

struct Line {
  std::vector<Fragment> fragments;
  Length width;    ///< without the space it was broken at
  Length ascent;   ///< above the baseline, the largest of its faces
  Length descent;  ///< below the baseline, positive
};

/// Something that could not be set as asked.
struct TextProblem {
  enum class Kind {
    kMissingGlyph,  ///< no font of the chain has the character: a box with a cross stands for it
    kCutWord,       ///< a word wider than the line was cut between characters
  };
  Kind kind = Kind::kMissingGlyph;
  std::string text;  ///< the character or the word
  Span origin;
  std::string script = {};  ///< kMissingGlyph: `Devanagari`; empty for signs, which have no script
};

struct Paragraph {
  std::vector<Line> lines;
  std::vector<TextProblem> problems;
};

class LazyHyphenation;

/// Shapes and breaks text. One per worker: remembers shaped words and broken paragraphs, within
/// bounds.
class Typesetter {
 public:
  /// `hyphenation` may be null: no word is hyphenated then. Both must outlive it.
  explicit Typesetter(const Fonts& fonts, const std::string& language = "en",
                      const LazyHyphenation* hyphenation = nullptr);
  ~Typesetter();
  Typesetter(Typesetter&&) noexcept;
  Typesetter& operator=(Typesetter&&) noexcept;

  /// Breaks the text into lines no wider than `width`. Never fails; an empty text has no lines.
  Paragraph set(std::span<const Inline> text, Length width);
  /// The same, remembered: what is measured before it is placed, and what stands on many sheets, is
  /// broken into lines once. Never null.
  std::shared_ptr<const Paragraph> set_once(std::span<const Inline> text, Length width);
  /// The width of the text on one line (its widest line, where it has line ends).
  Length natural_width(std::span<const Inline> text);
  const Fonts& fonts() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace chalkleaf::type
