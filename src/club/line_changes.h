// What changes from one text to another, line by line, as `diff -u` shows it and `patch` takes it.
// Tested by tests/club/line_changes_test.cpp.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::club {

/// Empty when nothing changes. POSIX.1-2017, diff: the unified format, three lines of context.
std::string line_changes(std::string_view path, std::string_view before, std::string_view after);

}  // namespace chalkleaf::club
