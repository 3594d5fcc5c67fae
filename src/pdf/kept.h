// What many files of a run have in common, in the form that files have it.
//
// A figure is the same bytes on every sheet that shows it, and so is the font most sheets are set
// with: the first sheet that needs one makes and deflates it, the others take it, also when several
// workers ask at once. Only for this room. Tested by tests/pdf/artworks_test.cpp.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace chalkleaf::pdf {

/// Thread-safe.
class Kept {
 public:
  /// What the first `make()` gave for this thing; later ones are not called. The thing lives as
  /// long as its bytes are kept, so no other can have its address.
  template <class Thing, class Make>
  const std::string& bytes(const std::shared_ptr<const Thing>& thing, Make make) {
    Entry& entry = at(thing);
    std::call_once(entry.once, [&] { entry.bytes = make(); });
    return entry.bytes;
  }
  /// The same for a thing that outlives this.
  template <class Make>
  const std::string& bytes_of_lasting(const void* thing, Make make) {
    return bytes(std::shared_ptr<const void>(std::shared_ptr<const void>(), thing), make);
  }

 private:
  struct Entry {
    std::shared_ptr<const void> thing;
    std::once_flag once;
    std::string bytes;
  };
  Entry& at(std::shared_ptr<const void> thing) {
    const std::lock_guard lock(mutex_);
    Entry& out = entries_[thing.get()];  // its place does not change when others come
    if (!out.thing) out.thing = std::move(thing);
    return out;
  }

  std::mutex mutex_;
  std::map<const void*, Entry> entries_;
};

}  // namespace chalkleaf::pdf
