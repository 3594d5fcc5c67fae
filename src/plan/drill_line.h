// A drill's own line: `Dish hold: 2 x 20 s, rest 20 s`, cut into name and dose; also a circuit's,
// and a row of moves without a name. Tested by tests/plan/drill_test.cpp and circuits_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "plan/dose.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

struct DrillLine {
  Words name;
  std::vector<Words> choices = {};
  std::optional<Dose> dose = {};
  bool dose_unreadable = false;         ///< there is one, and it is reported
  Words unread = {};                    ///< the whole of an unreadable dose, to be kept as a note
  std::optional<Circuit> circuit = {};  ///< then there is no dose
};

/// What is listed below the line: some lines are a dose, or a circuit where stations follow.
enum class StationsBelow { kNone, kPerhaps, kSurely };

DrillLine read_drill_line(const source::Text& text, StationsBelow stations,
                          Diagnostics& diagnostics);
/// True when the line has a name, a colon and a dose that can be read.
bool is_drill_line(const source::Text& text);
/// The same, and more than a number behind the colon: such a line is hardly anything but a drill.
bool is_plainly_a_drill(const source::Text& text);
/// `Slow walk 1 min`, with the colon it lacks; nothing for what may be a sentence.
std::optional<source::Text> drill_without_colon(const source::Text& text);
/// True for a circuit with name and colon that could not be a dose.
bool is_plainly_a_circuit(const source::Text& text);

}  // namespace chalkleaf::plan
