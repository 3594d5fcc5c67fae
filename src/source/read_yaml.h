// Reads the YAML that stands in a part of a file. Inside the room; others use source/read.h.
#pragma once

#include <cstdint>
#include <optional>

#include "base/diagnostic.h"
#include "base/hash.h"
#include "source/tree.h"

namespace chalkleaf::source {

/// The longest front matter or YAML file that is read.
inline constexpr std::uint32_t kLargestYaml = 256 * 1024;

/// Under which key a pack has the tree of a whole file, and of a document's front matter.
Hash128 yaml_key(std::string_view text);
Hash128 front_key(std::string_view text);
/// The tree of the front matter in `where`, from the source's pack; nothing when it has none.
std::optional<YamlNode> packed_front_matter(const SourcePtr& source, const Span& where);
/// The tree of the YAML in `where`: an empty map when there is nothing but comments, nothing when
/// it cannot be read at all (reported).
std::optional<YamlNode> read_yaml_span(const Span& where, Diagnostics& diagnostics);

}  // namespace chalkleaf::source
