#include "picture/clarity.h"

#include <algorithm>
#include <array>

#include "base/colour.h"

namespace chalkleaf::picture {
namespace {

constexpr double kGraphics = 3.0;  // WCAG 2.2, 1.4.11
constexpr double kVisible = 1.2;   // what is paler is taken for paper (a rule of ours, no source)

// Levels of what each channel adds to the luminance: the formula once for 256 values, not once a
// pixel.
using Levels = std::array<double, 256>;
Levels levels(Colour full) {
  Levels out{};
  for (std::size_t i = 0; i < out.size(); ++i) {
    const auto of = [&](std::uint8_t channel) {
      return channel == 0 ? std::uint8_t{0} : static_cast<std::uint8_t>(i);
    };
    out.at(i) = relative_luminance({of(full.red), of(full.green), of(full.blue)});
  }
  return out;
}

}  // namespace

Clarity clarity_on_white(const Picture& picture) {
  static const Levels grey = levels(kWhite);
  static const std::array<Levels, 3> colours{levels({255, 0, 0}), levels({0, 255, 0}),
                                             levels({0, 0, 255})};
  const auto channels = static_cast<std::size_t>(picture.channels);
  std::size_t marks = 0;
  std::size_t clear = 0;
  for (std::size_t i = 0; i + channels <= picture.pixels.size(); i += channels) {
    const auto level = [&](std::size_t c) {
      return static_cast<std::size_t>(static_cast<unsigned char>(picture.pixels[i + c]));
    };
    const double luminance =
        channels == 1 ? grey.at(level(0))
                      : colours[0].at(level(0)) + colours[1].at(level(1)) + colours[2].at(level(2));
    const double contrast = 1.05 / (luminance + 0.05);  // WCAG 2.2, contrast ratio with white
    marks += contrast >= kVisible ? 1 : 0;
    clear += contrast >= kGraphics ? 1 : 0;
  }
  const std::size_t pixels = picture.pixels.size() / std::max<std::size_t>(1, channels);
  Clarity out;
  if (pixels > 0) out.marks = static_cast<double>(marks) / static_cast<double>(pixels);
  if (marks > 0) out.clear = static_cast<double>(clear) / static_cast<double>(marks);
  return out;
}

}  // namespace chalkleaf::picture
