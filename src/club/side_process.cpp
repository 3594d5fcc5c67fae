#include "club/side_process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/resource.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <sstream>
#include <utility>

#include "club/child_process.h"

namespace chalkleaf::club {
namespace {

using Clock = std::chrono::steady_clock;  // for patience alone; no output depends on it

// The sanitizers map terabytes of shadow memory, which no limit may forbid.
constexpr bool under_sanitizer() {
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
  return true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
  return true;
#else
  return false;
#endif
#else
  return false;
#endif
}

void limit_resources(std::chrono::milliseconds patience) {
  constexpr rlim_t kMostMemory = 1024UL * 1024 * 1024;
  const auto seconds = static_cast<rlim_t>(patience.count() / 1000 + 1);
  const rlimit time{seconds, seconds};
  ::setrlimit(RLIMIT_CPU, &time);  // also if we are gone and nobody ends it
  if (!under_sanitizer()) {
    const rlimit memory{kMostMemory, kMostMemory};
    ::setrlimit(RLIMIT_DATA, &memory);
  }
  const rlimit no_core{0, 0};
  ::setrlimit(RLIMIT_CORE, &no_core);
}

/// How much a process has worked, and whether it sleeps (proc(5), /proc/PID/stat).
struct Work {
  char state = '?';
  std::string ticks;  ///< of the processor, for itself and for it in the kernel
};
Work work_of(int process) {
  const std::string path = "/proc/" + std::to_string(process) + "/stat";
  std::array<char, 1024> buffer{};
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return {};
  const ssize_t n = ::read(file, buffer.data(), buffer.size());
  ::close(file);
  const std::string text(buffer.data(), n > 0 ? static_cast<std::size_t>(n) : 0);
  std::istringstream words(text.substr(text.rfind(')') + 1));  // the name before it may hold blanks
  Work out;
  words >> out.state;
  std::string skipped, user, kernel;
  for (int i = 4; i < 14; ++i) words >> skipped;
  words >> user >> kernel;
  out.ticks = user + " " + kernel;
  return out;
}

[[noreturn]] void answer_in_child(int to, const std::function<std::string()>& question,
                                  std::chrono::milliseconds patience) {
  limit_resources(patience);
  ::alarm(static_cast<unsigned>(patience.count() / 1000 + 1));
  int status = 1;
  try {
    const std::string text = question();
    std::size_t written = 0;
    while (written < text.size()) {
      const ssize_t n = ::write(to, text.data() + written, text.size() - written);
      if (n < 0 && errno == EINTR) continue;
      if (n < 0) break;
      written += static_cast<std::size_t>(n);
    }
    status = written == text.size() ? 0 : 1;
  } catch (...) {  // out of memory: that is what the limit is for
    status = 1;
  }
  ::_exit(status);  // no destructors: the parent has its own of everything
}

}  // namespace

Aside::Aside(const std::function<std::string()>& question, std::chrono::milliseconds patience,
             std::size_t most)
    : until_(Clock::now() + patience), most_(most) {
  int ends[2];
  if (::pipe2(ends, O_CLOEXEC) != 0) return;
  child_ = ::fork();
  if (child_ == 0) {
    ::close(ends[0]);
    answer_in_child(ends[1], question, patience);
  }
  ::close(ends[1]);
  from_ = ends[0];
}

Aside::Aside(Aside&& other) noexcept
    : child_(std::exchange(other.child_, -1)),
      from_(std::exchange(other.from_, -1)),
      until_(other.until_),
      most_(other.most_) {}

Aside::~Aside() {
  if (from_ < 0) return;
  until_ = Clock::now();  // nobody waits for it any more
  answer();
}

// Sleeping for a second without any work: it waits for what never comes, as on a named pipe. One
// that reads a slow disk is in another state, and one that gets no processor is ready to run.
bool Aside::begins_to_answer() const {
  constexpr int kSample = 100;  // milliseconds
  constexpr int kIdleSamples = 10;
  Work before;
  int idle = 0;
  while (Clock::now() < until_) {
    pollfd ready{from_, POLLIN, 0};
    if (::poll(&ready, 1, kSample) > 0) return true;
    Work now = work_of(child_);
    idle = now.state == 'S' && now.ticks == before.ticks ? idle + 1 : 0;
    if (idle >= kIdleSamples) return false;
    before = std::move(now);
  }
  return false;
}

std::optional<std::string> Aside::answer() {
  if (from_ < 0) return std::nullopt;
  std::optional<std::string> said;
  if (child_ > 0 && begins_to_answer()) said = read_pipe(from_, until_, most_);
  ::close(std::exchange(from_, -1));
  const int child = std::exchange(child_, -1);
  if (child < 0) return std::nullopt;
  const bool well = end_child(child, said ? EndHow::kWait : EndHow::kKill) == 0;
  return well ? said : std::nullopt;
}

}  // namespace chalkleaf::club
