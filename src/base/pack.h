// A pack: byte strings under hashes, in one file that is mapped and read only where it is asked.
//
// What takes long to make from a text is made when the program is built, and kept under a hash of
// that text and of what it was made for. So a pack that does not belong to the files beside it has
// nothing under their hashes and the files are read instead: it can be stale, not wrong. Each entry
// has a hash of its own bytes, and one that does not fit is not there. The numbers are in the order
// of the machine that made it. Tested by tests/base/pack_test.cpp.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/files.h"
#include "base/hash.h"

namespace chalkleaf {

/// The name an entry has: what was made (`yaml`), and what of.
Hash128 pack_key(std::string_view what, std::string_view made_of);

/// Read-only; safe to share between threads. An empty one has nothing.
class Pack {
 public:
  Pack() = default;
  /// Any bytes; what is no pack of this version is an empty one.
  explicit Pack(FileBytes file);
  bool empty() const { return count_ == 0; }
  /// Begins at a multiple of eight bytes. Lives as long as the pack, or a copy of it.
  std::optional<std::string_view> find(const Hash128& key) const;

 private:
  FileBytes file_;
  std::size_t count_ = 0;
};

using PackPtr = std::shared_ptr<const Pack>;

/// The bytes of a pack with these entries; always the same for the same.
std::string packed(const std::map<Hash128, std::string>& entries);

}  // namespace chalkleaf
