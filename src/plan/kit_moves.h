// Lines between drills that move kit: `Pick up: hoops, two each`, `Put away: hoops: 1 min`.
//
// The verb stands alone before a colon, so that `Set out to sea: 2 min` stays a game; what can be
// read as a dose behind it makes the line a drill. Which verbs people use is common practice, no
// source. Tested by tests/plan/kit_moves_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// A line that moves kit, cut at its first colon.
struct KitLine {
  KitMove::Way way = KitMove::Way::kPickUp;
  Words verb;
  source::Text rest;  ///< `hoops, two each: 1 min`; may be empty
};
/// Nothing when the line does not begin with such a verb and a colon, or is a drill with a dose.
std::optional<KitLine> kit_line(const source::Text& text);

/// What the line says; `span` is the whole item, `listed` the kit of a list below the line. Nothing
/// when it names no kit (reported). A time that cannot be read is reported and stays in the words.
std::optional<KitMove> read_kit_move(const KitLine& line, const Span& span,
                                     const std::vector<Words>& listed, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
