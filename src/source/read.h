// A file becomes a tree. The only door to yaml-cpp and cmark-gfm.
//
// Bounded work for any input: nesting, size and the number of nodes are limited, aliases are
// refused. Tested by tests/source/.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "base/diagnostic.h"
#include "base/files.h"
#include "base/pack.h"
#include "source/packed_yaml.h"
#include "source/tree.h"

namespace chalkleaf::source {

/// The largest plan, part or club file that is read; far above any honest one.
inline constexpr std::uint64_t kLargestFile = 512 * 1024;

/// Reads a file for the compiler: checks size, UTF-8, and that it is text (no NUL). A byte-order
/// mark is kept in the bytes (spans count it) and skipped by the readers. On failure an
/// `unreadable-file` error is added, pointing at the first bad byte where there is one, and nothing
/// is returned.
SourcePtr load(const FileSystem& files, const std::string& path, const std::string& display_path,
               Diagnostics& diagnostics);
/// The same for a file that ships with the program: what was made of it beforehand is in `pack`,
/// which may be null.
SourcePtr load_shipped(const FileSystem& files, const std::string& path,
                       const std::string& display_path, const PackPtr& pack,
                       Diagnostics& diagnostics);
inline SourcePtr load_shipped(const FileSystem& files, const std::string& path, const PackPtr& pack,
                              Diagnostics& diagnostics) {
  return load_shipped(files, path, path, pack, diagnostics);
}
/// The same as load() for text that is at hand.
SourcePtr load_text(const std::string& display_path, std::string text, Diagnostics& diagnostics);

/// A line of dashes only that stands round front matter, as word processors and hurried fingers
/// make of `---`: indented, `———`, `–--`, `-----`.
bool is_loose_fence(std::string_view line);
/// Splits front matter from body and reads both. Never fails: what cannot be read is reported and
/// left out.
Document read_document(const SourcePtr& source, Diagnostics& diagnostics);
/// A whole file of YAML (club.yaml, a theme). Nothing when it is not readable (reported).
std::optional<YamlNode> read_yaml(const SourcePtr& source, Diagnostics& diagnostics);
/// The tree that read_yaml() would give, from the source's pack; nothing when it has none. The
/// source must outlive it.
std::optional<PackedNode> packed_yaml(const SourcePtr& source);
/// What a pack holds of a source whose YAML is read without a word said; nothing for another.
std::optional<std::pair<Hash128, std::string>> pack_yaml(const SourcePtr& source);
/// The same of a document's front matter.
std::optional<std::pair<Hash128, std::string>> pack_front_matter(const SourcePtr& source);

}  // namespace chalkleaf::source
