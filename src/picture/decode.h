// The bytes of a picture file become pixels that can be printed.
//
// A picture comes from anyone who can open a pull request, so nothing of the file goes further than
// its pixels: decoded here, by libpng or libjpeg-turbo with everything bounded, and never passed on
// as it was. That also leaves behind what a camera writes beside them (place, time, names).
// Transparent pixels stand on white, because we print. Colours are taken as sRGB; a colour profile
// or a gamma in the file is not applied. Tested by tests/picture/.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace chalkleaf::picture {

/// Pixels row by row from the top left, 8 bits a channel, without gaps.
struct Picture {
  int width = 0;
  int height = 0;
  int channels = 1;    ///< 1 grey, 3 red, green and blue
  std::string pixels;  ///< width * height * channels bytes
};

/// Why a file is no picture for us.
struct Problem {
  std::string message;  ///< goes on after the picture's name: `is cut short`
  std::string hint;     ///< what to do
};

inline constexpr std::size_t kMostBytes = 8 * 1024 * 1024;  ///< of a file
inline constexpr int kMostSide = 10'000;                    ///< pixels
inline constexpr int kMostPixels = 24'000'000;

/// Decodes a PNG (ISO/IEC 15948) or a JPEG (ITU-T T.81), turned upright as its EXIF says. Bounded
/// in memory (about 300 MB at the limits) and time. Safe to call from several threads.
tl::expected<Picture, Problem> decode(std::string_view bytes);

/// What to say of a file of more than kMostBytes.
Problem too_many_bytes();

}  // namespace chalkleaf::picture
