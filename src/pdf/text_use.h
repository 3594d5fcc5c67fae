// Which characters the glyphs of a text stand for. Only for this room.
// Tested through tests/pdf/text_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "page/display_list.h"

namespace chalkleaf::pdf {

/// Glyphs that stand for the same characters.
struct Cluster {
  std::size_t first = 0;  ///< glyph
  std::size_t count = 0;
  std::string_view text;  ///< points into the item
};

/// The clusters of an item in the order of its glyphs, left to right or right to left.
std::vector<Cluster> clusters_of(const page::TextItem& item);

/// The text as a reader may be told it: plain spaces for all kinds of them, no controls, no U+FEFF
/// or U+FFFE (Matterhorn 31-028, 31-029). Never empty: U+2060, a word joiner, says that there is
/// nothing to read.
std::u16string readable(std::string_view text);

}  // namespace chalkleaf::pdf
