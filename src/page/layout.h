// A block becomes items at fixed positions: measuring and placing, without pages.
// Tested by tests/page/layout_test.cpp.
#pragma once

#include <vector>

#include "page/block.h"

namespace chalkleaf::page {

/// A block laid out, its top left corner at (0, 0).
struct Fragment {
  Size size;
  Length baseline;  ///< of its first line of text, from the top; its height when it has none
  std::vector<Item> items;
  Length last_baseline = {};  ///< of its last line, likewise
};

/// Lays blocks out with one worker's typesetter and gathers what did not work.
class Layout {
 public:
  explicit Layout(type::Typesetter& typesetter) : typesetter_(typesetter) {}

  /// The block at this width, at least `least_height` high where it can use the height.
  Fragment place(const Block& block, Length width, Length least_height = {});
  /// What place() gives, without the items.
  Fragment measure(const Block& block, Length width, Length least_height = {});
  /// The width the block would take if it had all the room.
  Length natural_width(const Block& block);
  /// Characters without glyphs, words that were cut; in the order met.
  const std::vector<type::TextProblem>& problems() const { return problems_; }

 private:
  Fragment place_text(const TextBlock& block, Length width);
  Fragment place_lines(const TextBlock& block, const type::Paragraph& set, std::size_t count,
                       Length width) const;
  Fragment place_around(const AroundBlock& block, Length width);
  Fragment place_text_around(const TextBlock& block, Length beside, Length width, Length room);
  Fragment place_stack(const StackBlock& block, Length width, Length least_height);
  Fragment place_row(const RowBlock& block, Length width, Length least_height);
  Fragment place_wrap(const WrapBlock& block, Length width);
  Fragment place_picture(const PictureBlock& block, Length width) const;
  Fragment place_box(const BoxBlock& block, Length width, Length least_height);
  std::vector<Length> track_widths(const RowBlock& block, Length width);

  type::Typesetter& typesetter_;
  std::vector<type::TextProblem> problems_;
  bool measuring_ = false;  ///< no items are made
};

/// Moves an item.
void move_by(Item& item, Length dx, Length dy);
/// Appends `from` to `to`, moved by (dx, dy).
void append_moved(std::vector<Item>& to, std::vector<Item>&& from, Length dx, Length dy);

}  // namespace chalkleaf::page
