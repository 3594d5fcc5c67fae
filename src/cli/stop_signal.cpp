#include "cli/stop_signal.h"

#include <signal.h>

#include <atomic>

namespace chalkleaf::cli {
namespace {

std::atomic<int> came{0};
static_assert(std::atomic<int>::is_always_lock_free);  // or a handler may not touch it

void remember(int signal) { came.store(signal); }

}  // namespace

void listen_for_stop() {
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
  struct sigaction plain {};
  plain.sa_handler = SIG_DFL;
  ::sigaction(signal, &plain, nullptr);
  ::raise(signal);
}

}  // namespace chalkleaf::cli
