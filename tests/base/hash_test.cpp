#include "base/hash.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

TEST_CASE("hashes are those of XXH3") {
  // The reference implementation's hashes of no bytes (xxhash, sanity check table; value from
  // memory).
  CHECK(hash64("") == 0x2D06800538D394C2ULL);
  CHECK(hex_text(hash128("")) == "99aa06d3014798d86001c324468d497f");
  CHECK(hash128("a") != hash128("b"));
}
