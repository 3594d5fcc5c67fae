// What a path written in a club's file leads to: a file inside the club's folder, or nothing.
//
// A plan comes from anyone who can open a pull request, so a path may not reach out of the folder:
// not by an absolute path, not by `..`, not through a symbolic link. Parts and pictures both ask
// here. Tested by tests/club/part_library_test.cpp and tests/club/pictures_test.cpp.
#pragma once

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/files.h"

namespace chalkleaf::club {

/// One kind of file of a club's. Safe to call from several threads.
class ClubFolder {
 public:
  enum class Miss {
    kNothing,
    kOutside,
    kUnreadable,  ///< the disk would not say what is there
  };
  /// The rules of the kind: where most of its files stand, which names it has, and which of the
  /// names at hand was meant.
  struct Kind {
    std::string folder;  ///< below the root: `parts`
    bool (*is_name)(std::string_view name);
    std::optional<std::string> (*meant)(std::string_view name,
                                        const std::vector<std::string>& names);
  };
  /// `root` is absolute and without links. `files` must outlive this.
  ClubFolder(const FileSystem& files, std::string root, Kind kind)
      : files_(files), root_(std::move(root)), kind_(std::move(kind)) {}

  /// The real path of the file that `target`, written in `from_path`, leads to.
  tl::expected<std::string, Miss> find(const std::string& from_path,
                                       const std::string& target) const;
  /// The target that was meant by one that leads to nothing: of the names in the folder it leads
  /// to, else in the kind's own. Empty when none is close.
  std::string suggestion(const std::string& from_path, const std::string& target) const;

 private:
  const std::vector<std::string>& names_in(const std::string& folder) const;

  const FileSystem& files_;
  std::string root_;
  Kind kind_;
  mutable std::mutex mutex_;
  mutable std::map<std::string, std::vector<std::string>> names_;  ///< of folders missed in
};

}  // namespace chalkleaf::club
