// A disk made of strings, for tests: what FileSystem promises, without a disk. Records what was
// read.
#pragma once

#include <algorithm>
#include <map>
#include <mutex>
#include <set>
#include <string>

#include "base/files.h"

namespace chalkleaf::support {

class MemoryFileSystem final : public FileSystem {
 public:
  MemoryFileSystem(std::initializer_list<std::pair<const std::string, std::string>> files = {})
      : files_(files) {}

  void put(const std::string& path, std::string text) {
    files_[normal_path(path)] = std::move(text);
  }
  bool has(const std::string& path) const { return files_.count(normal_path(path)) > 0; }
  const std::map<std::string, std::string>& all() const { return files_; }
  const std::set<std::string>& reads() const { return reads_; }
  /// Makes every write fail as on a full disk.
  void fill_up() { full_ = true; }

  tl::expected<std::string, FileError> read(const std::string& path,
                                            std::uint64_t most) const override {
    const std::lock_guard lock(mutex_);
    const std::string where = normal_path(path);
    reads_.insert(where);
    const auto found = files_.find(where);
    if (found == files_.end()) return tl::unexpected(not_found());
    if (found->second.size() > most) {
      return tl::unexpected(FileError{FileError::Kind::kTooLarge, "it is too large"});
    }
    return found->second;
  }
  FileKind kind(const std::string& path) const override {
    const std::lock_guard lock(mutex_);
    const std::string where = normal_path(path);
    if (files_.count(where) > 0) return FileKind::kFile;
    const std::string prefix = where == "." ? "" : where == "/" ? "/" : where + "/";
    const bool any = std::any_of(files_.begin(), files_.end(),
                                 [&](const auto& file) { return file.first.starts_with(prefix); });
    return any ? FileKind::kFolder : FileKind::kNothing;
  }
  tl::expected<std::vector<FolderEntry>, FileError> list(const std::string& folder) const override {
    if (kind(folder) != FileKind::kFolder) return tl::unexpected(not_found());
    const std::lock_guard lock(mutex_);
    const std::string where = normal_path(folder);
    const std::string prefix = where == "." ? "" : where == "/" ? "/" : where + "/";
    std::vector<FolderEntry> out;
    for (const auto& [path, text] : files_) {
      if (!path.starts_with(prefix)) continue;
      const std::string rest = path.substr(prefix.size());
      const std::size_t slash = rest.find('/');
      FolderEntry entry{rest.substr(0, slash),
                        slash == std::string::npos ? FileKind::kFile : FileKind::kFolder, false};
      if (out.empty() || out.back().name != entry.name) out.push_back(std::move(entry));
    }
    return out;
  }
  tl::expected<std::string, FileError> real_path(const std::string& path) const override {
    if (kind(path) == FileKind::kNothing) return tl::unexpected(not_found());
    return normal_path(path);
  }
  tl::expected<void, FileError> write_whole(const std::string& path,
                                            std::string_view bytes) override {
    const std::lock_guard lock(mutex_);
    if (full_) return tl::unexpected(FileError{FileError::Kind::kNoSpace, "the disk is full"});
    files_[normal_path(path)] = std::string(bytes);
    return {};
  }
  tl::expected<void, FileError> remove(const std::string& path) override {
    const std::lock_guard lock(mutex_);
    files_.erase(normal_path(path));
    return {};
  }

  /// Folders are only as many as there are files in them.
  tl::expected<void, FileError> remove_empty_folder(const std::string&) override { return {}; }

 private:
  static FileError not_found() { return {FileError::Kind::kNotFound, "there is no such file"}; }
  mutable std::mutex mutex_;
  std::map<std::string, std::string> files_;
  mutable std::set<std::string> reads_;
  bool full_ = false;
};

}  // namespace chalkleaf::support
