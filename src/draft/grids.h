// The rotations of a draft (rota/read.h): which of its lines they are, and their grids as tables.
// Internal to the room. Tested by tests/draft/write_test.cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "draft/document.h"
#include "rota/notation.h"

namespace chalkleaf::draft {

/// Marks the lines of the grids and the headings above them; `title` is none, and may be null.
void mark_grids(const std::vector<rota::Rotation>& rotations, const DraftLine* title,
                std::vector<DraftLine>& lines);

/// Whether a line is one of the grid's, or told in it.
bool is_line_of(const rota::Rotation& rotation, const DraftLine& one);

/// True of a line of a grid and of the heading above one.
bool is_of_rotation(const DraftLine& one);

/// The grid as a Markdown table, in pieces; what we wrote ourselves is from nowhere.
std::vector<rota::Piece> table_pieces(const rota::Rotation& rotation);
/// All words of the grid, in lower case.
std::string grid_text(const rota::Rotation& rotation);
/// Whether a line has a word that is not among them.
bool has_other_words(std::string_view line, const std::string& words);

}  // namespace chalkleaf::draft
