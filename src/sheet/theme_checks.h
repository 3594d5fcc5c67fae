// Whether a theme's colours can be seen by everyone, in colour and in grey. Internal to the room.
// Tested by tests/sheet/theme_test.cpp.
//
// WCAG 2.2, 1.4.3 (text 4.5:1) and 1.4.11 (graphics that carry meaning 3:1). Contrast is a matter
// of luminance alone, so what passes is as clear on a grey printer; the inks of figures have to be
// told apart there too, 1.5:1 or more (a rule of ours, no source).
#pragma once

#include "sheet/theme.h"
#include "source/tree.h"

namespace chalkleaf::sheet {

inline constexpr double kLeastText = 4.5;
inline constexpr double kGoodText = 7.0;  ///< WCAG 2.2, 1.4.6 (level AAA)
inline constexpr double kLeastGraphics = 3.0;
inline constexpr double kLeastApart = 1.5;

/// Reports every colour that cannot be seen, with one that can. `root` is the tree the theme was
/// read from.
void check_contrast(const Theme& theme, const source::YamlNode& root, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
