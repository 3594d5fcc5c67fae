// The program's own drills, `themes/shelf` of its data: hundreds of files, of which a plan names a
// dozen.
//
// So that nobody waits for the others, the names of all were put into the program's pack when it
// was built, and a drill is read when it is first asked for. Tested by tests/club/shelf_test.cpp.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <utility>

#include "base/files.h"
#include "base/hash.h"
#include "club/resources.h"
#include "plan/library.h"

namespace chalkleaf::club {

/// What the pack has of a shelf: its names, under a key of the files in it, and each drill's front
/// matter.
std::map<Hash128, std::string> pack_shelf(const FileSystem& files, const std::string& data_folder,
                                          Diagnostics& diagnostics);

/// The shelf of a data folder; null when it has none. Without a pack that has its names the files
/// are asked for them. `files` has to outlive it.
std::shared_ptr<const plan::ShelfSource> open_shelf(const FileSystem& files,
                                                    const DataFolder& data);

}  // namespace chalkleaf::club
