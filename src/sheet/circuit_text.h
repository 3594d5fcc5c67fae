// A circuit's rounds and times in the short signs of the card and in the plain words of the home
// sheet. Tested by tests/sheet/circuit_test.cpp.
#pragma once

#include <string>

#include "plan/model.h"
#include "sheet/dose_text.h"
#include "sheet/labels.h"

namespace chalkleaf::sheet {

/// `3 rounds · 30 s work, 15 s rest · 1 min between rounds`
std::string short_circuit(const plan::Circuit& circuit, const Labels& labels);
/// `Go round 3 times. Keep going for 30 seconds at each one.` and `Rest 15 seconds before the next
/// one. Rest 1 minute between rounds.`
PlainDose plain_circuit(const plan::Circuit& circuit, const Labels& labels);

}  // namespace chalkleaf::sheet
