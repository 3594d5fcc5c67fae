// A dose in the short signs of the card and in the plain words of the home sheet.
// Tested by tests/sheet/dose_text_test.cpp.
#pragma once

#include <string>

#include "plan/model.h"
#include "sheet/labels.h"

namespace chalkleaf::sheet {

/// The dose with the rest that is counted but not written: the plan's own between sets.
plan::Dose with_rest(plan::Dose dose, const plan::Timings& timings);
/// `2 × 20 s, rest 20 s`, `12 steps each way: forwards, backwards`.
std::string short_dose(const plan::Dose& dose, const Labels& labels);
/// What to do and how often, and then how: `Hold for 20 seconds. Do it twice.` and `Rest 20 seconds
/// in between.`
struct PlainDose {
  std::string what;
  std::string how;  ///< may be empty
  /// Both, as one text.
  std::string whole() const { return how.empty() ? what : what + " " + how; }
};

/// The dose in sentences. The drill's name tells whether a time is held still.
PlainDose plain_dose(const plan::Dose& dose, std::string_view drill_name, const Labels& labels);

/// The same in as few words as are clear: `Hold 20 seconds, each side, 3 times.` and `Rest 20.`
PlainDose brief_plain_dose(const plan::Dose& dose, std::string_view drill_name,
                           const Labels& labels);

}  // namespace chalkleaf::sheet
