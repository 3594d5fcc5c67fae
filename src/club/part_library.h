// The shared parts of one club: found by link, read once, used by many plans and workers.
//
// Tested by tests/club/part_library_test.cpp.
#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "base/files.h"
#include "club/club_folder.h"
#include "plan/read.h"

namespace chalkleaf::club {

class PartLibrary final : public plan::PartLookup {
 public:
  /// `root` is absolute and without links; `standing` is where the user stands, for the paths in
  /// messages. `files` must outlive it.
  PartLibrary(const FileSystem& files, std::string root, std::string standing);

  /// `from_path` is the absolute path of the plan or part the link stands in.
  tl::expected<std::shared_ptr<const plan::FoundPart>, plan::LinkProblem> find(
      const std::string& from_path, const std::string& target) const override;

 private:
  using Part = std::shared_ptr<const plan::FoundPart>;
  /// One file's turn to be read: by the first who asks, while others wait for this file alone.
  struct Entry {
    std::once_flag once;
    tl::expected<Part, plan::LinkProblem> result;
  };

  tl::expected<Part, plan::LinkProblem> read(const std::string& path) const;

  const FileSystem& files_;
  std::string standing_;
  ClubFolder folder_;
  mutable std::mutex mutex_;  ///< guards entries_ and kept_bytes_
  mutable std::map<std::string, std::shared_ptr<Entry>> entries_;  ///< by real path
  mutable std::size_t kept_bytes_ = 0;
};

}  // namespace chalkleaf::club
