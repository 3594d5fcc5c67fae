// What can stand on a page: a small set of blocks that nest.
//
// `sheet` builds blocks and names no coordinate; `page` measures and places them. Every leaf says
// which node of the structure tree it belongs to, or that it is an artifact, so that the tags of
// the PDF are as old as the block itself.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/geometry.h"
#include "page/display_list.h"
#include "type/lines.h"

namespace chalkleaf::page {

struct Block;
struct RowCell;

enum class Align { kStart, kCentre, kEnd };

/// A piece of a paragraph that is read out and copied as other words than the eye sees: `▼` is
/// `Easier:`.
struct ReadAs {
  std::size_t piece = 0;  ///< index in TextBlock::text
  std::string words;
};

/// Paths in a space of their own, (0, 0) at the top left.
struct DrawingBlock {
  Size size;
  std::vector<PathItem> paths;
  Length baseline;  ///< where it stands on a line of text; its bottom when zero
};

/// From this piece of a paragraph on its text belongs to another node: one paragraph for the eye
/// may be several entries of a list.
struct PieceOwner {
  std::size_t piece = 0;
  Owner owner = Owner::none(Artifact::kLayout);
};

/// A drawing that stands in a line where a piece of spaces, as wide as it, begins: a box to tick.
struct Inlaid {
  std::size_t piece = 0;
  DrawingBlock drawing;
};

/// What stands between two things that are said; it is not seen where a line ends behind it.
inline constexpr std::string_view kSeparator = "\u00A0· ";

/// A paragraph. It takes the width it is given.
struct TextBlock {
  std::vector<type::Inline> text;
  Length leading;  ///< baseline to baseline
  Align align = Align::kStart;
  Owner owner = Owner::none(Artifact::kLayout);
  std::vector<ReadAs> read_as = {};
  std::vector<PieceOwner> owners = {};  ///< in the order of their pieces
  std::vector<Inlaid> inlaid = {};
};

/// Blocks below each other.
struct StackBlock {
  std::vector<Block> children;
  Length gap;
  bool last_at_bottom = false;  ///< when the stack is given more height than it needs
};

enum class RowAlign {
  kTop,
  kMiddle,
  kBaseline,      ///< first lines of text on one baseline
  kLastBaseline,  ///< last lines of text on one baseline
  kStretch,       ///< every cell gets the height of the tallest
};

/// Blocks beside each other.
struct RowBlock {
  std::vector<RowCell> cells;
  Length gap;
  RowAlign align = RowAlign::kTop;
};

/// Blocks below each other that begin beside another at the left and go on below it over the whole
/// width. A paragraph goes on from one to the other; what is no paragraph stands where it begins.
struct AroundBlock {
  enum class Read { kBehindFirst, kFirst };
  std::vector<Block> left;  ///< one: a figure
  Length left_width;
  Length gap;  ///< between the two
  std::vector<Block> children;
  Length line_gap;                      ///< between the children
  Read left_read = Read::kBehindFirst;  ///< the figure is seen beside the name, read behind it
};

/// Blocks beside each other, each as wide as it needs to be, going on below when the width is used
/// up.
struct WrapBlock {
  std::vector<Block> children;
  Length gap;       ///< between neighbours
  Length line_gap;  ///< between lines
  Align align = Align::kStart;
};

/// A box around one block.
struct BoxBlock {
  std::vector<Block> content;  ///< one, or none
  Insets padding;
  std::optional<Colour> fill;
  std::optional<Stroke> border;  ///< drawn inside the box's edge
  Length radius;
};

/// A picture. Where there is less width than it asks for it is set smaller, in its own shape.
struct PictureBlock {
  Size size;
  std::string source;  ///< names it to whoever supplies its pixels
  Owner owner = Owner::none(Artifact::kLayout);
  Align align = Align::kStart;
};

/// An artwork at a size of its own.
struct ArtBlock {
  Size size;
  std::shared_ptr<const Artwork> art;
  Owner owner = Owner::none(Artifact::kLayout);
};

/// Empty space.
struct SpaceBlock {
  Length height;
};

struct Block {
  std::variant<TextBlock, StackBlock, RowBlock, WrapBlock, AroundBlock, BoxBlock, DrawingBlock,
               PictureBlock, ArtBlock, SpaceBlock>
      content;
};

/// How wide a cell of a row is.
struct Track {
  enum class Kind { kFixed, kNatural, kFlexible };
  Kind kind = Kind::kFlexible;
  Length length;           ///< kFixed
  std::int64_t share = 1;  ///< kFlexible: of what the others leave
  static Track fixed(Length l) { return {Kind::kFixed, l, 0}; }
  static Track natural() { return {Kind::kNatural, {}, 0}; }
  static Track flexible(std::int64_t n = 1) { return {Kind::kFlexible, {}, n}; }
};

struct RowCell {
  Track track;
  Block block;
};

}  // namespace chalkleaf::page
