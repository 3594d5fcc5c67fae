// How the sheets look: sizes, colours and spacing, read from one file (themes/*.yaml).
//
// A theme is data: the sheets ask it for a role (`drill`, `cue`) and never for a size. Sizes are
// those of A5 for the card and A4 for the home sheet; other papers scale them, never below the
// sheet's minimum. A theme may be `like` another and say only what differs. Whoever wrote it, its
// colours have to be readable (WCAG 2.2), also on a grey printer, or it is refused. Tested by
// tests/sheet/theme_test.cpp.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/colour.h"
#include "base/diagnostic.h"
#include "base/geometry.h"
#include "base/paper.h"
#include "figure/scene.h"
#include "plan/model.h"
#include "type/fonts.h"

namespace chalkleaf::sheet {

enum class Kind {
  kCoachCard,
  kHomeSheet,
  kStationCards,  ///< of an evening of rotations: a card a station and a card a group
  kHallPoster,    ///< of the same: who is where, for the wall
};
inline constexpr std::array kKinds = {Kind::kCoachCard, Kind::kHomeSheet, Kind::kStationCards,
                                      Kind::kHallPoster};
inline bool is_for_coaches(Kind kind) { return kind != Kind::kHomeSheet; }

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

/// Colours by their use. `ink` on `paper` is for text, `main` for titles and the rules below them,
/// `line` for what must be seen, `hair` for the rest.
enum class Use { kInk, kSoft, kMain, kLine, kHair, kTint, kPaper };
inline constexpr std::size_t kUses = 7;
/// As a theme's file writes it: `ink`.
std::string_view use_name(Use use);
/// Likewise of an ink of its own, which all but the last, the paper, are: `far-suit`.
std::string_view ink_name(figure::Ink ink);

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
  Use panel_line = Use::kLine;    ///< the frame of a drill's panel
  std::optional<Use> panel_fill;  ///< its ground; none: the paper
  std::optional<Use> part_fill;   ///< a band behind a part's heading; none: no band
  Length tick_radius;             ///< of the corners of boxes to tick
  std::map<Paper, double> scale;  ///< of sizes and spacing on each paper

  const TextLook& text(TextRole role) const { return texts[static_cast<std::size_t>(role)]; }
  /// The look with everything `factor` as large, text never below the minimum.
  Look scaled(double factor) const;
  /// The look for one sheet of paper: headings, spacing and figures smaller, running text as large
  /// as it is on narrower leading.
  Look compacted(Kind kind) const;
};

struct Theme {
  std::string name;
  std::string about;  ///< one line: who it is for
  std::array<Colour, kUses> colours;
  figure::Palette inks{};  ///< of the figures
  Look card;
  Look home;

  Colour colour(Use use) const { return colours[static_cast<std::size_t>(use)]; }
  const Look& look(Kind kind) const { return is_for_coaches(kind) ? card : home; }
};

/// The file of another theme, by the name that stands behind `like:`; null when there is none.
using OtherTheme = std::function<SourcePtr(std::string_view name)>;

/// Reads a theme. Null when something is missing or wrong, or cannot be read by everyone (reported
/// as `bad-value`, `missing-key`, `unknown-key`, with what to change). `other` is kept no longer
/// than the call.
std::shared_ptr<const Theme> read_theme(const SourcePtr& source, const OtherTheme& other,
                                        Diagnostics& diagnostics);

/// A club's own colours.
struct OwnColours {
  plan::Words main;    ///< of titles and rules; empty: the theme's
  plan::Words second;  ///< of the gymnast's suit in figures; empty: the theme's
};
/// The theme in a club's own colours, each made as dark as it has to be: `colour-adjusted` says
/// what became of it. One that is no colour, or that would be black, is refused (`bad-value`) and
/// the theme's own stays.
std::shared_ptr<const Theme> in_colours(const std::shared_ptr<const Theme>& theme,
                                        const OwnColours& own, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
