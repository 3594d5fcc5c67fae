// The rows of a part's table on the coach card: drills, circuits, kit to move, notes. Internal to
// the room. Tested by tests/sheet/coach_card_test.cpp and circuit_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "sheet/builder.h"
#include "sheet/card_columns.h"
#include "sheet/card_drill.h"

namespace chalkleaf::sheet {

class CardRows {
 public:
  CardRows(const plan::Session& session, const reason::Timetable& timetable, Builder& builder);

  const TickColumns& ticks() const { return ticks_; }
  /// Columns of the table before those of boxes: clock, drill and, where any drill has some, easier
  /// and harder.
  int word_columns() const { return has_variations_ ? 3 : 2; }
  int columns() const { return word_columns() + (part_ticked_ ? ticks_.count() : 0); }

  /// Begins the rows of a part.
  void begin(const reason::PartTime& part);
  /// What all drills of the part that was begun have in common, for its heading.
  const InCommon& common() const { return common_; }
  /// Whether any drill of the part that was begun is ticked off.
  bool part_ticked() const { return part_ticked_; }
  /// Whether this drill of that part is: where the plan's `ticks:` asks for boxes, all that is
  /// counted; else the register, what is done on apparatus in turns, and what is recorded.
  bool is_ticked(const plan::Drill& drill) const;
  /// A drill without boxes, as wide as a column.
  Block in_column(const plan::Drill& drill, const reason::DrillTime& time, NodeId body,
                  Length width);
  /// A circuit's own line, and the list its stations belong to.
  Block circuit(const plan::Drill& drill, const reason::DrillTime& time, NodeId body, NodeId& list,
                Length width);
  Block station(const plan::Drill& drill, const reason::DrillTime& time, std::size_t index,
                NodeId list, Length width);

  /// The row of one line of the plan below `body`, in pieces that need not stand on one page.
  std::vector<page::Slab> drill(const plan::Drill& drill, const reason::DrillTime& time,
                                NodeId body);
  std::vector<page::Slab> notes(const std::vector<const plan::Note*>& run, NodeId body);
  /// A note that is one paragraph.
  Block note(const std::vector<const plan::Note*>& run, NodeId body, Length width);
  /// `start` is from the session's begin; none when nobody knows.
  Block kit_move(const plan::KitMove& move, std::optional<Duration> start, NodeId body,
                 Length width);

 private:
  bool goes_round(const plan::Part& part) const;
  Block beside_clock(Block clock, Block content) const;
  void run_on(std::vector<Block>& lines) const;
  Block beside_or_around(Block left, Length left_width, Length gap, std::vector<Block> lines,
                         Length room) const;
  Block with_figure(Block clock, const plan::Drill& drill, Length width, Length height,
                    NodeId cell);
  Block clock_text(std::optional<Duration> start, TextRole role, Owner owner) const;
  /// At a station each turn has a clock of its own, so its drills have none.
  std::optional<Duration> shown(Duration start) const {
    return part_ != nullptr && part_->station_of ? std::nullopt : std::optional(start);
  }
  InCommon common_of(const reason::PartTime& part) const;
  CardDrill words_of(const plan::Drill& drill, const reason::DrillTime& time) const;
  Block boxes(const plan::Drill& drill, const std::vector<NodeId>& cells) const;
  Block drill_lines(const plan::Drill& drill, const reason::DrillTime& time, NodeId what,
                    NodeId others, const std::vector<NodeId>& cells);
  bool counts(const plan::Drill& drill) const {
    return drill.dose || drill.circuit || !drill.record.empty();
  }
  std::vector<page::Slab> ruled(std::vector<Block> pieces, Span origin) const;

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  TickColumns ticks_;
  Length clock_width_;
  bool has_variations_ = false;
  bool part_ticked_ = false;
  bool asked_ = false;                 ///< the plan says what there is a box for
  const plan::Part* part_ = nullptr;   ///< that was begun
  InCommon common_;                    ///< of its drills
  std::vector<NodeId> circuit_cells_;  ///< of the circuit that was begun
};

}  // namespace chalkleaf::sheet
