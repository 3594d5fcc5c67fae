// Which plan each sheet in a folder of sheets was made from: a small file in it, so that the sheets
// of a plan that is deleted or renamed are found, and nobody else's files are taken for them.
//
// One line a plan: where its sheets go, a tab, where the plan stands, both as seen from the folder.
// It may come from anyone who can open a pull request, so what leads out of the folder is not read.
// Tested by tests/club/made_list_test.cpp.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/files.h"

namespace chalkleaf::club {

class MadeList {
 public:
  static constexpr std::string_view kName = ".chalkleaf-sheets";

  /// Reads the list of the folder `out` (absolute, no links). One that is not there is empty.
  MadeList(const FileSystem& files, std::string out);

  /// Why it cannot be read; then it is not written either.
  const std::optional<FileError>& problem() const { return problem_; }
  /// The plan (absolute) by where its sheets go (absolute, without `-card.pdf`).
  const std::map<std::string, std::string>& plans() const { return plans_; }
  void add(const std::string& sheets, const std::string& plan);
  void forget(const std::string& sheets);
  /// Writes it when something has changed.
  tl::expected<void, FileError> save(FileSystem& files);

 private:
  std::string text() const;

  std::string out_;
  std::optional<FileError> problem_;
  std::map<std::string, std::string> plans_;
  bool changed_ = false;
};

/// Whether a plan is where it was.
enum class Presence {
  kThere,
  kGone,
  kUnknown,  ///< the disk would not say
};

/// Looks for files, listing each folder once.
class Absentees {
 public:
  explicit Absentees(const FileSystem& files) : files_(files) {}
  /// `path` lies below `root`, a folder that is there; both absolute.
  Presence look_for(const std::string& path, const std::string& root);

 private:
  const FileSystem& files_;
  std::map<std::string, std::optional<std::vector<FolderEntry>>> listed_;
};

}  // namespace chalkleaf::club
