// A drill with everything below it, from its list item. Tested by tests/plan/drill_test.cpp and
// circuits_test.cpp.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// A link to a part, or a drill with its dose.
bool is_step(const source::MarkNode& item);
/// A list with such an item, or one that lacks only its colon.
bool lists_drills(const source::MarkNode& list);

/// Reads the drill or circuit an item is; its first child is a paragraph that says something.
/// Safety quotes below it go to `safety`.
Drill read_drill_item(const source::MarkNode& item, std::vector<Safety>& safety,
                      Diagnostics& diagnostics);
/// Reads a list whose circuit stands above it in a line of its own.
void read_below_circuit(const source::MarkNode& list, Drill& circuit, std::vector<Safety>& safety,
                        Diagnostics& diagnostics);
/// A drill of one line, with nothing below it. What is wrong with the line's place is reported
/// already. A circuit has no stations yet.
Drill read_lone_drill(const source::Text& line, const Span& span, Diagnostics& diagnostics);
/// The same for a station of a circuit.
Drill read_lone_station(const source::Text& line, const Span& span, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
