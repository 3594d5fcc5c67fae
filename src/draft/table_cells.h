// The cells of a row: of a Markdown table, or set apart by bars, commas, tabs or many spaces.
// Internal to the room. Tested by tests/draft/document_test.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "draft/lines.h"

namespace chalkleaf::draft {

/// A cell: bytes of the file, trimmed.
struct Cell {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

/// All of a line, its margin too.
std::string_view row_of(const Source& source, const Line& line);
std::string_view text_of(const Source& source, const Cell& cell);
std::size_t bars_in(const Source& source, const Line& line);
/// Of a row without a bar at its begin.
std::vector<Cell> columns_of(const Source& source, const Line& line);
std::vector<Cell> cells_of(const Source& source, const Line& line);
/// `1`, `12`, `a`, `b.`
bool is_ordinal(std::string_view text);
/// The row between a head and its body: `|---|:--|`.
bool is_delimiter(std::string_view row);

}  // namespace chalkleaf::draft
