// What stands below the keys of `club.yaml` besides groups: hall, kit, staff, contacts, words,
// checks, limits. Tested by tests/plan/club_test.cpp and club_mistakes_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "plan/keys.h"
#include "plan/model.h"

namespace chalkleaf::plan {

/// Reads them from the club file's keys into `club`, whose groups are known already.
void read_club_entries(const Keys& keys, Club& club, Diagnostics& diagnostics);

/// The named entries of a map, each name once; a name without words is passed over. Empty, and
/// reported with `example` as the hint, when the node is no map.
std::vector<const source::YamlEntry*> named_entries(const source::YamlNode& node,
                                                    std::string_view what, std::string_view example,
                                                    Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
