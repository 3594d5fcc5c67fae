#include "club/turns.h"

#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>
#include <thread>
#include <vector>

using chalkleaf::club::Turns;

TEST_CASE("no more is worked on at a time than there is room for, and all have their turn") {
  Turns turns(10);
  std::atomic<std::size_t> held{0};
  std::atomic<std::size_t> most{0};
  std::atomic<int> done{0};
  const auto work = [&](std::size_t bytes) {
    for (int i = 0; i < 200; ++i) {
      const Turns::Turn turn = turns.take(bytes);
      const std::size_t now = held += std::min<std::size_t>(bytes, 10);
      std::size_t before = most;
      while (before < now && !most.compare_exchange_weak(before, now)) {
      }
      std::this_thread::yield();
      held -= std::min<std::size_t>(bytes, 10);
    }
    ++done;
  };
  std::vector<std::thread> workers;
  for (const std::size_t bytes : {1U, 4U, 7U, 10U, 1000U}) workers.emplace_back(work, bytes);
  for (std::thread& worker : workers) worker.join();
  CHECK(done == 5);
  CHECK(most <= 10);
  CHECK(held == 0);
}

TEST_CASE("a turn is given back once, wherever it was moved to") {
  Turns turns(10);
  {
    Turns::Turn first = turns.take(6);
    Turns::Turn kept;
    kept = std::move(first);
    const Turns::Turn moved(std::move(kept));
    const Turns::Turn beside = turns.take(4);
  }
  const Turns::Turn all = turns.take(10);  // would wait for ever, were anything still held
  SUCCEED();
}
