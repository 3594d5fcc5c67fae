// Tables whose cells have doses: a drill a row (`| Jog | 2 laps | spacing |`), or a part a row with
// a drill a cell (`| Monday | frog jumps x6 | candle hold 5, x3 |`).
//
// Any other table, a grid of groups and clock times above all, stays the table it is.
// Tested by tests/draft/document_test.cpp.
#pragma once

#include "draft/document.h"

namespace chalkleaf::draft {

/// Reads the rows [begin, end) of a table in place of what they were taken for.
void read_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                std::size_t begin, std::size_t end, const Setting& setting);

/// Finds lines whose cells are set apart by tabs or many spaces, where a column has doses or
/// minutes: they become rows of a table.
void find_columns(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines);

}  // namespace chalkleaf::draft
