// Circuits: one work and rest time for a list of stations, several rounds.
//
// Below a circuit's line the keys of a drill belong to the circuit; every other item is a station,
// a drill of its own. Tested by tests/plan/circuits_test.cpp.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "plan/drill_line.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// Whether an item of a list below a circuit is a station: neither a key of a drill, nor a picture.
bool is_station(const source::MarkNode& item);
/// What the lists below an item look like.
StationsBelow stations_below(const source::MarkNode& item);
/// Reports every circuit among the steps of a part that has no stations, unless its line is
/// reported already. Drills without a dose right behind it were meant as its stations, and become
/// them; with none it becomes a drill whose dose cannot be read.
void settle_circuits(std::vector<Step>& steps, Diagnostics& diagnostics);
/// Puts a station where it stands in the file among the others.
void add_station(Drill station, Drill& circuit);

}  // namespace chalkleaf::plan
