// The practice days of a home sheet and the boxes for them. Internal to the room.
//
// A box a day; a box a round and day of a circuit; a box a set and day or a box a day of every
// week, where the plan's `ticks:` asks for it; a field to write in where the result is recorded.
// Tested by tests/sheet/home_sheet_test.cpp, circuit_test.cpp and ticks_test.cpp.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "sheet/builder.h"
#include "sheet/even_lines.h"
#include "sheet/practice_days.h"

namespace chalkleaf::sheet {

class HomeDays {
 public:
  HomeDays(const plan::Session& session, Builder& builder);

  /// What is written down once: a week of the block, else a day.
  const std::vector<Occasion>& times() const { return weeks_.empty() ? days_ : weeks_; }
  /// How often the sheet is practised in all.
  std::size_t count() const { return days_.size() * (weeks_.empty() ? 1 : weeks_.size()); }
  /// Of the drill's boxes where they are one line that needs no words above it.
  std::optional<Length> line_width(const plan::Drill& drill) const;
  /// What there is to do for this drill: tick, tick each round, write; at most `room` wide.
  Block boxes(const plan::Drill& drill, Length room);
  /// The days as boxes in one line, each with its letter inside; `what` is ticked off.
  Block lettered(const std::string& what);
  Length lettered_width() const;
  /// The letters of the days' boxes.
  const std::vector<std::string>& letters() const { return letters_; }
  /// One box with its letters, an entry of `list`; wider than it is high it is written in.
  Block lettered_box(const std::string& letters, const std::string& description, NodeId list,
                     Length wide);
  /// Whether a drill has boxes of its own in a part that is otherwise ticked once.
  bool has_own(const plan::Drill& drill) const;
  /// Whether what a part's heading ticks is a grid of weeks.
  bool by_weeks() const { return !weeks_.empty(); }
  /// A list of the times with a field to write in, and above it what to write; all of it on one
  /// line where that needs no more than `room`.
  Block fields(const plan::Drill& drill, Length room = {});

 private:
  using MakeCells = std::function<std::vector<page::RowCell>(const Occasion&, NodeId body)>;
  std::optional<Block> field_line(const plan::Drill& drill, std::vector<type::Inline> what,
                                  Length room);
  /// The roomy sheet has its fields below each other.
  Length line_room(Length room) const {
    return b_.arrangement() == Arrangement::kRoomy ? Length() : room;
  }
  Length gap() const;         ///< between boxes, and before the first
  Length days_width() const;  ///< of the longest name
  std::int64_t boxes_a_day(const plan::Drill& drill) const;
  /// The times beside each other, each with the boxes that `make` gives it below an LBody.
  Block list(const std::vector<Occasion>& times, const MakeCells& make);
  std::int64_t boxes_that_fit(const plan::Drill& drill, Length room) const;
  std::vector<page::RowCell> in_lines(std::vector<Block> boxes, Length room) const;
  Block days_by_weeks(const plan::Drill& drill, Length room);

  Builder& b_;
  const Labels& labels_;
  bool each_set_ = false;
  std::vector<Occasion> days_;
  std::vector<Occasion> weeks_;       ///< of the block, when there is one
  std::vector<std::string> letters_;  ///< of `days_`
};

}  // namespace chalkleaf::sheet
