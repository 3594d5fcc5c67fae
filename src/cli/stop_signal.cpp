#include "cli/stop_signal.h"

#include <signal.h>
#include <unistd.h>

#include <atomic>
#include <string_view>

namespace chalkleaf::cli {
namespace {

constexpr unsigned kSecondsToFinish = 2;

std::atomic<int> came{0};
static_assert(std::atomic<int>::is_always_lock_free);  // or a handler may not touch it

// Nothing here but what a handler may do (POSIX.1-2017, 2.4.3): stores, sigaction, write, raise.
void end_by(int signal) {
  struct sigaction plain {};
  plain.sa_handler = SIG_DFL;
  ::sigaction(signal, &plain, nullptr);
  ::raise(signal);
}

// The plans under way took longer than a person waits.
void give_up(int alarm) {
  const int signal = came.load();
  if (signal == 0) return end_by(alarm);  // in a child that was forked from here: its own alarm
  constexpr std::string_view kSaid = "\nStopped at once. Every file that is there is whole.\n";
  [[maybe_unused]] const auto written = ::write(STDERR_FILENO, kSaid.data(), kSaid.size());
  end_by(signal);
}

void remember(int signal) {
  came.store(signal);
  ::alarm(kSecondsToFinish);
}

}  // namespace

void listen_for_stop() {
  struct sigaction late {};
  late.sa_handler = give_up;
  ::sigaction(SIGALRM, &late, nullptr);
  sigset_t alarm;  // whoever started us may have blocked it, and that is inherited
  ::sigemptyset(&alarm);
  ::sigaddset(&alarm, SIGALRM);
  ::sigprocmask(SIG_UNBLOCK, &alarm, nullptr);
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    struct sigaction before {};
    if (::sigaction(signal, nullptr, &before) != 0 || before.sa_handler == SIG_IGN) continue;
    struct sigaction action {};
    action.sa_handler = remember;
    action.sa_flags = SA_RESTART | static_cast<int>(SA_RESETHAND);
    ::sigaction(signal, &action, nullptr);
  }
}

bool stop_asked() { return came.load() != 0; }

void end_if_stopped() {
  const int signal = came.load();
  if (signal == 0) return;
  end_by(signal);
}

}  // namespace chalkleaf::cli
