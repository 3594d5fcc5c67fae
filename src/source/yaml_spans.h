// Where a YAML scalar ends in the file: yaml-cpp tells only where each value begins.
//
// YAML 1.2.2, chapter 7 (flow styles) and 8.1 (block scalars). Each function takes the text
// yaml-cpp was given and an offset in it, and looks at no more bytes than the value has. Tested by
// tests/source/yaml_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace chalkleaf::source {

/// The end of a plain scalar that begins at `begin` and was read as `value` (folded line ends are
/// one space there).
std::size_t plain_end(std::string_view yaml, std::size_t begin, std::string_view value);
/// The offset after the closing quote; nothing when the quote at `begin` is never closed.
std::optional<std::size_t> quoted_end(std::string_view yaml, std::size_t begin);
/// The end of the last line of a `|` or `>` block that begins at `begin`.
std::size_t block_end(std::string_view yaml, std::size_t begin);
/// Skips white space, line ends and comments.
std::size_t skip_blank(std::string_view yaml, std::size_t at);

}  // namespace chalkleaf::source
