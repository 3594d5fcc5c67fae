// How RealFileSystem writes: beside the place, safe on the disk, then renamed.
//
// rename() alone is not enough: after a power cut a file may have its new name and none of its
// bytes, and a name may be lost that was there (POSIX.1-2017, fsync(); ext4(5), auto_da_alloc). So
// the bytes are made safe before the name is given, and the name after. Tested by
// tests/base/real_files_test.cpp.
#include <fcntl.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>

#include "base/left_overs.h"
#include "base/posix_errors.h"

namespace chalkleaf {
namespace {

int write_all(SystemCalls& calls, int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = calls.write(file, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    if (n == 0) return ENOSPC;  // a disk that takes nothing and says nothing; never wait for it
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}

// What disks say that cannot make a folder safe, or need not.
bool cannot_be_synced(int code) { return code == EINVAL || code == ENOTSUP || code == EROFS; }

}  // namespace

tl::expected<StagedFile, FileError> FileSystem::stage(const std::string& path, std::string bytes) {
  return StagedFile{path, {}, std::move(bytes)};
}
tl::expected<void, FileError> FileSystem::make_safe(const StagedFile&) { return {}; }
tl::expected<void, FileError> FileSystem::put_in_place(const StagedFile& file) {
  return write_whole(file.path, file.bytes);
}
tl::expected<void, FileError> FileSystem::settle() { return {}; }
void FileSystem::drop(const StagedFile&) {}
tl::expected<void, FileError> FileSystem::move_new(const std::string& from, const std::string& to) {
  if (kind(to) != FileKind::kNothing) return tl::unexpected(from_errno(EEXIST));
  constexpr std::uint64_t kAny = UINT64_MAX;
  const auto bytes = read(from, kAny);
  if (!bytes) return tl::unexpected(bytes.error());
  if (auto written = write_whole(to, *bytes); !written) return written;
  return remove(from);
}

tl::expected<void, FileError> RealFileSystem::make_folders(const std::string& folder) {
  if (folder == "." || folder == "/") return {};
  if (calls_.mkdir(folder) == 0) {
    note_names_of(parent_path(folder));
    return {};
  }
  if (errno == EEXIST) {
    struct stat s {};
    if (calls_.status_of(folder, s) != 0) return tl::unexpected(from_errno(errno));
    if (S_ISDIR(s.st_mode)) return {};
    return tl::unexpected(
        FileError{FileError::Kind::kOther, "a file stands where a folder should be"});
  }
  if (errno != ENOENT) return tl::unexpected(from_errno(errno));
  if (auto parent = make_folders(parent_path(folder)); !parent) return parent;
  if (calls_.mkdir(folder) != 0 && errno != EEXIST) return tl::unexpected(from_errno(errno));
  note_names_of(parent_path(folder));
  return {};
}

void RealFileSystem::note_names_of(const std::string& folder) {
  const std::lock_guard lock(mutex_);
  to_be_safe_.insert(folder);
}

// Once a folder and run. What goes wrong here is no fault of the run: the next one tries again.
void RealFileSystem::clear_left_overs(const std::string& folder) {
  {
    const std::lock_guard lock(mutex_);
    if (!cleared_.insert(folder).second) return;
  }
  std::vector<std::string> names;
  if (calls_.list(folder, names) != 0) return;
  for (const std::string& name : names) {
    const auto whose = read_temporary_name(name);
    if (!whose) continue;
    const std::string path = join_path(folder, name);
    struct stat s {};
    if (calls_.status_here(path, s) != 0 || !S_ISREG(s.st_mode) || s.st_uid != ::geteuid())
      continue;
    if (is_left_over(*whose, s.st_mtime, std::time(nullptr))) calls_.unlink(path);
  }
}

tl::expected<StagedFile, FileError> RealFileSystem::stage_bytes(const std::string& path,
                                                                std::string_view bytes) {
  const std::string folder = parent_path(path);
  if (auto made = make_folders(folder); !made) return tl::unexpected(made.error());
  clear_left_overs(folder);
  // Unique within the process by the counter, between processes by the process number. What an
  // earlier run with the same number was killed over may hold a name: then the next one will do.
  static std::atomic<unsigned> counter{0};
  constexpr int kTries = 100;
  StagedFile out{path, {}};
  int opened = -1;
  for (int i = 0; i < kTries && opened < 0; ++i) {
    out.temporary = join_path(folder, temporary_name(counter++));
    opened = calls_.open(out.temporary, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
    if (opened < 0 && errno != EEXIST) break;
  }
  if (opened < 0) return tl::unexpected(from_errno(errno));
  Descriptor file(calls_, opened);
  int problem = write_all(calls_, file.get(), bytes);
  // The disk works while the next sheets are set, so that who waits later waits less. Not through
  // the seam: where it fails nothing is lost but time.
  if (problem == 0) (void)::sync_file_range(file.get(), 0, 0, SYNC_FILE_RANGE_WRITE);
  if (file.close_checked() != 0 && problem == 0) problem = errno;
  if (problem == 0) return out;
  drop(out);
  return tl::unexpected(from_errno(problem));
}

tl::expected<StagedFile, FileError> RealFileSystem::stage(const std::string& path,
                                                          std::string bytes) {
  return stage_bytes(path, bytes);
}

tl::expected<void, FileError> RealFileSystem::make_safe(const StagedFile& staged) {
  const Descriptor file(calls_, calls_.open(staged.temporary, O_WRONLY | O_CLOEXEC, 0));
  if (file.get() < 0 || calls_.sync_data(file.get()) != 0) return tl::unexpected(from_errno(errno));
  return {};
}

tl::expected<void, FileError> RealFileSystem::put_in_place(const StagedFile& file) {
  if (calls_.rename(file.temporary, file.path) != 0) return tl::unexpected(from_errno(errno));
  note_names_of(parent_path(file.path));
  return {};
}

void RealFileSystem::drop(const StagedFile& file) { calls_.unlink(file.temporary); }

tl::expected<void, FileError> RealFileSystem::settle() {
  std::set<std::string> folders;
  {
    const std::lock_guard lock(mutex_);
    folders.swap(to_be_safe_);
  }
  tl::expected<void, FileError> out;
  for (const std::string& name : folders) {
    const Descriptor folder(calls_, calls_.open(name, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0));
    // One that may be written to and not read cannot be opened; a folder that is gone needs
    // nothing.
    if (folder.get() < 0 && (errno == EACCES || errno == ENOENT)) continue;
    if (folder.get() >= 0 && calls_.sync_folder(folder.get()) == 0) continue;
    if (cannot_be_synced(errno)) continue;
    FileError error = from_errno(errno);
    error.message = "what is new in it may be lost if the machine stops now: " + error.message;
    out = tl::unexpected(std::move(error));
  }
  return out;
}

tl::expected<void, FileError> RealFileSystem::write_whole(const std::string& path,
                                                          std::string_view bytes) {
  const auto staged = stage_bytes(path, bytes);
  if (!staged) return tl::unexpected(staged.error());
  auto done = make_safe(*staged);
  if (done) done = put_in_place(*staged);
  if (!done) {
    drop(*staged);
    return done;
  }
  return settle();
}

tl::expected<void, FileError> RealFileSystem::move_new(const std::string& from,
                                                       const std::string& to) {
  if (auto made = make_folders(parent_path(to)); !made) return made;
  if (calls_.rename_new(from, to) != 0) return tl::unexpected(from_errno(errno));
  note_names_of(parent_path(from));
  note_names_of(parent_path(to));
  return {};
}

tl::expected<void, FileError> RealFileSystem::remove(const std::string& path) {
  if (calls_.unlink(path) == 0 || errno == ENOENT || errno == ENOTDIR) return {};
  return tl::unexpected(from_errno(errno));
}

tl::expected<void, FileError> RealFileSystem::remove_empty_folder(const std::string& path) {
  if (calls_.rmdir(path) == 0 || errno == ENOENT) return {};
  return tl::unexpected(from_errno(errno));
}

}  // namespace chalkleaf
