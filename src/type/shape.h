// Words become glyphs, and are remembered.
//
// A word is cut into runs by the first face of the style's chain that has each character; marks
// stay with the character they stand on. Glyphs are kept in font units, so that a word shaped once
// serves every size. Only for this room. Tested through tests/type/lines_test.cpp.
#pragma once

#include <deque>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "type/face_data.h"
#include "type/fonts.h"
#include "type/lines.h"
#include "type/text_hash.h"

namespace chalkleaf::type {

/// A part of a word in one face.
struct ShapedRun {
  FaceId face = 0;
  const Face* font = nullptr;
  std::string text;           ///< without what is neither seen nor shaped
  std::vector<Glyph> glyphs;  ///< clusters count the bytes of `text`; never glyph 0
  std::int64_t units = 0;     ///< sum of the advances
};
struct ShapedWord {
  std::vector<ShapedRun> runs;
  std::vector<std::string> missing;  ///< characters no face has, each once
};

/// What a word's glyphs depend on besides its letters; sizes are not among it.
struct Manner {
  explicit Manner(const Inline& text) : style(text.style), figures(text.figures) {}
  StyleId style;
  Figures figures;
};

/// One per worker.
class Shaper {
 public:
  Shaper(const Fonts& fonts, const std::string& language);
  /// Forgets what the last paragraph needed for itself only. Ends all references handed out.
  void begin_paragraph();
  /// The word's glyphs; a soft hyphen at its very end is shown as a hyphen, others are not. The
  /// reference holds until begin_paragraph().
  const ShapedWord& shape(const Manner& manner, std::string_view word);
  const Fonts& fonts() const { return fonts_; }

 private:
  struct Character;
  using Known = std::unordered_map<std::string, ShapedWord, TextHash, std::equal_to<>>;

  ShapedWord shape_now(const Manner& manner, std::string_view word);
  std::vector<Character> read(std::string_view word) const;
  void choose_face(StyleId style, Character* begin, Character* end, ShapedWord& out) const;
  void shape_run(const Character* begin, const Character* end, std::string_view word,
                 Figures figures, ShapedWord& out);

  const Fonts& fonts_;
  hb_language_t language_;
  HbBuffer buffer_;
  std::vector<Known> known_;  // by StyleId, and figures
  std::size_t known_count_ = 0;
  std::deque<ShapedWord> loose_;  // too long to be worth remembering
};

}  // namespace chalkleaf::type
