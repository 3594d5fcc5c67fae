// Large plans take turns, so that the memory of a run is bounded and not only that of a worker.
//
// A plan takes some hundred times its bytes while it is read and set. Those of honest size never
// wait here. Tested by tests/club/turns_test.cpp.
#pragma once

#include <malloc.h>

#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <utility>

namespace chalkleaf::club {

/// So many bytes of plans are worked on at a time. Safe to use from several threads.
class Turns {
 public:
  /// One plan's share, given back when it goes.
  class Turn {
   public:
    Turn() = default;
    Turn(Turns& of, std::size_t bytes) : of_(&of), bytes_(bytes) {}
    Turn(Turn&& other) noexcept
        : of_(std::exchange(other.of_, nullptr)), bytes_(std::exchange(other.bytes_, 0)) {}
    Turn& operator=(Turn&& other) noexcept {
      std::swap(of_, other.of_);
      std::swap(bytes_, other.bytes_);
      return *this;
    }
    ~Turn() {
      if (of_ != nullptr) of_->give_back(bytes_);
    }

   private:
    Turns* of_ = nullptr;
    std::size_t bytes_ = 0;
  };

  explicit Turns(std::size_t most) : most_(most) {}

  /// Waits until there is room; what is larger than all the room waits until it is alone. Who holds
  /// a turn may not take another: two of them would wait for each other.
  Turn take(std::size_t bytes) {
    bytes = bytes < most_ ? bytes : most_;
    std::unique_lock lock(mutex_);
    room_.wait(lock, [&] { return held_ + bytes <= most_; });
    held_ += bytes;
    return {*this, bytes};
  }

 private:
  void give_back(std::size_t bytes) {
    // What a worker frees stays in its own arena of the allocator, of no use to the next worker.
    if (bytes >= kLarge) ::malloc_trim(0);
    {
      const std::lock_guard lock(mutex_);
      held_ -= bytes;
    }
    room_.notify_all();
  }

  static constexpr std::size_t kLarge = 64 * 1024;

  const std::size_t most_;
  std::mutex mutex_;
  std::condition_variable room_;
  std::size_t held_ = 0;
};

}  // namespace chalkleaf::club
