// A table of the coach's, kept as a table. Internal to the room.
#pragma once

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// The rows of a table as blocks to set below each other, tagged Table, TR, TH and TD below
/// `parent`; the head stands with the first row. Nothing, and no node is made, when a row has no
/// cells or the longest words of the columns do not fit into `room` beside each other.
std::vector<Block> note_table(NodeId parent, std::span<const plan::Note* const> rows, Length room,
                              Builder& builder);

}  // namespace chalkleaf::sheet
