// Values that are dear to make, kept until there are too many bytes of them; then what was not
// asked for longest goes first. Which of them are kept changes what a run costs, never what it
// makes. Tested by tests/club/byte_cache_test.cpp.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <mutex>

namespace chalkleaf::club {

/// Safe to use from several threads.
template <class Key, class Value>
class ByteCache {
 public:
  explicit ByteCache(std::size_t most) : most_(most) {}

  /// Null when it is not kept.
  std::shared_ptr<const Value> find(const Key& key) {
    const std::lock_guard lock(mutex_);
    const auto found = kept_.find(key);
    if (found == kept_.end()) return nullptr;
    found->second.asked = ++clock_;
    return found->second.value;
  }
  /// Keeps the value, unless it alone is too large.
  void keep(const Key& key, std::shared_ptr<const Value> value, std::size_t bytes) {
    const std::lock_guard lock(mutex_);
    if (bytes > most_) return;
    drop(key);
    while (bytes_ + bytes > most_) drop_oldest();
    kept_[key] = {std::move(value), bytes, ++clock_};
    bytes_ += bytes;
  }

 private:
  struct Kept {
    std::shared_ptr<const Value> value;
    std::size_t bytes = 0;
    std::uint64_t asked = 0;
  };

  void drop(const Key& key) {
    const auto found = kept_.find(key);
    if (found == kept_.end()) return;
    bytes_ -= found->second.bytes;
    kept_.erase(found);
  }
  // A walk: there are few values, because each is large.
  void drop_oldest() {
    auto oldest = kept_.begin();
    for (auto it = kept_.begin(); it != kept_.end(); ++it) {
      if (it->second.asked < oldest->second.asked) oldest = it;
    }
    bytes_ -= oldest->second.bytes;
    kept_.erase(oldest);
  }

  const std::size_t most_;
  std::mutex mutex_;
  std::map<Key, Kept> kept_;
  std::size_t bytes_ = 0;
  std::uint64_t clock_ = 0;
};

}  // namespace chalkleaf::club
