// A table of names and turns becomes a rotation: which names are groups, which are stations, who is
// where. Internal to the room. Tested by tests/rota/read_test.cpp.
#pragma once

#include "rota/model.h"
#include "rota/table.h"

namespace chalkleaf::rota {

/// Nothing when it is no grid of groups and stations.
std::optional<Rotation> interpret(const Source& source, const Words& words, const Table& table);

/// Two grids of one evening and different stations, a hall each, become one.
bool join_halls(Rotation& first, const Rotation& second);

/// How names are compared: in lower case, without what stands in brackets and without `group`
/// before it.
std::string key_of(const Words& words, std::string_view name);

}  // namespace chalkleaf::rota
