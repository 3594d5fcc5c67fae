// A club on a disk of strings, beside the real data of the program: what the fuzzers compile.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic_text.h"
#include "base/environment.h"
#include "base/files.h"
#include "club/build.h"
#include "support/memory_files.h"
#include "support/places.h"

namespace chalkleaf::fuzz {

/// Paths in the repository are read from the real disk, all others from memory.
class Disk final : public FileSystem {
 public:
  support::MemoryFileSystem memory;

  tl::expected<std::string, FileError> read(const std::string& path,
                                            std::uint64_t most) const override {
    return of(path).read(path, most);
  }
  FileKind kind(const std::string& path) const override { return of(path).kind(path); }
  tl::expected<std::vector<FolderEntry>, FileError> list(const std::string& path) const override {
    return of(path).list(path);
  }
  tl::expected<std::string, FileError> real_path(const std::string& path) const override {
    return of(path).real_path(path);
  }
  tl::expected<void, FileError> write_whole(const std::string& path,
                                            std::string_view bytes) override {
    return memory.write_whole(path, bytes);
  }
  tl::expected<void, FileError> remove_empty_folder(const std::string& path) override {
    return memory.remove_empty_folder(path);
  }
  tl::expected<void, FileError> remove(const std::string& path) override {
    return memory.remove(path);
  }

 private:
  const FileSystem& of(const std::string& path) const {
    const bool real = path.starts_with(support::repository()) || path.starts_with("/usr/");
    return real ? static_cast<const FileSystem&>(real_) : memory;
  }
  RealFileSystem real_;
};

/// Counts what it hears, so that nothing can be left out as unused.
class Listener final : public club::Listener {
 public:
  void problem(const std::string& sentence) override { heard_ += sentence.size(); }
  void found(const Diagnostic& diagnostic) override {
    heard_ += render(diagnostic, MessageStyle::kHuman, Colouring::kPlain).size();
    heard_ += render(diagnostic, MessageStyle::kJson, Colouring::kPlain).size();
  }
  void progress(std::size_t, std::size_t) override {}
  std::size_t heard() const { return heard_; }

 private:
  std::size_t heard_ = 0;
};

/// Builds the club of these files (paths below /club); gives what was said and written.
inline std::size_t build(const std::vector<std::pair<std::string, std::string>>& files) {
  Disk disk;
  for (const auto& [path, text] : files) disk.memory.put("/club/" + path, text);
  const FixedEnvironment environment(
      std::map<std::string, std::string>{{"CHALKLEAF_DATA", support::repository()}});
  Listener listener;
  club::Request request;
  request.standing = "/club";
  const auto summary = club::build(request, {disk, environment, "/club/chalkleaf"}, listener);
  return listener.heard() + summary.sheets;
}

}  // namespace chalkleaf::fuzz
