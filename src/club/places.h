// Paths as a person who stands somewhere would write them. Text only, no disk.
// Tested by tests/club/places_test.cpp.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::club {

/// `path` as seen from `folder`, with `..` where needed: `../parts/warm-up.md`. Both absolute and
/// normal. Where they share nothing but the root, `path` itself.
std::string path_from(std::string_view folder, std::string_view path);

/// What a plan's sheets are called after, made of its file's or folder's name: without what would
/// lead elsewhere, hide the file or be taken for an option (leading dots, dashes and spaces),
/// without what other systems cannot store (trailing dots and spaces), and with `_` for what must
/// not reach a terminal. `plan` when nothing is left.
std::string sheet_name(std::string_view name);

}  // namespace chalkleaf::club
