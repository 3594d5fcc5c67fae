// A rotation whose grid is not written: its heading, groups and stations are. Internal to the room.
// Tested by tests/rota/read_test.cpp.
#pragma once

#include <optional>

#include "rota/lines.h"
#include "rota/model.h"
#include "rota/words.h"

namespace chalkleaf::rota {

/// Nothing unless the text says how long turns are, or what must and should be, and names groups
/// and stations.
std::optional<Rotation> wanted(const Source& source, const std::vector<Line>& lines,
                               const Words& words);

}  // namespace chalkleaf::rota
