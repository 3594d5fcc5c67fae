// The pool: every task once, results in order, bounded holding.
#include "club/in_order.h"

#include <atomic>
#include <catch2/catch.hpp>
#include <string>

using namespace chalkleaf::club;

TEST_CASE("results come in order, each once, for any number of workers") {
  for (const std::size_t workers : {0U, 1U, 2U, 3U, 8U}) {
    for (const std::size_t count : {0U, 1U, 2U, 7U, 1000U}) {
      std::atomic<std::size_t> made = 0;
      std::size_t taken = 0;
      run_in_order<std::string>(
          count, workers,
          [&] {
            ++made;
            return [](std::size_t i) { return std::to_string(i); };
          },
          [&](std::size_t i, const std::string& result) {
            CHECK(i == taken);
            CHECK(result == std::to_string(i));
            ++taken;
          });
      CHECK(taken == count);
      CHECK(made <= std::max<std::size_t>(workers, 1));
      CHECK(made == std::min(std::max<std::size_t>(workers, 1), count));
    }
  }
}

TEST_CASE("no more results are held than the window has room for") {
  constexpr std::size_t kWorkers = 4;
  std::atomic<std::size_t> begun = 0;
  std::size_t most_ahead = 0;
  run_in_order<int>(
      2000, kWorkers,
      [&] {
        return [&](std::size_t i) {
          ++begun;
          if (i == 0) {  // the slowest is the first: all others fill the window meanwhile
            while (begun < kWorkers * kHeldPerWorker) std::this_thread::yield();
          }
          return static_cast<int>(i);
        };
      },
      [&](std::size_t i, int) { most_ahead = std::max(most_ahead, begun - i); });
  CHECK(most_ahead >= kWorkers * kHeldPerWorker);
  CHECK(most_ahead <= kWorkers * kHeldPerWorker + kWorkers);
}
