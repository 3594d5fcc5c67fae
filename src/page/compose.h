// Blocks become pages.
//
// A document is a row of sections, a section a row of slabs. A slab is never split; a page ends
// between slabs. A slab that keeps with the next is never the last on its page. When a section goes
// on on a new page, its continuation (a repeated heading, an artifact) is set first. Where pages
// end is chosen for the whole document (page/page_breaks.h); so is which of several alternatives a
// slab is set in. What a page has left over goes, as far as that looks calm, between and into its
// slabs. Tested by tests/page/compose_test.cpp.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "page/block.h"

namespace chalkleaf::page {

/// Nodes of the structure tree, made one after another: [begin, end).
struct NodeRange {
  NodeId begin = 0;
  NodeId end = 0;
};

/// Another way to set a slab and those behind it: one block in the place of `covers` slabs of one
/// section. The nodes of what is not chosen are taken out of the tree.
struct Alternative {
  Block block;
  std::size_t covers = 1;
  std::int64_t dislike = 0;  ///< see page::Way
  Length most_stretch = {};  ///< see Slab
  NodeRange nodes = {};
};

/// An entry of the outline that begins inside a slab, so far below its top.
struct InnerOutline {
  Length below;
  OutlineEntry entry;
};

/// A piece that is never split over pages.
struct Slab {
  Block block;
  Length space_before;  ///< dropped at the top of a page
  bool keep_with_next = false;
  std::optional<OutlineEntry> outline = {};  ///< its page and y are filled in
  Span origin = {};                          ///< what to point at when it is too tall for any page
  bool begins_page = false;                  ///< nothing stands above it
  bool at_foot = false;                      ///< as low on its page as it can stand
  Length most_stretch = {};                  ///< so much higher it may be set to fill a page
  std::int64_t dislike = 0;                  ///< of this way to set it; see page::Way
  std::vector<Alternative> alternatives = {};
  NodeRange nodes = {};  ///< its own; needed where it or one before it has alternatives
  std::vector<InnerOutline> inner = {};
  /// Set above it where it begins a page, in the place of its section's; none: its section's.
  std::shared_ptr<const Block> continuation = {};
};

struct Section {
  std::vector<Slab> slabs;
  std::optional<Block> continuation = {};
};

/// Everything of a document but its pages.
struct Flow {
  Size paper;
  Insets margins;
  std::vector<Section> sections;
  std::vector<Node> tree;  ///< of the structure; the blocks name its nodes
  /// The foot of a page (from 0) of so many; an artifact, set inside the lower margin's upper edge.
  std::function<Block(std::size_t page, std::size_t pages)> foot;
  Length foot_gap;  ///< kept free between the text and the foot
  DocumentInfo info;
};

struct Composed {
  DisplayList list;
  Length page_height;        ///< of a page, between its head and its foot
  Length used;               ///< of all pages, by slabs and the space between them
  Length free_on_last_page;  ///< between the last slab and the foot
  std::vector<type::TextProblem> problems;
  std::vector<Span>
      too_tall;  ///< origins of slabs taller than a page; they stand on one all the same
};

/// How the slabs of a flow are best set: the way taken from the slab of that number in its section.
struct ChosenWay {
  std::size_t section = 0;
  std::size_t slab = 0;
  std::size_t way = 0;  ///< 0: its block; else an alternative's number from 1
};
/// What compose() would choose; for who must know before the blocks are made. A flow of empty
/// blocks of the right heights is enough.
std::vector<ChosenWay> choose_ways(Flow flow, type::Typesetter& typesetter);

Composed compose(Flow flow, type::Typesetter& typesetter);

/// Says what compose() could not set: `text-overflow` (an error for what does not fit a page, a
/// warning for a word that had to be cut) and `missing-glyph` (a warning). What is the program's
/// own text is said to be at `fallback`.
void report(const Composed& composed, const std::string& sheet_name, Diagnostics& diagnostics,
            const Span& fallback = {});

}  // namespace chalkleaf::page
