// A rotation as JSON, for `times --json` and for whoever measures how well it is read.
// Tested by tests/cli/times_json_test.cpp.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "rota/model.h"

namespace chalkleaf::rota {

/// Of a place the line of the coach's file; 0 when it is nowhere.
using LineOf = std::function<std::uint32_t(const Span&)>;

/// One object, in one line.
std::string json_of(const Rotation& rotation, const LineOf& line_of);

/// `twice-at-once`, `absent`, …: what a slip is called there.
std::string_view name_of_slip(std::size_t kind);

}  // namespace chalkleaf::rota
