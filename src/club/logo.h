// The club's logo: found, decoded, and looked at before it is printed on every sheet.
// Tested by tests/club/logo_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "club/pictures.h"
#include "plan/model.h"
#include "sheet/sheets.h"

namespace chalkleaf::club {

/// The picture that `logo:` of the club's file, at `club_path` on the disk, names. Nothing when it
/// names none, or one that cannot be printed (`unreadable-file`, `outside-folder`) or seen on paper
/// (`logo-unclear`).
std::optional<sheet::Logo> load_logo(const plan::Club& club, const std::string& club_path,
                                     const Pictures& pictures, Diagnostics& diagnostics);

}  // namespace chalkleaf::club
