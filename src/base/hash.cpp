#include "base/hash.h"

#include <fmt/format.h>
#include <xxhash.h>

namespace chalkleaf {

Hash128 hash128(std::string_view bytes) {
  XXH128_canonical_t canonical;
  XXH128_canonicalFromHash(&canonical, XXH3_128bits(bytes.data(), bytes.size()));
  Hash128 out{};
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = canonical.digest[i];
  return out;
}

std::uint64_t hash64(std::string_view bytes) { return XXH3_64bits(bytes.data(), bytes.size()); }

std::string hex_text(const Hash128& hash) {
  std::string out;
  for (const std::uint8_t byte : hash) out += fmt::format("{:02x}", byte);
  return out;
}

}  // namespace chalkleaf
