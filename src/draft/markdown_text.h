// A coach's words as Markdown and YAML show them unchanged. Internal to the room.
// Tested by tests/draft/write_test.cpp.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::draft {

/// CommonMark 0.31, 2.4 (backslash escapes).
std::string escaped(std::string_view text);
/// The same at the begin of a line, where more signs mean something.
std::string escaped_line(std::string_view text);
/// Names begin with a capital, as on any sheet.
std::string with_capital(std::string text);
std::string yaml_string(std::string_view text);
/// Without signs that would part a name from a dose, and without loose ends.
std::string name_text(std::string_view name);

}  // namespace chalkleaf::draft
