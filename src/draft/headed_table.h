// Tables whose first row says what stands in each column:
// `Section | Mins | Drill | Sets | Reps | Notes`.
// Internal to the room. Tested by tests/draft/document_test.cpp.
#pragma once

#include <vector>

#include "draft/document.h"
#include "draft/table_cells.h"

namespace chalkleaf::draft {

/// Makes a row the heading of a part that is called as one of its cells.
void open_part(DraftLine& line, const Cell& name);

/// True when the cells are such a row.
bool is_table_head(const Lexicon& words, const Source& source, const std::vector<Cell>& cells);

/// Reads the rows below a head; false, and nothing done, where the first row is none.
bool read_headed_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                       std::size_t begin, std::size_t end, const Setting& setting);

}  // namespace chalkleaf::draft
