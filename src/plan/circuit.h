// The line of a circuit: `3 rounds, 30 s work, 15 s rest, 1 min between rounds`.
//
// Clauses in any order between commas, slashes or `then`. Which words coaches use is common
// practice, no source. Tested by tests/plan/dose_circuit_test.cpp.
#pragma once

#include <optional>
#include <tl/expected.hpp>

#include "dose/parser.h"
#include "plan/model.h"

namespace chalkleaf::plan {

/// The forms a circuit can have, as a hint.
inline constexpr const char* kCircuitForms =
    "write the circuit as one of: `3 rounds, 30 s work, 15 s rest`, `3 rounds of 30 s on / 15 s "
    "off, 1 min between rounds`, or `3 rounds` and a dose at each station";

struct CircuitRead {
  Circuit circuit;
  /// The text is a dose as well (`3 rounds of 30 s`, `30 s work, 15 s rest`): it is a circuit only
  /// where stations stand below it.
  bool may_be_dose = false;
  bool has_rounds = false;  ///< it says how many
};

/// `3`, `3x`, `3 times`, `3 sets`: rounds where a line is a circuit's for other reasons.
enum class BareRounds { kNo, kCount };

/// Reads what stands behind the name and colon of a circuit. Nothing when the text is no circuit; a
/// problem when it begins like one and cannot be read to its end.
tl::expected<std::optional<CircuitRead>, DoseProblem> parse_circuit(
    const source::Text& text, BareRounds bare = BareRounds::kNo);

}  // namespace chalkleaf::plan
