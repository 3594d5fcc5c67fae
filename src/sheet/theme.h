// How the sheets look: sizes, colours and spacing, read from one file (themes/*.yaml).
//
// A theme is data: the sheets ask it for a role (`drill`, `cue`) and never for a size. Sizes are
// those of A5 for the card and A4 for the home sheet; other papers scale them, never below the
// sheet's minimum. Tested by tests/sheet/theme_test.cpp.
#pragma once

#include <array>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "base/colour.h"
#include "base/diagnostic.h"
#include "base/geometry.h"
#include "base/paper.h"
#include "figure/scene.h"
#include "type/fonts.h"

namespace chalkleaf::sheet {

enum class Kind { kCoachCard, kHomeSheet };

/// What a piece of text is on a sheet.
enum class TextRole {
  kTitle,
  kSubtitle,
  kStrong,
  kPart,
  kPartDetail,
  kClock,
  kDrill,
  kDose,
  kCue,
  kVariation,
  kVariationLabel,
  kStation,
  kColumn,
  kBoxTitle,
  kBoxText,
  kNote,
  kFine,
  kFoot,
};
inline constexpr std::size_t kTextRoles = 18;

/// Colours by their use. `ink` on `paper` is for text, `line` for what must be seen, `hair` for the
/// rest.
enum class Use { kInk, kSoft, kLine, kHair, kTint, kPaper };
inline constexpr std::size_t kUses = 6;

struct TextLook {
  Length size;
  Length leading;
  type::Weight weight = type::Weight::kRegular;
  type::Slant slant = type::Slant::kUpright;
  Use colour = Use::kInk;
};

/// The look of one kind of sheet.
struct Look {
  std::string font;  ///< a role of the font catalogue
  Length minimum;    ///< no text is smaller than this, on any paper
  std::array<TextLook, kTextRoles> texts;
  std::map<Paper, Length> margin;  ///< of the page, all round
  Length gap;                      ///< between neighbours in a row
  Length row_padding;  ///< above and below a row of the card, inside a panel of the home sheet
  Length part_space;   ///< before a part's heading
  Length tick_box;     ///< side of a box to tick
  Length figure;       ///< a figure is at most so high
  Length radius;       ///< of boxes and panels
  Length line_width;   ///< of what must be seen
  Length hair_width;
  std::map<Paper, double> scale;  ///< of sizes and spacing on each paper

  const TextLook& text(TextRole role) const { return texts[static_cast<std::size_t>(role)]; }
  /// The look with everything `factor` as large, text never below the minimum.
  Look scaled(double factor) const;
};

struct Theme {
  std::string name;
  std::array<Colour, kUses> colours;
  figure::Palette inks{};  ///< of the figures
  Look card;
  Look home;

  Colour colour(Use use) const { return colours[static_cast<std::size_t>(use)]; }
  const Look& look(Kind kind) const { return kind == Kind::kCoachCard ? card : home; }
};

/// Reads a theme. Null when something is missing or wrong (reported as `bad-value`, `missing-key`,
/// `unknown-key`, with what to change).
std::shared_ptr<const Theme> read_theme(const SourcePtr& source, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
