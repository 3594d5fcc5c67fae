// Where a coach's text has groups going from station to station, and what it says of it.
//
// Any text: the taught notation (`## Rotations (4 x 28 min, 2 min to move)`, `- groups: …`, a
// table) and what is typed into a phone. Reads lines, not Markdown, so that a draft and the plan
// made of it are read alike. Tested by tests/rota/read_test.cpp.
#pragma once

#include <vector>

#include "rota/model.h"
#include "rota/words.h"

namespace chalkleaf::rota {

/// In the order they stand in. `source` must outlive what is given back.
std::vector<Rotation> read(const Source& source, const Words& words);

}  // namespace chalkleaf::rota
