// The body of a file as a tree. This file and inlines.cpp are the only ones that know cmark-gfm.
//
// CommonMark 0.29 with GitHub's tables. Other extensions stay off: strikethrough because a
// struck-out dose must not print as a dose, and because it, like autolinks, changes tables global
// to the library while parsing, which threads may not share. Tested by
// tests/source/markdown_test.cpp.
#pragma once

#include <cstdint>

#include "source/tree.h"

namespace chalkleaf::source {

/// Nesting of quotes and lists that is read; what is deeper becomes the text of a paragraph.
inline constexpr int kDeepestMark = 64;

/// Reads the bytes from `begin`, which is the first byte of a line, to the end of the file.
MarkNode read_markdown(const Source& source, std::uint32_t begin);

}  // namespace chalkleaf::source
