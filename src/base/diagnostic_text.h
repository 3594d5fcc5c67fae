// Three renderings of the same diagnostics: for a person, for an editor's quick-fix list, for a
// program. Tested by tests/base/diagnostic_test.cpp.
#pragma once

#include <string>
#include <string_view>

#include "base/diagnostic.h"

namespace chalkleaf {

/// `--messages`: with the source line and carets, one line each, or one JSON object a line.
enum class MessageStyle { kHuman, kShort, kJson };
/// Whether to use terminal colours. Never the only carrier of meaning.
enum class Colouring { kPlain, kAnsi };

/// The version of the JSON lines; raised when a field changes its meaning or goes.
inline constexpr int kMessageSchema = 1;

/// One diagnostic, ending in a line end. JSON fields: schema, name, severity, path, line, column,
/// end_line, end_column, message, hint, labels. Lines and columns count from 1, columns in
/// characters; a diagnostic that is nowhere has an empty path and zeros.
std::string render(const Diagnostic& diagnostic, MessageStyle style, Colouring colouring);

/// Text of the coach's, safe to print on a terminal: control characters become U+FFFD, a tab a
/// space.
std::string printable(std::string_view text);
/// The same for text of several lines: their ends stay.
std::string printable_lines(std::string_view text);

}  // namespace chalkleaf
