// club.yaml, read once for all plans below it. Tested by tests/club/build_test.cpp.
#pragma once

#include <memory>
#include <string>

#include "base/diagnostic.h"
#include "base/files.h"
#include "plan/model.h"

namespace chalkleaf::club {

/// Reads `<root>/club.yaml`, shown to the user as `display_path`. Always gives a club that can be
/// used; what is wrong is reported.
plan::Club load_club(const FileSystem& files, const std::string& root,
                     const std::string& display_path, Diagnostics& diagnostics);

}  // namespace chalkleaf::club
