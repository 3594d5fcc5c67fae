// `check` of a file that plans share and that is no plan: a part by itself, the club's file.
// Tested by tests/club/shared_files_test.cpp.
#pragma once

#include <string>

#include "base/diagnostic.h"
#include "base/files.h"
#include "plan/read.h"

namespace chalkleaf::club {

/// What is wrong with a part as far as it can be seen without a session around it: its language and
/// its links and pictures. What depends on a session (times, safety) is checked with those that use
/// it.
Diagnostics check_part(const FileSystem& files, const std::string& path, const std::string& display,
                       const plan::PartLookup& parts,
                       const plan::PictureLookup* pictures = nullptr);

}  // namespace chalkleaf::club
