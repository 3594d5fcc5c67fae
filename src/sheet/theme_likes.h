// A theme that is like another: the other's keys with its own over them. Internal to the room.
// Tested by tests/sheet/theme_test.cpp.
#pragma once

#include <optional>

#include "sheet/theme.h"
#include "source/tree.h"

namespace chalkleaf::sheet {

/// The whole theme as one tree, `like:` followed and taken out. Nothing when a file cannot be read
/// or follows itself (reported).
std::optional<source::YamlNode> read_with_likes(const SourcePtr& source, const OtherTheme& other,
                                                Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
