// Many tasks on a few workers, their results handed on in order.
//
// Who waits for the results sees them as if one worker had made them one after the other, whatever
// the number of workers. A worker that is too far ahead of the slowest waits, so that what is held
// does not grow with the number of tasks. Tested by tests/club/in_order_test.cpp.
#pragma once

#include <algorithm>
#include <condition_variable>
#include <cstddef>
#include <functional>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>
#include <vector>

namespace chalkleaf::club {

/// Results held for a slower one before them, for each worker.
inline constexpr std::size_t kHeldPerWorker = 16;

/// Calls `make_worker()` once for each worker, on its own thread, and what that gives with 0 to
/// `count` − 1, each once; then `take(index, result)` on the calling thread, in order. Neither may
/// throw. With one worker no thread is started.
template <class Result, class MakeWorker, class Take>
void run_in_order(std::size_t count, std::size_t workers, MakeWorker make_worker, Take take) {
  workers = std::min(std::max<std::size_t>(workers, 1), count);
  if (workers <= 1) {
    if (count == 0) return;
    auto work = make_worker();
    for (std::size_t i = 0; i < count; ++i) take(i, work(i));
    return;
  }
  const std::size_t window = workers * kHeldPerWorker;
  std::vector<std::optional<Result>> held(window);  // the result of task i waits at i % window
  std::mutex mutex;
  std::condition_variable room;   // the first task in the window was taken
  std::condition_variable ready;  // a result came in
  std::size_t next = 0;           // the next task nobody works on
  std::size_t taken = 0;          // tasks whose result was taken
  const auto worker = [&] {
    auto work = make_worker();
    std::unique_lock lock(mutex);
    while (true) {
      room.wait(lock, [&] { return next >= count || next < taken + window; });
      if (next >= count) return;
      const std::size_t mine = next++;
      lock.unlock();
      Result result = work(mine);
      lock.lock();
      held[mine % window] = std::move(result);
      if (mine == taken) ready.notify_one();
    }
  };
  std::vector<std::jthread> threads;
  threads.reserve(workers);
  for (std::size_t i = 0; i < workers; ++i) {
    try {
      threads.emplace_back(worker);
    } catch (const std::system_error&) {  // the machine gives no more threads: fewer will do
      if (threads.empty()) return run_in_order<Result>(count, 1, make_worker, take);
      break;
    }
  }
  for (std::size_t i = 0; i < count; ++i) {
    std::unique_lock lock(mutex);
    ready.wait(lock, [&] { return held[i % window].has_value(); });
    Result result = std::move(*held[i % window]);
    held[i % window].reset();
    taken = i + 1;
    lock.unlock();
    room.notify_all();
    take(i, std::move(result));
  }
}

}  // namespace chalkleaf::club
