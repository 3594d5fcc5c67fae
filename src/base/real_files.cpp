// The machine's own disk behind base/files.h, on POSIX calls: std::ofstream hides a full disk until
// it is too late, and std::filesystem has no fsync. What writes is in staged_files.cpp.
#include <fcntl.h>
#include <sys/mman.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "base/files.h"
#include "base/posix_errors.h"

namespace chalkleaf {

FileError from_errno(int code) {
  using Kind = FileError::Kind;
  switch (code) {
    case ENOENT:
    case ENOTDIR:
      return {Kind::kNotFound, "there is no such file"};
    case EISDIR:
      return {Kind::kIsFolder, "it is a folder"};
    case EACCES:
    case EPERM:
      return {Kind::kNoPermission, "you may not open it"};
    case EROFS:
      return {Kind::kNoPermission, "the disk is read-only"};
    case ENOSPC:
      return {Kind::kNoSpace, "the disk is full"};
    case EDQUOT:
      return {Kind::kNoSpace, "your share of the disk is full"};
    case EFBIG:
      return {Kind::kNoSpace, "files as large as it may not be written here (see ‘ulimit -f’)"};
    case EIO:
      return {Kind::kOther, "the disk failed (an input/output error)"};
    case EMFILE:
    case ENFILE:
      return {Kind::kOther, "too many files are open at once (see ‘ulimit -n’)"};
    case ELOOP:
      return {Kind::kOther, "its links go round in a circle"};
    case ENAMETOOLONG:
      return {Kind::kNotFound, "its name is too long"};
    default:
      return {Kind::kOther, std::strerror(code)};  // NOLINT: only the fixed messages are read
  }
}

namespace {

FileKind kind_of(const struct stat& s) {
  if (S_ISREG(s.st_mode)) return FileKind::kFile;
  if (S_ISDIR(s.st_mode)) return FileKind::kFolder;
  return FileKind::kOther;
}

bool means_missing(int code) { return code == ENOENT || code == ENOTDIR || code == ENAMETOOLONG; }

/// A plain file of no more than `most` bytes, open for reading, and its size.
struct OpenFile {
  Descriptor descriptor;
  std::size_t size = 0;
};

FileError too_large(std::uint64_t most) {
  return {FileError::Kind::kTooLarge, "it is larger than " + std::to_string(most / 1024) + " KB"};
}

tl::expected<OpenFile, FileError> open_plain(SystemCalls& calls, const std::string& path,
                                             std::uint64_t most) {
  // O_NONBLOCK so that a named pipe put where a plan should be cannot make us wait for ever.
  OpenFile out{Descriptor(calls, calls.open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0))};
  if (out.descriptor.get() < 0) return tl::unexpected(from_errno(errno));
  struct stat s {};
  if (calls.status(out.descriptor.get(), s) != 0) return tl::unexpected(from_errno(errno));
  if (S_ISDIR(s.st_mode)) return tl::unexpected(from_errno(EISDIR));
  using Kind = FileError::Kind;
  if (!S_ISREG(s.st_mode)) return tl::unexpected(FileError{Kind::kOther, "it is not a plain file"});
  if (static_cast<std::uint64_t>(s.st_size) > most) return tl::unexpected(too_large(most));
  out.size = static_cast<std::size_t>(s.st_size);
  return out;
}

}  // namespace

tl::expected<std::string, FileError> RealFileSystem::read(const std::string& path,
                                                          std::uint64_t most) const {
  const auto file = open_plain(calls_, path, most);
  if (!file) return tl::unexpected(file.error());
  std::string out;
  out.resize(file->size + 1);  // one more, to see a file that grows
  std::size_t filled = 0;
  while (true) {
    if (filled == out.size()) out.resize(out.size() * 2);
    const ssize_t n = calls_.read(file->descriptor.get(), out.data() + filled, out.size() - filled);
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return tl::unexpected(from_errno(errno));
    if (n == 0) break;
    filled += static_cast<std::size_t>(n);
    if (filled > most) return tl::unexpected(too_large(most));
  }
  out.resize(filled);
  return out;
}

tl::expected<FileBytes, FileError> FileSystem::map(const std::string& path,
                                                   std::uint64_t most) const {
  auto bytes = read(path, most);
  if (!bytes) return tl::unexpected(bytes.error());
  const auto kept = std::make_shared<const std::string>(std::move(*bytes));
  return FileBytes{kept, *kept};
}

tl::expected<FileBytes, FileError> RealFileSystem::map(const std::string& path,
                                                       std::uint64_t most) const {
  const auto file = open_plain(calls_, path, most);
  if (!file) return tl::unexpected(file.error());
  if (file->size == 0) return FileBytes{};
  void* at = ::mmap(nullptr, file->size, PROT_READ, MAP_PRIVATE, file->descriptor.get(), 0);
  if (at == MAP_FAILED) return FileSystem::map(path, most);  // not every file system can
  const std::size_t size = file->size;
  std::shared_ptr<const void> owner(at, [size](void* mapped) { ::munmap(mapped, size); });
  return FileBytes{std::move(owner), {static_cast<const char*>(at), size}};
}

FileKind RealFileSystem::kind(const std::string& path) const {
  struct stat s {};
  if (calls_.status_of(path, s) == 0) return kind_of(s);
  return means_missing(errno) ? FileKind::kNothing : FileKind::kOther;
}

tl::expected<std::vector<FolderEntry>, FileError> RealFileSystem::list(
    const std::string& folder) const {
  std::vector<std::string> names;
  if (calls_.list(folder, names) != 0) return tl::unexpected(from_errno(errno));
  std::sort(names.begin(), names.end());
  std::vector<FolderEntry> out;
  out.reserve(names.size());
  for (std::string& name : names) {
    struct stat s {};
    const std::string path = join_path(folder, name);
    if (calls_.status_here(path, s) != 0) {
      if (means_missing(errno)) continue;  // it was removed this moment
      return tl::unexpected(from_errno(errno));
    }
    FolderEntry found{std::move(name), kind_of(s), S_ISLNK(s.st_mode)};
    if (found.is_link) found.kind = kind(path);
    out.push_back(std::move(found));
  }
  return out;
}

tl::expected<std::string, FileError> RealFileSystem::real_path(const std::string& path) const {
  std::string out;
  if (calls_.real_path(path, out) != 0) return tl::unexpected(from_errno(errno));
  return out;
}

}  // namespace chalkleaf
