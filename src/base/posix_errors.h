// What RealFileSystem's files share: reasons in words, descriptors that close themselves.
#pragma once

#include <string>

#include "base/files.h"
#include "base/system_calls.h"

namespace chalkleaf {

/// What an `errno` means to someone with a folder of plans.
FileError from_errno(int code);

/// Closes on the way out, whichever way that is.
class Descriptor {
 public:
  Descriptor(SystemCalls& calls, int file) : calls_(calls), file_(file) {}
  Descriptor(Descriptor&& other) noexcept : calls_(other.calls_), file_(other.file_) {
    other.file_ = -1;
  }
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor() {
    if (file_ >= 0) calls_.close(file_);
  }
  int get() const { return file_; }
  /// Closes now and says whether that went well (a full network disk may only say so here).
  int close_checked() {
    const int result = calls_.close(file_);
    file_ = -1;
    return result;
  }

 private:
  SystemCalls& calls_;
  int file_;
};

}  // namespace chalkleaf
