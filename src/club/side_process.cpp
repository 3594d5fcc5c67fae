#include "club/side_process.h"

#include <fcntl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cerrno>
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

std::optional<std::string> Aside::answer() {
  if (from_ < 0) return std::nullopt;
  auto said = child_ > 0 ? read_pipe(from_, until_, most_) : std::nullopt;
  ::close(std::exchange(from_, -1));
  const int child = std::exchange(child_, -1);
  if (child < 0) return std::nullopt;
  const bool well = end_child(child, said ? EndHow::kWait : EndHow::kKill) == 0;
  return well ? said : std::nullopt;
}

}  // namespace chalkleaf::club
