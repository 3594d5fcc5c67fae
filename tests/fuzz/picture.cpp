// Fuzzes the reading of pictures: any bytes, as a PNG, a JPEG or neither.
//
// A PNG's chunks carry sums that no fuzzer guesses, so each input is tried with its sums mended
// too.
#include <zlib.h>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "picture/decode.h"
#include "picture/shrink.h"

namespace {

using chalkleaf::picture::Picture;

std::uint32_t number_at(const std::string& bytes, std::size_t at) {
  std::uint32_t out = 0;
  for (std::size_t i = at; i < at + 4; ++i) out = out << 8 | static_cast<unsigned char>(bytes[i]);
  return out;
}

// ISO/IEC 15948, 5.3: length, type, data, and the sum of type and data.
std::string mended(std::string bytes) {
  for (std::size_t at = 8; at + 12 <= bytes.size();) {
    const std::size_t length = number_at(bytes, at);
    if (length > bytes.size() - at - 12) break;
    const auto* begin = reinterpret_cast<const Bytef*>(bytes.data() + at + 4);
    const auto sum = static_cast<std::uint32_t>(crc32(0, begin, static_cast<uInt>(length + 4)));
    at += 8 + length;
    for (unsigned shift = 32; shift > 0; shift -= 8) {
      bytes[at++] = static_cast<char>(sum >> (shift - 8) & 0xFFU);
    }
  }
  return bytes;
}

void require(bool holds) {
  if (!holds) std::abort();
}

void is_sound(const Picture& picture) {
  require(picture.width > 0 && picture.height > 0);
  require(picture.channels == 1 || picture.channels == 3);
  const auto pixels =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
  require(picture.pixels.size() == pixels * static_cast<std::size_t>(picture.channels));
}

void try_out(std::string_view bytes) {
  auto picture = chalkleaf::picture::decode(bytes);
  if (!picture) {
    require(!picture.error().message.empty() && !picture.error().hint.empty());
    return;
  }
  is_sound(*picture);
  is_sound(chalkleaf::picture::shrunk_into(std::move(*picture), 7, 5));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  // Large pictures cost time and find nothing that small ones do not.
  const bool is_png = bytes.size() > 24 && bytes[0] == '\x89';
  if (is_png && std::uint64_t{number_at(bytes, 16)} * number_at(bytes, 20) > 100'000) return 0;
  try_out(bytes);
  if (is_png) try_out(mended(bytes));
  return 0;
}
