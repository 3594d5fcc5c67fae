// Which commit changed a file last: one walk over the first parents of HEAD answers for all files
// of a repository at once.
//
// Read only, by club/git_objects.h. Tested by tests/club/revision_test.cpp, against git itself.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/files.h"
#include "base/hash.h"

namespace chalkleaf::club {

/// What a repository knows of one file.
struct FileHistory {
  bool in_head = false;
  Hash128 content{};       ///< of HEAD's bytes of the file, when in_head
  std::string short_id;    ///< of the last commit that changed it; empty when not found
  std::int64_t time = 0;   ///< of that commit: seconds since 1970, UTC
  int offset_minutes = 0;  ///< from UTC, where it was made
};

/// True when a repository begins at or above `folder`, a sound one or not.
bool is_in_repository(const FileSystem& files, const std::string& folder);

/// What a repository knows of some files, and why it may not know all.
struct FileHistories {
  std::vector<std::optional<FileHistory>> files;  ///< in the order of the paths asked for
  /// Why the walk was given up before every file's last change was found: a clause about the
  /// repository; empty when it was not.
  std::string trouble;
};

/// For each of `paths` (absolute, no links) what the repository at or above `folder` knows of it;
/// nothing for a path outside it, and for all when there is none or it cannot be read.
FileHistories file_histories(const FileSystem& files, const std::string& folder,
                             const std::vector<std::string>& paths);

}  // namespace chalkleaf::club
