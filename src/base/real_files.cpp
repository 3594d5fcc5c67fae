// The machine's own disk behind base/files.h, on POSIX calls: std::ofstream hides a full disk until
// it is too late, and std::filesystem has no fsync.
#include <dirent.h>
#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <climits>
#include <cstdlib>
#include <cstring>

#include "base/files.h"

namespace chalkleaf {
namespace {

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
    case EDQUOT:
      return {Kind::kNoSpace, "the disk is full"};
    case ELOOP:
      return {Kind::kOther, "its links go round in a circle"};
    case ENAMETOOLONG:
      return {Kind::kOther, "its name is too long"};
    default:
      return {Kind::kOther, std::strerror(code)};  // NOLINT: only the fixed messages are read
  }
}

/// Closes on the way out, whichever way that is.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(Descriptor&& other) noexcept : fd_(other.fd_) { other.fd_ = -1; }
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }
  /// Closes now and says whether that went well (a full network disk may only say so here).
  int close_checked() {
    const int result = ::close(fd_);
    fd_ = -1;
    return result;
  }

 private:
  int fd_;
};

FileKind kind_of(const struct stat& s) {
  if (S_ISREG(s.st_mode)) return FileKind::kFile;
  if (S_ISDIR(s.st_mode)) return FileKind::kFolder;
  return FileKind::kOther;
}

tl::expected<void, FileError> make_folders(const std::string& folder) {
  if (folder == "." || folder == "/" || ::mkdir(folder.c_str(), 0777) == 0) return {};
  if (errno == EEXIST) {
    struct stat s {};
    if (::stat(folder.c_str(), &s) == 0 && S_ISDIR(s.st_mode)) return {};
    return tl::unexpected(
        FileError{FileError::Kind::kOther, "a file stands where a folder should be"});
  }
  if (errno != ENOENT) return tl::unexpected(from_errno(errno));
  if (auto parent = make_folders(parent_path(folder)); !parent) return parent;
  if (::mkdir(folder.c_str(), 0777) == 0 || errno == EEXIST) return {};
  return tl::unexpected(from_errno(errno));
}

int write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(fd, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}

}  // namespace

namespace {

/// A plain file of no more than `most` bytes, open for reading, and its size.
struct OpenFile {
  Descriptor descriptor;
  std::size_t size = 0;
};

FileError too_large(std::uint64_t most) {
  return {FileError::Kind::kTooLarge, "it is larger than " + std::to_string(most / 1024) + " KB"};
}

tl::expected<OpenFile, FileError> open_plain(const std::string& path, std::uint64_t most) {
  // O_NONBLOCK so that a named pipe put where a plan should be cannot make us wait for ever.
  OpenFile out{Descriptor(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK))};
  if (out.descriptor.get() < 0) return tl::unexpected(from_errno(errno));
  struct stat s {};
  if (::fstat(out.descriptor.get(), &s) != 0) return tl::unexpected(from_errno(errno));
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
  const auto file = open_plain(path, most);
  if (!file) return tl::unexpected(file.error());
  std::string out;
  out.resize(file->size + 1);  // one more, to see a file that grows
  std::size_t filled = 0;
  while (true) {
    if (filled == out.size()) out.resize(out.size() * 2);
    const ssize_t n = ::read(file->descriptor.get(), out.data() + filled, out.size() - filled);
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
  const auto file = open_plain(path, most);
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
  return ::stat(path.c_str(), &s) == 0 ? kind_of(s) : FileKind::kNothing;
}

tl::expected<std::vector<FolderEntry>, FileError> RealFileSystem::list(
    const std::string& folder) const {
  DIR* open = ::opendir(folder.c_str());
  if (open == nullptr) return tl::unexpected(from_errno(errno));
  std::vector<FolderEntry> out;
  while (const dirent* entry = ::readdir(open)) {  // NOLINT: each call site has its own DIR
    const std::string name = entry->d_name;
    if (name == "." || name == "..") continue;
    struct stat s {};
    const std::string path = join_path(folder, name);
    FolderEntry found{name, FileKind::kNothing, false};
    if (::lstat(path.c_str(), &s) == 0) {
      found.is_link = S_ISLNK(s.st_mode);
      found.kind = found.is_link ? kind(path) : kind_of(s);
    }
    out.push_back(std::move(found));
  }
  ::closedir(open);
  std::sort(out.begin(), out.end(),
            [](const FolderEntry& a, const FolderEntry& b) { return a.name < b.name; });
  return out;
}

tl::expected<std::string, FileError> RealFileSystem::real_path(const std::string& path) const {
  char* resolved = ::realpath(path.c_str(), nullptr);
  if (resolved == nullptr) return tl::unexpected(from_errno(errno));
  std::string out(resolved);
  std::free(resolved);  // NOLINT: realpath allocates with malloc
  return out;
}

tl::expected<void, FileError> RealFileSystem::write_whole(const std::string& path,
                                                          std::string_view bytes) {
  if (auto made = make_folders(parent_path(path)); !made) return made;
  // Unique within the process by the counter, between processes by the process number. What an
  // earlier run with the same number was killed over may hold a name: then the next one will do.
  static std::atomic<unsigned> counter{0};
  constexpr int kTries = 100;
  std::string temporary;
  int opened = -1;
  for (int i = 0; i < kTries && opened < 0; ++i) {
    temporary = join_path(parent_path(path), ".chalkleaf-" + std::to_string(::getpid()) + "-" +
                                                 std::to_string(counter++));
    opened = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
    if (opened < 0 && errno != EEXIST) break;
  }
  Descriptor file(opened);
  if (file.get() < 0) return tl::unexpected(from_errno(errno));
  int problem = write_all(file.get(), bytes);
  if (file.close_checked() != 0 && problem == 0) problem = errno;
  if (problem == 0 && ::rename(temporary.c_str(), path.c_str()) != 0) problem = errno;
  if (problem == 0) return {};
  ::unlink(temporary.c_str());
  return tl::unexpected(from_errno(problem));
}

tl::expected<void, FileError> RealFileSystem::remove(const std::string& path) {
  if (::unlink(path.c_str()) == 0 || errno == ENOENT || errno == ENOTDIR) return {};
  return tl::unexpected(from_errno(errno));
}

tl::expected<void, FileError> RealFileSystem::remove_empty_folder(const std::string& path) {
  if (::rmdir(path.c_str()) == 0 || errno == ENOENT) return {};
  return tl::unexpected(from_errno(errno));
}

}  // namespace chalkleaf
