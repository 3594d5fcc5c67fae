// The practice days of a home sheet and the boxes for them. Internal to the room.
//
// A box a day; a box a round and day of a circuit; a field to write in where the result is
// recorded. Tested by tests/sheet/home_sheet_test.cpp and circuit_test.cpp.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sheet/builder.h"

namespace chalkleaf::sheet {

class HomeDays {
 public:
  struct Day {
    std::string name;
    std::string short_name;
  };

  /// The plan's `repeat:` days; three numbered ones when it has none.
  HomeDays(const plan::Session& session, Builder& builder);

  const std::vector<Day>& all() const { return days_; }
  /// Of a box for each day on one line.
  Length width();
  /// A list of the days with what there is to do for this drill: tick, tick each round, write.
  Block boxes(const plan::Drill& drill);
  /// A list of the days with a field to write in, and above it what to write.
  Block fields(const plan::Drill& drill);

 private:
  /// The days beside each other, each with the boxes that `make` gives it below an LBody.
  Block list(const std::function<std::vector<page::RowCell>(const Day&, NodeId body)>& make);

  Builder& b_;
  const Labels& labels_;
  std::vector<Day> days_;
};

}  // namespace chalkleaf::sheet
