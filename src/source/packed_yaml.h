// YAML read beforehand: trees as bytes, so that what ships with the program is not parsed anew at
// every start.
//
// Parsing the shipped figures, looks and words took a third of what one plan takes. A tree is kept
// under the hash of the text it was read from: whoever has the text gets the tree that reading it
// would give, or none, so a pack that is older than the files can only be of no use, never wrong.
// Made by the pack tool (src/pack). Tested by tests/source/packed_yaml_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/hash.h"
#include "source/tree.h"

namespace chalkleaf::source {

/// A value inside packed bytes, looked at without making the whole tree. The bytes and the source
/// must outlive it. Damaged bytes give less, never a wild read; who wants to know checks a hash.
class PackedNode {
 public:
  PackedNode() = default;
  /// The value that `bytes` begin with; its spans are in `source`, from `offset` on.
  PackedNode(std::string_view bytes, const Source* source, std::uint32_t offset)
      : bytes_(bytes), source_(source), offset_(offset) {}

  YamlNode::Kind kind() const;
  /// The whole tree from here on; nothing when the bytes are damaged.
  std::optional<YamlNode> unpacked() const;
  /// Calls `take(YamlNode key, PackedNode value)` for each entry of a map.
  template <class Take>
  void each_entry(Take take) const {
    PackedNode at;
    for (std::uint64_t left = begin_inside(at); left > 0; --left) {
      auto key = at.unpacked();
      if (!key || !at.step_over()) return;
      const PackedNode value = at;
      if (!at.step_over()) return;
      take(std::move(*key), value);
    }
  }
  /// The value of a map's key; nothing when there is none.
  std::optional<PackedNode> find(std::string_view key) const;

 private:
  friend class Unpacker;
  /// The first of what is inside, and how many there are: entries or items.
  std::uint64_t begin_inside(PackedNode& first) const;
  bool step_over();

  std::string_view bytes_;
  const Source* source_ = nullptr;
  std::uint32_t offset_ = 0;
};

/// A tree as bytes; its spans are kept from `offset` on.
std::string packed(const YamlNode& node, std::uint32_t offset);

}  // namespace chalkleaf::source
