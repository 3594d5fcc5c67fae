// The scale a sheet is set at: as its theme has it, larger when a page would look lost, smaller
// when that saves one, or whatever fits the number of pages the coach asked for.
//
// A scale moves spacing, figures and headings; text never goes below the theme's minimum, so there
// is an end to what can be made to fit. Composing is what takes time, so few scales are tried (the
// most is kMostTries). Internal to the room. Tested by tests/sheet/fit_test.cpp.
#pragma once

#include <functional>
#include <optional>

#include "page/compose.h"
#include "plan/model.h"
#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// The scales that are tried, as factors of the paper's own.
inline constexpr double kSmallestFactor = 0.7;  ///< below it headings are no larger than text
inline constexpr double kLargestFactor = 1.4;
inline constexpr double kSmallestCompact = 0.8;  ///< of the usual home sheet
inline constexpr double kSmallestClose = 0.62;   ///< the same, as close as can be read
inline constexpr int kMostTries = 6;

/// Sets the sheet at a factor.
using ComposeAt = std::function<page::Composed(double factor)>;

/// How many pages it takes, the last one in part: 2.4.
double pages_needed(const page::Composed& composed);

/// Sets the sheet at a factor and in an arrangement.
using ArrangeAt = std::function<page::Composed(double factor, Arrangement arrangement)>;
/// The usual home sheet: on as few pages as it can be, or on one sheet of paper, both sides, as
/// large as that allows.
page::Composed compose_compact(const ArrangeAt& at);

/// The sheet without `fit:`: a short one larger, one that runs over a little smaller.
page::Composed compose_freely(const ComposeAt& at);

struct Fitted {
  page::Composed composed;
  std::optional<double> needed;  ///< pages at the smallest scale, when they are too many
};
/// The largest that takes no more than `pages`; when even the smallest takes more, the smallest.
Fitted compose_to_fit(int pages, const ComposeAt& at);

/// Reports `does-not-fit`: by how much, and the drills that have the most text to shorten.
void report_does_not_fit(const plan::Session& session, const plan::Sourced<plan::PageCount>& asked,
                         double needed, const std::string& sheet_name, Paper paper,
                         Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
