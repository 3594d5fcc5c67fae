// A dose in the short signs of the card and in the plain words of the home sheet.
// Tested by tests/sheet/dose_text_test.cpp.
#pragma once

#include <string>

#include "plan/dose.h"
#include "sheet/labels.h"

namespace chalkleaf::sheet {

/// `2 × 20 s, rest 20 s`, `12 steps each way: forwards, backwards`.
std::string short_dose(const plan::Dose& dose, const Labels& labels);
/// `Hold for 20 seconds. Do it twice. Rest 20 seconds in between.` The drill's name tells whether a
/// time is held still.
std::string plain_dose(const plan::Dose& dose, std::string_view drill_name, const Labels& labels);

}  // namespace chalkleaf::sheet
