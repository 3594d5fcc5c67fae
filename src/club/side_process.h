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

/// A question on its way. Ask while the process has one thread only: a fork copies the others'
/// locks, held for ever. Its answer may be waited for in any thread.
class Aside {
 public:
  /// Starts the child. An answer of more than `most` bytes is none.
  Aside(const std::function<std::string()>& question, std::chrono::milliseconds patience,
        std::size_t most);
  Aside(Aside&& other) noexcept;
  Aside& operator=(Aside&&) = delete;
  ~Aside();
  /// Waits, at most until the patience is over since the start, and not for a child that sleeps
  /// without end; nothing when no whole answer came. Once only.
  std::optional<std::string> answer();

 private:
  bool begins_to_answer() const;

  int child_ = -1;
  int from_ = -1;
  std::chrono::steady_clock::time_point until_;
  std::size_t most_;
};

}  // namespace chalkleaf::club
