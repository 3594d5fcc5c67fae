// What is kept, and what goes first.
#include "club/byte_cache.h"

#include <catch2/catch.hpp>
#include <string>

using chalkleaf::club::ByteCache;

TEST_CASE("what was not asked for longest goes first, and what is too large is not kept") {
  ByteCache<std::string, int> cache(100);
  const auto kept = [&](const std::string& key) {
    const auto value = cache.find(key);
    return value ? *value : -1;
  };
  cache.keep("a", std::make_shared<const int>(1), 40);
  cache.keep("b", std::make_shared<const int>(2), 40);
  CHECK(kept("a") == 1);  // so that b is now the oldest
  cache.keep("c", std::make_shared<const int>(3), 40);
  CHECK(kept("b") == -1);
  CHECK(kept("a") == 1);
  CHECK(kept("c") == 3);
  cache.keep("d", std::make_shared<const int>(4), 101);
  CHECK(kept("d") == -1);
  CHECK(kept("a") == 1);
  cache.keep("a", std::make_shared<const int>(5), 60);  // in place of the other, 40 + 60
  CHECK(kept("a") == 5);
  CHECK(kept("c") == 3);
  cache.keep("e", std::make_shared<const int>(6), 100);
  CHECK(kept("a") == -1);
  CHECK(kept("c") == -1);
  CHECK(kept("e") == 6);
}
