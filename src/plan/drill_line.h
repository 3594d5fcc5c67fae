// A drill's own line: `Dish hold: 2 x 20 s, rest 20 s`, cut into name and dose.
// Tested by tests/plan/drill_test.cpp.
#pragma once

#include <optional>

#include "base/diagnostic.h"
#include "plan/dose.h"
#include "source/tree.h"

namespace chalkleaf::plan {

struct DrillLine {
  Words name;
  std::optional<Dose> dose;
  bool dose_unreadable = false;  ///< there is one, and it is reported
  Words unread;                  ///< the whole of an unreadable dose, to be kept as a note
};

DrillLine read_drill_line(const source::Text& text, Diagnostics& diagnostics);
/// True when the line has a name, a colon and a dose that can be read.
bool is_drill_line(const source::Text& text);
/// The same, and more than a number behind the colon: such a line is hardly anything but a drill.
bool is_plainly_a_drill(const source::Text& text);

}  // namespace chalkleaf::plan
