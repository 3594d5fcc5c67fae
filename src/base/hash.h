// Content hashes: the same bytes give the same hash on every machine. Not for secrets (xxHash,
// XXH3). Tested by tests/base/hash_test.cpp.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace chalkleaf {

/// 128 bits of XXH3, in the canonical (big-endian) order.
using Hash128 = std::array<std::uint8_t, 16>;

Hash128 hash128(std::string_view bytes);
std::uint64_t hash64(std::string_view bytes);
/// Lower-case hexadecimal.
std::string hex_text(const Hash128& hash);

}  // namespace chalkleaf
