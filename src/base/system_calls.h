// The POSIX calls that RealFileSystem is made of, one virtual function each.
//
// The lowest seam there is above the kernel: tests stand in for it to make any single call fail, to
// write less than was asked, or to end the run between two calls (tests/support/faulty_calls.h).
// As in POSIX.1-2017 each gives −1 and sets `errno` when it fails. Tested by
// tests/base/real_files_test.cpp.
#pragma once

#include <sys/stat.h>
#include <sys/types.h>

#include <cstddef>
#include <string>
#include <vector>

namespace chalkleaf {

/// The machine's own, unless overridden. Thread-safe.
class SystemCalls {
 public:
  virtual ~SystemCalls() = default;
  virtual int open(const std::string& path, int flags, mode_t mode);
  virtual ssize_t read(int file, char* to, std::size_t most);
  virtual ssize_t write(int file, const char* from, std::size_t size);
  virtual int status(int file, struct stat& out);
  /// The bytes of a file, and what is needed to read them again, are on the disk afterwards.
  virtual int sync_data(int file);
  /// The names in a folder are on the disk afterwards.
  virtual int sync_folder(int folder);
  virtual int close(int file);
  virtual int rename(const std::string& from, const std::string& to);
  /// Fails with EEXIST when something stands at `to`.
  virtual int rename_new(const std::string& from, const std::string& to);
  virtual int unlink(const std::string& path);
  virtual int rmdir(const std::string& path);
  virtual int mkdir(const std::string& path);
  virtual int status_of(const std::string& path, struct stat& out);  ///< links followed
  virtual int status_here(const std::string& path, struct stat& out);
  /// The names in a folder, without `.` and `..`, in any order.
  virtual int list(const std::string& folder, std::vector<std::string>& out);
  virtual int real_path(const std::string& path, std::string& out);
};

/// The machine's own.
SystemCalls& system_calls();

}  // namespace chalkleaf
