#include "club/child_process.h"

#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>

namespace chalkleaf::club {

std::optional<std::string> read_pipe(int from, std::chrono::steady_clock::time_point until,
                                     std::size_t most) {
  std::string out;
  std::array<char, 65536> buffer{};
  while (true) {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(
                          until - std::chrono::steady_clock::now())
                          .count();
    if (left <= 0) return std::nullopt;
    pollfd ready{from, POLLIN, 0};
    const int count = ::poll(&ready, 1, static_cast<int>(left));
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return std::nullopt;
    const ssize_t n = ::read(from, buffer.data(), buffer.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return std::nullopt;
    if (n == 0) return out;
    out.append(buffer.data(), static_cast<std::size_t>(n));
    if (out.size() > most) return std::nullopt;
  }
}

int end_child(pid_t child, EndHow how) {
  if (how == EndHow::kKill) ::kill(child, SIGKILL);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace chalkleaf::club
