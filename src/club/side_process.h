// A question asked in a process of its own, with a bound on its time and memory.
//
// For libraries that read what the club ships and may hang on it or eat the memory: a truncated
// object or a named pipe in `.git` stops libgit2 for ever. The answer comes through a pipe; who
// does not answer in time is ended. Tested by tests/club/side_process_test.cpp.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>

namespace chalkleaf::club {

/// Runs `question` in a child and gives its answer; nothing when it does not come in time, is
/// larger than `most` bytes, or the child fails. The child starts with nothing but the calling
/// thread.
std::optional<std::string> ask_aside(const std::function<std::string()>& question,
                                     std::chrono::milliseconds patience, std::size_t most);

}  // namespace chalkleaf::club
