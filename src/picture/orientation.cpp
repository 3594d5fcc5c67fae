#include "picture/orientation.h"

#include <cstdint>

namespace chalkleaf::picture {
namespace {

using namespace std::string_view_literals;

constexpr int kUpright = 1;

/// A TIFF header and what it leads to; reads beyond the end are zeros.
class Tiff {
 public:
  explicit Tiff(std::string_view bytes) : bytes_(bytes), big_(bytes.starts_with("MM\0*"sv)) {}
  bool sound() const { return big_ || bytes_.starts_with("II*\0"sv); }
  std::uint32_t u16(std::size_t at) const {
    return big_ ? byte(at) << 8 | byte(at + 1) : byte(at + 1) << 8 | byte(at);
  }
  std::uint32_t u32(std::size_t at) const {
    return big_ ? u16(at) << 16 | u16(at + 2) : u16(at + 2) << 16 | u16(at);
  }

 private:
  std::uint32_t byte(std::size_t at) const {
    return at < bytes_.size() ? static_cast<unsigned char>(bytes_[at]) : 0;
  }
  std::string_view bytes_;
  bool big_;
};

int orientation_in(std::string_view exif) {
  constexpr std::uint32_t kTag = 0x0112;
  constexpr std::uint32_t kShort = 3;
  constexpr std::size_t kEntry = 12;
  const Tiff tiff(exif);
  if (!tiff.sound()) return kUpright;
  const std::size_t directory = tiff.u32(4);
  const std::uint32_t entries = tiff.u16(directory);
  for (std::uint32_t i = 0; i < entries; ++i) {
    const std::size_t entry = directory + 2 + i * kEntry;
    if (entry + kEntry > exif.size()) break;
    if (tiff.u16(entry) != kTag || tiff.u16(entry + 2) != kShort) continue;
    const std::uint32_t value = tiff.u16(entry + 8);
    return value >= 1 && value <= 8 ? static_cast<int>(value) : kUpright;
  }
  return kUpright;
}

}  // namespace

// The segments before the first scan (T.81, B.1.1.4): FF, a marker, two bytes of length.
int orientation_of(std::string_view jpeg) {
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(jpeg[at]); };
  std::size_t at = 2;
  while (at + 4 <= jpeg.size() && byte(at) == 0xFF) {
    const unsigned marker = byte(at + 1);
    if (marker == 0xFF) {  // a fill byte
      ++at;
      continue;
    }
    if (marker == 0xDA || marker == 0xD9) break;
    const std::size_t length = static_cast<std::size_t>(byte(at + 2)) << 8 | byte(at + 3);
    if (length < 2) break;
    const std::string_view segment = jpeg.substr(at + 4, length - 2);
    if (marker == 0xE1 && segment.starts_with("Exif\0\0"sv)) {
      return orientation_in(segment.substr(6));
    }
    at += 2 + length;
  }
  return kUpright;
}

Picture upright(Picture picture, int orientation) {
  if (orientation <= kUpright || orientation > 8) return picture;
  // EXIF names where the file's first row and column belong: 5 to 8 swap them.
  const bool swapped = orientation >= 5;
  const bool right_to_left =
      orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
  const bool upwards = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
  Picture out;
  out.width = swapped ? picture.height : picture.width;
  out.height = swapped ? picture.width : picture.height;
  out.channels = picture.channels;
  out.pixels.resize(picture.pixels.size());
  const auto channels = static_cast<std::size_t>(picture.channels);
  std::size_t to = 0;
  for (int y = 0; y < out.height; ++y) {
    for (int x = 0; x < out.width; ++x) {
      int from_x = swapped ? y : x;
      int from_y = swapped ? x : y;
      if (right_to_left) from_x = picture.width - 1 - from_x;
      if (upwards) from_y = picture.height - 1 - from_y;
      const std::size_t from =
          (static_cast<std::size_t>(from_y) * static_cast<std::size_t>(picture.width) +
           static_cast<std::size_t>(from_x)) *
          channels;
      for (std::size_t c = 0; c < channels; ++c) out.pixels[to++] = picture.pixels[from + c];
    }
  }
  return out;
}

}  // namespace chalkleaf::picture
