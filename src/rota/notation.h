// A rotation in the taught notation: its heading's turns, and its grid as a Markdown table.
// Tested by tests/rota/notation_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "rota/model.h"

namespace chalkleaf::rota {

/// `(4 x 28 min, 2 min to move)`, `(30, 30, 20 min)`; empty where no length is known.
std::string turns_text(const Rotation& rotation);

/// A stretch of text, and where the coach typed it; nowhere when we wrote it.
struct Piece {
  std::string text;
  Span span = {};
};
/// The table with the clock down its side, row by row, each row its cells. The first row is the
/// head.
std::vector<std::vector<Piece>> table_of(const Rotation& rotation);

/// What stands behind the last turn, such as lunch: no row of the table.
const Pause* pause_behind(const Rotation& rotation);

/// A clock in the way the coach writes them: `4.25` in the afternoon, or `16:25`.
std::string written_clock(const Rotation& rotation, int minutes);

}  // namespace chalkleaf::rota
