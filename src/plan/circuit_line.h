// Whether a drill's line is a circuit's, and what it says then.
//
// The grammar of the rounds stands in plan/circuit.h; here it is weighed against the name before it
// and the list below it, because `3 rounds of 30 s` is a dose as well. Tested by
// tests/plan/circuits_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "plan/drill_line.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// True when `written`, behind `name` and its colon, is a circuit rather than a dose.
bool is_circuit(const source::Text& name, const source::Text& written, StationsBelow stations);

/// Takes a circuit into `out`; false when there is none. Half of one, where nobody could take it
/// for a dose, is reported and made a circuit all the same, for the sake of its stations.
bool read_circuit(const source::Text& name, const source::Text& written, StationsBelow stations,
                  DrillLine& out, Diagnostics& diagnostics);
/// `3 rounds, 30 s work, 15 s rest` above a list, without a name; `3 rounds of:` too.
bool read_nameless_circuit(source::Text text, StationsBelow stations, DrillLine& out);
/// `Circuit x 3`, `Leg circuit (3 rounds)`
bool says_rounds_by_name(const source::Text& name);
/// `Circuit:` above its stations and no rounds anywhere: reported, and a circuit all the same.
bool report_circuit_without_rounds(source::Text text, StationsBelow stations, DrillLine& out,
                                   Diagnostics& diagnostics);
/// `Circuit, 3 rounds, 30 s work`: reported, and read as if it had its colon.
bool read_circuit_without_colon(const source::Text& name, const source::Text& written,
                                StationsBelow stations, DrillLine& out, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
