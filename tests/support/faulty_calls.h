// A disk on which any single call can be made to fail, for tests: the machine's own calls, counted.
//
// Only calls whose path lies below a folder count, so that what is tried is the run's own business.
// Files are known by the descriptor they were opened with.
#pragma once

#include <fcntl.h>

#include <cerrno>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/files.h"
#include "base/system_calls.h"

namespace chalkleaf::support {

/// What a run asks of a disk.
enum class Call {
  kOpen,
  kCreate,
  kRead,
  kWrite,
  kSync,
  kSyncFolder,
  kClose,
  kRename,
  kUnlink,
  kMakeFolder,
  kStatus,
  kList,
  kRealPath
};

inline constexpr std::pair<Call, const char*> kCallNames[] = {
    {Call::kOpen, "open"},         {Call::kCreate, "create"},
    {Call::kRead, "read"},         {Call::kWrite, "write"},
    {Call::kSync, "sync"},         {Call::kSyncFolder, "sync folder"},
    {Call::kClose, "close"},       {Call::kRename, "rename"},
    {Call::kUnlink, "unlink"},     {Call::kMakeFolder, "make folder"},
    {Call::kStatus, "status"},     {Call::kList, "list"},
    {Call::kRealPath, "real path"}};

inline std::string name_of(Call call) {
  for (const auto& [known, name] : kCallNames) {
    if (known == call) return name;
  }
  return {};
}

/// Thrown where the machine would stop. No std::exception: nobody may catch it.
struct Killed {};

class FaultyCalls final : public SystemCalls {
 public:
  /// What happens at one call.
  enum class Fault {
    kError,      ///< it fails, and nothing was done
    kShort,      ///< a write takes one byte of what it was given, a read gives one: no error
    kHalfThen,   ///< a write takes half; the next one fails
    kKillAfter,  ///< it is done, and then the run is no more
    kKillInside  ///< of a write half is done, and then the run is no more
  };

  explicit FaultyCalls(std::string below) : below_(std::move(below)) {}

  /// The call of this number (from 0, in the order of the run) fails.
  void fail(std::size_t number, Fault fault, int code = 0) {
    at_ = number;
    fault_ = fault;
    code_ = code;
    armed_ = true;
  }
  /// The calls so far, in order.
  const std::vector<Call>& seen() const { return seen_; }
  const std::string& path_failed() const { return path_failed_; }

  int open(const std::string& path, int flags, mode_t mode) override {
    const Call call = (flags & O_CREAT) != 0 ? Call::kCreate : Call::kOpen;
    const int file = run(call, path, [&] { return SystemCalls::open(path, flags, mode); });
    const std::lock_guard lock(mutex_);
    if (file >= 0) paths_[file] = path;
    return file;
  }
  ssize_t read(int file, char* to, std::size_t most) override {
    if (const auto fault = next(Call::kRead, path_of(file))) {
      if (*fault == Fault::kShort) most = 1;
      if (*fault == Fault::kError) return failed();
    }
    return SystemCalls::read(file, to, most);
  }
  ssize_t write(int file, const char* from, std::size_t size) override {
    const auto fault = next(Call::kWrite, path_of(file));
    if (dead_) return failed();
    if (half_done_) {
      half_done_ = false;
      return failed();
    }
    if (!fault) return SystemCalls::write(file, from, size);
    if (*fault == Fault::kError) return failed();
    if (*fault == Fault::kShort) return SystemCalls::write(file, from, 1);
    half_done_ = *fault == Fault::kHalfThen;
    const bool whole = *fault == Fault::kKillAfter;
    const ssize_t done = SystemCalls::write(file, from, whole ? size : size / 2);
    if (*fault != Fault::kHalfThen) kill();
    return done;
  }
  int status(int file, struct stat& out) override {
    return run(Call::kStatus, path_of(file), [&] { return SystemCalls::status(file, out); });
  }
  int sync_data(int file) override {
    return run(Call::kSync, path_of(file), [&] { return SystemCalls::sync_data(file); });
  }
  int sync_folder(int file) override {
    return run(Call::kSyncFolder, path_of(file), [&] { return SystemCalls::sync_folder(file); });
  }
  int close(int file) override {
    // What fails is the telling: the descriptor is gone all the same, as on Linux (close(2)).
    const auto fault = next(Call::kClose, path_of(file));
    const int closed = SystemCalls::close(file);
    return fault == Fault::kError ? failed() : closed;
  }
  int rename(const std::string& from, const std::string& to) override {
    return run(Call::kRename, to, [&] { return SystemCalls::rename(from, to); });
  }
  int rename_new(const std::string& from, const std::string& to) override {
    return run(Call::kRename, to, [&] { return SystemCalls::rename_new(from, to); });
  }
  int unlink(const std::string& path) override {
    return run(Call::kUnlink, path, [&] { return SystemCalls::unlink(path); });
  }
  int rmdir(const std::string& path) override {
    return run(Call::kUnlink, path, [&] { return SystemCalls::rmdir(path); });
  }
  int mkdir(const std::string& path) override {
    return run(Call::kMakeFolder, path, [&] { return SystemCalls::mkdir(path); });
  }
  int status_of(const std::string& path, struct stat& out) override {
    return run(Call::kStatus, path, [&] { return SystemCalls::status_of(path, out); });
  }
  int status_here(const std::string& path, struct stat& out) override {
    return run(Call::kStatus, path, [&] { return SystemCalls::status_here(path, out); });
  }
  int list(const std::string& folder, std::vector<std::string>& out) override {
    return run(Call::kList, folder, [&] { return SystemCalls::list(folder, out); });
  }
  int real_path(const std::string& path, std::string& out) override {
    return run(Call::kRealPath, path, [&] { return SystemCalls::real_path(path, out); });
  }

 private:
  template <class Do>
  int run(Call call, const std::string& path, Do real) {
    const auto fault = next(call, path);
    if (dead_) return failed();
    if (fault == Fault::kError) return failed();
    const int out = real();
    if (fault == Fault::kKillAfter) kill();
    return out;
  }

  std::optional<Fault> next(Call call, const std::string& path) {
    const std::lock_guard lock(mutex_);
    if (dead_ || !is_within(path, below_)) return std::nullopt;
    const bool now = armed_ && seen_.size() == at_;
    seen_.push_back(call);
    if (!now) return std::nullopt;
    path_failed_ = path;
    return fault_;
  }
  std::string path_of(int file) {
    const std::lock_guard lock(mutex_);
    const auto found = paths_.find(file);
    return found == paths_.end() ? std::string() : found->second;
  }
  // A dead run does nothing more: what its destructors try has no effect.
  [[noreturn]] void kill() {
    dead_ = true;
    throw Killed();
  }
  int failed() const {
    errno = dead_ ? EIO : code_;
    return -1;
  }

  std::string below_;
  std::mutex mutex_;
  std::map<int, std::string> paths_;
  std::vector<Call> seen_;
  std::size_t at_ = 0;
  Fault fault_ = Fault::kError;
  int code_ = 0;
  bool armed_ = false;
  bool half_done_ = false;
  bool dead_ = false;
  std::string path_failed_;
};

}  // namespace chalkleaf::support
