#include "club/side_process.h"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <stdexcept>

using namespace chalkleaf::club;
using namespace std::chrono_literals;

namespace {

std::optional<std::string> ask_aside(const std::function<std::string()>& question,
                                     std::chrono::milliseconds patience, std::size_t most) {
  return Aside(question, patience, most).answer();
}

}  // namespace

TEST_CASE("an answer comes back whole") {
  CHECK(ask_aside([] { return std::string("4f2a91c"); }, 10s, 100) == "4f2a91c");
  CHECK(ask_aside([] { return std::string(1'000'000, 'x'); }, 10s, 2'000'000)->size() == 1'000'000);
  CHECK(ask_aside([] { return std::string(); }, 10s, 100) == "");
}

TEST_CASE("who hangs, fails or says too much gives no answer, and is gone") {
  const auto begin = std::chrono::steady_clock::now();
  CHECK_FALSE(ask_aside(
                  []() -> std::string {
                    while (true) ::pause();
                  },
                  200ms, 100)
                  .has_value());
  CHECK(std::chrono::steady_clock::now() - begin < 5s);
  CHECK_FALSE(
      ask_aside([]() -> std::string { throw std::runtime_error("no"); }, 10s, 100).has_value());
  CHECK_FALSE(ask_aside([]() -> std::string { ::_exit(3); }, 10s, 100).has_value());
  CHECK_FALSE(ask_aside([] { return std::string(1000, 'x'); }, 10s, 100).has_value());
}

TEST_CASE("who sleeps without end is not waited for; who works or is slow is") {
  const auto begin = std::chrono::steady_clock::now();
  CHECK_FALSE(ask_aside(
                  []() -> std::string {
                    while (true) ::pause();
                  },
                  60s, 100)
                  .has_value());
  CHECK(std::chrono::steady_clock::now() - begin < 20s);
  const auto slow = [] {
    ::usleep(400'000);
    return std::string("done");
  };
  CHECK(ask_aside(slow, 60s, 100) == "done");
  const auto busy = [] {
    const auto start = std::chrono::steady_clock::now();
    while (std::chrono::steady_clock::now() - start < 2s) {
    }
    return std::string("done");
  };
  CHECK(ask_aside(busy, 60s, 100) == "done");
}

TEST_CASE("a question nobody waits for is ended at once") {
  const auto begin = std::chrono::steady_clock::now();
  {
    const Aside unheard(
        []() -> std::string {
          while (true) ::pause();
        },
        60s, 100);
  }
  CHECK(std::chrono::steady_clock::now() - begin < 20s);
}
