// Looks at finished pages as a reader would: does anything lie on something else, or off the paper?
//
// Layout gives every block its room, so nothing can overlap unless a block is higher or wider than
// it says. That is what this finds, from positions and fonts alone, whoever placed the items. The
// tests ask it about every sheet they make. Pure. Tested by tests/page/inspect_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "page/display_list.h"
#include "type/fonts.h"

namespace chalkleaf::page {

struct Flaw {
  enum class Kind {
    kTextOnText,
    kTextOnFigure,  ///< or on a picture
    kTextOnBox,     ///< a box to tick or to write in
    kTextOnLine,    ///< a frame's edge or a ruling line
    kBoxOnBox,      ///< two boxes, figures or pictures, or one on the other
    kFigureOnLine,  ///< a figure, a picture or a box on a frame's edge
    kInMargin,      ///< nearer to the paper's edge than the margin, or off it
  };
  Kind kind = Kind::kTextOnText;
  std::size_t page = 0;  ///< from 0
  Rect place;            ///< what both have in common; of kInMargin the item
  std::string what;      ///< for a message: the text, or what kind of thing it is
};

/// Everything that lies where it should not. A text's box is from the height of its capitals to the
/// depth of its descenders; what touches by less than half a point is let through.
std::vector<Flaw> inspect(const DisplayList& list, const type::Fonts& fonts, const Insets& margins);

/// `page 2 at 34.0,120.5 pt: text on text: ‘Dish hold’, ‘Arch hold’`
std::string describe(const Flaw& flaw);

}  // namespace chalkleaf::page
