// See the header.
#include "base/system_calls.h"

#include <dirent.h>
#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>

namespace chalkleaf {

int SystemCalls::open(const std::string& path, int flags, mode_t mode) {
  return ::open(path.c_str(), flags, mode);
}
ssize_t SystemCalls::read(int file, char* to, std::size_t most) { return ::read(file, to, most); }
ssize_t SystemCalls::write(int file, const char* from, std::size_t size) {
  return ::write(file, from, size);
}
int SystemCalls::status(int file, struct stat& out) { return ::fstat(file, &out); }
int SystemCalls::sync_data(int file) { return ::fdatasync(file); }
int SystemCalls::sync_folder(int folder) { return ::fsync(folder); }
int SystemCalls::close(int file) { return ::close(file); }
int SystemCalls::rename(const std::string& from, const std::string& to) {
  return ::rename(from.c_str(), to.c_str());
}

int SystemCalls::rename_new(const std::string& from, const std::string& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return -1;
  // Some network disks cannot do it in one step; between these two nobody else writes there.
  struct stat s {};
  if (::lstat(to.c_str(), &s) == 0) errno = EEXIST;
  return errno == ENOENT ? ::rename(from.c_str(), to.c_str()) : -1;
}

int SystemCalls::unlink(const std::string& path) { return ::unlink(path.c_str()); }
int SystemCalls::rmdir(const std::string& path) { return ::rmdir(path.c_str()); }
int SystemCalls::mkdir(const std::string& path) { return ::mkdir(path.c_str(), 0777); }
int SystemCalls::status_of(const std::string& path, struct stat& out) {
  return ::stat(path.c_str(), &out);
}
int SystemCalls::status_here(const std::string& path, struct stat& out) {
  return ::lstat(path.c_str(), &out);
}

int SystemCalls::list(const std::string& folder, std::vector<std::string>& out) {
  DIR* open = ::opendir(folder.c_str());
  if (open == nullptr) return -1;
  while (true) {
    errno = 0;  // the only way to tell the end from a disk that gives up half-way
    const dirent* entry = ::readdir(open);  // NOLINT: each call site has its own DIR
    if (entry == nullptr) break;
    const std::string name = entry->d_name;
    if (name != "." && name != "..") out.push_back(name);
  }
  const int problem = errno;
  ::closedir(open);
  errno = problem;
  return problem == 0 ? 0 : -1;
}

int SystemCalls::real_path(const std::string& path, std::string& out) {
  char* resolved = ::realpath(path.c_str(), nullptr);
  if (resolved == nullptr) return -1;
  out = resolved;
  std::free(resolved);  // NOLINT: realpath allocates with malloc
  return 0;
}

SystemCalls& system_calls() {
  static SystemCalls calls;
  return calls;
}

}  // namespace chalkleaf
