// Paths as a person who stands somewhere would write them. Text only, no disk.
// Tested by tests/club/places_test.cpp.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::club {

/// `path` as seen from `folder`, with `..` where needed: `../parts/warm-up.md`. Both absolute and
/// normal. Where they share nothing but the root, `path` itself.
std::string path_from(std::string_view folder, std::string_view path);

}  // namespace chalkleaf::club
