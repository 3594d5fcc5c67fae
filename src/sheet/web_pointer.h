// The way to a plan's page on the web: a code to photograph and the address as a link to press.
// Internal to the room. Tested by tests/sheet/web_pointer_test.cpp.
#pragma once

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// Two blocks, to stand beside each other: the code with its quiet zone, and the words with the
/// link. Both below `parent`. The address must be one that plan::parse_web_address made.
struct WebPointer {
  Block code;
  Length side;  ///< of the code
  Block words;
};
std::optional<WebPointer> web_pointer(const plan::Words& address, TextRole words, Length module,
                                      NodeId parent, Builder& builder);
/// Beside each other, for a sheet that gives them a line of their own.
Block web_row(WebPointer pointer, Builder& builder);

}  // namespace chalkleaf::sheet
