// A string as JSON has it (RFC 8259), in ASCII, so that no control character reaches a terminal.
// Tested by tests/base/json_text_test.cpp.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf {

/// With its quotation marks; bytes that are no UTF-8 become U+FFFD.
std::string json_string(std::string_view text);

}  // namespace chalkleaf
