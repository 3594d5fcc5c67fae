// Where a file's front matter ends and its body begins.
//
// The first line is `---` (a byte-order mark may stand before it); the block ends at the next line
// that is `---` or `...`. Any line end will do. Empty lines before it, spaces before the hyphens,
// and the long dashes word processors make of them are understood where entries follow. Tested by
// tests/source/front_matter_test.cpp.
#pragma once

#include <cstdint>

#include "base/diagnostic.h"
#include "base/span.h"

namespace chalkleaf::source {

struct Split {
  bool has_front = false;
  Span front;                    ///< between the two lines; empty when there is none
  std::uint32_t body_begin = 0;  ///< first byte of the body: always the first byte of a line
};

/// Splits a file. A block that is never closed is reported (`bad-value`) and taken to end at the
/// first empty line or heading, so that the rest of the file can still be checked.
Split split_front_matter(const Source& source, Diagnostics& diagnostics);

/// 3 when the text begins with a byte-order mark, otherwise 0.
std::uint32_t byte_order_mark(std::string_view text);

}  // namespace chalkleaf::source
