// The columns of a coach card that belong to the gymnasts: numbers, boxes to tick, fields to write
// in. Internal to the room.
//
// Gymnasts are numbers, never names. More of them than fit beside a drill go on further lines of
// boxes. Tested by tests/sheet/coach_card_test.cpp.
#pragma once

#include <vector>

#include "sheet/builder.h"

namespace chalkleaf::sheet {

class GymnastColumns {
 public:
  GymnastColumns(const plan::Session& session, Builder& builder);

  int count() const { return count_; }
  /// Of one line of boxes.
  Length width() const { return width_; }
  Length gap() const { return side_ / 4; }
  bool has_several_lines() const { return per_line_ < count_; }

  /// A cell of role `role` for each gymnast at the end of a row.
  std::vector<NodeId> cells(NodeId row, Role role) const;
  /// The numbers from 1, one owner each.
  Block numbers(const std::vector<Owner>& owners) const;
  /// A box in each cell; a field to write in where the drill's result is recorded.
  Block boxes(const std::vector<NodeId>& cells, const plan::Drill& drill) const;

 private:
  int lines(Length side) const;
  template <class MakeCell>
  Block grid(Length line_gap, MakeCell cell) const;

  Builder& b_;
  int count_ = 0;
  int per_line_ = 0;
  Length side_;
  Length width_;
};

}  // namespace chalkleaf::sheet
