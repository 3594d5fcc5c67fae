// What waiting for another process takes: its answer through a pipe, and its end.
// Tested through tests/club/page_pictures_test.cpp.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>

namespace chalkleaf::club {

/// All that comes until the other end is closed; nothing when that takes too long or is more than
/// `most` bytes. The clock is for patience alone; no output depends on it.
std::optional<std::string> read_pipe(int from, std::chrono::steady_clock::time_point until,
                                     std::size_t most);

enum class EndHow { kWait, kKill };
/// Waits for the child's end; its exit status, or -1 when a signal ended it.
int end_child(pid_t child, EndHow how);

}  // namespace chalkleaf::club
