// Texts that would take a Markdown parser far longer, or far more memory, than their size.
//
// No honest plan comes near these limits; a hostile one is refused before it is parsed. The shapes
// were found by attacking the program: link definitions repeated by their uses, deep lists above
// blank lines, and openings of HTML that never close. Tested by tests/source/cost_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf::source {

/// What makes the text too costly to parse, in words; nothing for any plan a person would write.
std::optional<std::string> costly_shape(std::string_view text);

}  // namespace chalkleaf::source
