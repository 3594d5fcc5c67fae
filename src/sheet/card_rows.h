// The rows of a part's table on the coach card: drills, circuits, kit to move, notes. Internal to
// the room. Tested by tests/sheet/coach_card_test.cpp and circuit_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "sheet/builder.h"
#include "sheet/card_columns.h"

namespace chalkleaf::sheet {

class CardRows {
 public:
  CardRows(const plan::Session& session, const reason::Timetable& timetable, Builder& builder);

  const TickColumns& ticks() const { return ticks_; }
  /// Columns of the table before those of boxes: clock, drill and, where any drill has some, easier
  /// and harder.
  int word_columns() const { return has_variations_ ? 3 : 2; }
  int columns() const { return word_columns() + ticks_.count(); }

  /// The row of one line of the plan below `body`, in pieces that need not stand on one page.
  std::vector<page::Slab> drill(const plan::Drill& drill, const reason::DrillTime& time,
                                NodeId body);
  std::vector<page::Slab> notes(const std::vector<const plan::Note*>& run, NodeId body);
  /// `start` is from the session's begin; none when nobody knows.
  page::Slab kit_move(const plan::KitMove& move, std::optional<Duration> start, NodeId body);

 private:
  Block beside_clock(Block clock, Block content) const;
  Block with_figure(Block clock, const plan::Drill& drill, Length height, NodeId cell);
  Block clock_text(std::optional<Duration> start, TextRole role, Owner owner) const;
  Block boxes(const plan::Drill& drill, const std::vector<NodeId>& cells) const;
  Block drill_lines(const plan::Drill& drill, const reason::DrillTime& time, NodeId what,
                    NodeId others, const std::vector<NodeId>& cells);
  void add_stations(const plan::Drill& drill, const reason::DrillTime& time, NodeId cell,
                    const std::vector<NodeId>& cells, std::vector<Block>& out);
  std::vector<page::Slab> ruled(std::vector<Block> pieces, Span origin) const;

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  TickColumns ticks_;
  Length clock_width_;
  bool has_variations_ = false;
};

}  // namespace chalkleaf::sheet
