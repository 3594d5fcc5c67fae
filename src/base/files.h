// The seam to the disk. Everything that reads or writes a file goes through a FileSystem, so that
// tests can hand in one made of strings (tests/support/memory_files.h) and so that nothing reads or
// writes unseen. Tested by tests/base/files_test.cpp.
#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/system_calls.h"

namespace chalkleaf {

/// Why a file could not be used.
struct FileError {
  enum class Kind { kNotFound, kIsFolder, kNoPermission, kTooLarge, kNoSpace, kOther };
  Kind kind = Kind::kOther;
  std::string message;  ///< in words, without the path
};

/// What stands at a path.
enum class FileKind { kNothing, kFile, kFolder, kOther };

/// One entry of a folder.
struct FolderEntry {
  std::string name;
  FileKind kind = FileKind::kFile;  ///< of what a link leads to
  bool is_link = false;
  bool operator==(const FolderEntry&) const = default;
};

/// A file's bytes, there for as long as `owner` is.
struct FileBytes {
  std::shared_ptr<const void> owner;
  std::string_view bytes;
};

/// A file that is written, but not yet where it belongs.
struct StagedFile {
  std::string path;       ///< where it will stand
  std::string temporary;  ///< where it lies until then; empty: it is `bytes`
  std::string bytes = {};
};

/// Paths are UTF-8 with `/`. Thread-safe: workers share one.
class FileSystem {
 public:
  virtual ~FileSystem() = default;
  /// The whole file, refusing one of more than `most` bytes (devices and pipes are refused too).
  virtual tl::expected<std::string, FileError> read(const std::string& path,
                                                    std::uint64_t most) const = 0;
  /// The same without reading what is never looked at. Only for what is installed with the machine
  /// or the program, where a new version of a file replaces it: one that is made shorter under us
  /// would end the program.
  virtual tl::expected<FileBytes, FileError> map(const std::string& path, std::uint64_t most) const;
  /// `kOther` also when the disk would not say: what cannot be looked at is not taken for missing.
  virtual FileKind kind(const std::string& path) const = 0;
  /// The entries of a folder in byte order of their names.
  virtual tl::expected<std::vector<FolderEntry>, FileError> list(
      const std::string& folder) const = 0;
  /// The absolute path with every link followed; an error when there is nothing there.
  virtual tl::expected<std::string, FileError> real_path(const std::string& path) const = 0;
  /// Writes all bytes to a temporary file beside `path`, then renames it: either the whole new file
  /// is there afterwards or the old state, even if the machine stops at any moment. Makes missing
  /// folders.
  virtual tl::expected<void, FileError> write_whole(const std::string& path,
                                                    std::string_view bytes) = 0;
  /// Removes a file; no error when there is none.
  virtual tl::expected<void, FileError> remove(const std::string& path) = 0;
  /// Removes a folder that is empty; one that is not stays, and that is an error.
  virtual tl::expected<void, FileError> remove_empty_folder(const std::string& path) = 0;

  // write_whole() in four steps, for many files: a disk makes fifty files safe about as fast as
  // one. Those made of strings have nothing to be made safe, so what stands here will do for them.

  /// Writes the bytes beside `path`. What killed runs left there goes.
  virtual tl::expected<StagedFile, FileError> stage(const std::string& path, std::string bytes);
  /// Waits until the staged bytes are on the disk.
  virtual tl::expected<void, FileError> make_safe(const StagedFile& file);
  /// Renames the file to where it belongs, over what stood there.
  virtual tl::expected<void, FileError> put_in_place(const StagedFile& file);
  /// Waits until all names given since the last time are on the disk.
  virtual tl::expected<void, FileError> settle();
  /// Takes a staged file back.
  virtual void drop(const StagedFile& file);

  /// Gives a file another name, in another folder perhaps; an error when something has that name.
  /// Makes missing folders.
  virtual tl::expected<void, FileError> move_new(const std::string& from, const std::string& to);
};

/// The machine's own disk.
class RealFileSystem final : public FileSystem {
 public:
  /// `calls` must outlive it; other than the machine's own in tests.
  explicit RealFileSystem(SystemCalls& calls = system_calls()) : calls_(calls) {}

  tl::expected<std::string, FileError> read(const std::string& path,
                                            std::uint64_t most) const override;
  tl::expected<FileBytes, FileError> map(const std::string& path,
                                         std::uint64_t most) const override;
  FileKind kind(const std::string& path) const override;
  tl::expected<std::vector<FolderEntry>, FileError> list(const std::string& folder) const override;
  tl::expected<std::string, FileError> real_path(const std::string& path) const override;
  tl::expected<void, FileError> write_whole(const std::string& path,
                                            std::string_view bytes) override;
  tl::expected<void, FileError> remove(const std::string& path) override;
  tl::expected<void, FileError> remove_empty_folder(const std::string& path) override;
  tl::expected<StagedFile, FileError> stage(const std::string& path, std::string bytes) override;
  tl::expected<void, FileError> make_safe(const StagedFile& file) override;
  tl::expected<void, FileError> put_in_place(const StagedFile& file) override;
  tl::expected<void, FileError> settle() override;
  void drop(const StagedFile& file) override;
  tl::expected<void, FileError> move_new(const std::string& from, const std::string& to) override;

 private:
  tl::expected<StagedFile, FileError> stage_bytes(const std::string& path, std::string_view bytes);
  tl::expected<void, FileError> make_folders(const std::string& folder);
  void clear_left_overs(const std::string& folder);
  void note_names_of(const std::string& folder);

  SystemCalls& calls_;
  std::mutex mutex_;                  ///< guards the two below
  std::set<std::string> cleared_;     ///< folders that were looked through for left-overs
  std::set<std::string> to_be_safe_;  ///< folders in which names were given
};

/// Joins two paths with one `/`; an absolute second path stands alone.
std::string join_path(std::string_view folder, std::string_view name);
/// Resolves `.` and `..` by text alone; leading `..` of a relative path stay.
std::string normal_path(std::string_view path);
/// The part before the last `/` ("." when there is none).
std::string parent_path(std::string_view path);
/// The part after the last `/`.
std::string file_name(std::string_view path);
/// The file name without its last extension.
std::string file_stem(std::string_view path);
/// `path` with every link followed in as much of it as exists: where a file made there would really
/// be.
std::string resolved_path(const FileSystem& files, const std::string& path);
/// True when `path` is `folder` or lies below it; both absolute and normal.
bool is_within(std::string_view path, std::string_view folder);
/// `path` as seen from `folder`, when it lies below it; otherwise `path` itself. Both absolute and
/// normal.
std::string relative_to(std::string_view path, std::string_view folder);

}  // namespace chalkleaf
