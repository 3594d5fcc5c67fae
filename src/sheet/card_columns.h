// The columns of a coach card that are ticked off or written in: one a gymnast, or what the plan's
// `ticks:` asks for. Internal to the room.
//
// Gymnasts are numbered, never names. More columns than fit beside a drill go on further lines of
// boxes. Tested by tests/sheet/coach_card_test.cpp and ticks_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "sheet/builder.h"
#include "sheet/even_lines.h"
#include "sheet/practice_days.h"

namespace chalkleaf::sheet {

class TickColumns {
 public:
  TickColumns(const plan::Session& session, Builder& builder);

  int count() const { return static_cast<int>(heads_.size()); }
  /// Of one line of boxes.
  Length width() const { return width_; }
  Length gap() const { return side_ / 4; }
  bool has_several_lines() const { return per_line_ < count(); }
  /// What the boxes are for, where the numbers of the gymnasts do not say it; else empty.
  const std::string& meaning() const { return meaning_; }

  /// A cell of role `role` for each column at the end of a row.
  std::vector<NodeId> cells(NodeId row, Role role) const;
  /// What stands above the columns, one owner each.
  Block heads(const std::vector<Owner>& owners) const;
  /// A box in each cell; a field to write in where the drill's result is recorded. A drill of fewer
  /// sets than there are columns leaves the others empty.
  Block boxes(const std::vector<NodeId>& cells, const plan::Drill& drill) const;

 private:
  EvenLines lines(Length side) const;
  template <class MakeCell>
  Block grid(Length line_gap, MakeCell cell) const;

  Builder& b_;
  plan::Ticks::Each each_ = plan::Ticks::Each::kGymnast;
  std::vector<Occasion> heads_;
  std::string meaning_;
  int per_line_ = 0;
  Length side_;
  Length width_;
};

}  // namespace chalkleaf::sheet
