// Colours and how well they can be told apart.
// Tested by tests/base/colour_test.cpp against WCAG 2.2 ("relative luminance", "contrast ratio").
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf {

/// An sRGB colour, 8 bits a channel.
struct Colour {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  auto operator<=>(const Colour&) const = default;
};

inline constexpr Colour kBlack{0, 0, 0};
inline constexpr Colour kWhite{255, 255, 255};

/// Reads `#1c2733` (six hexadecimal digits).
std::optional<Colour> parse_colour(std::string_view text);
/// `#1c2733`
std::string hex_text(Colour colour);
/// WCAG 2.2 relative luminance: 0 for black to 1 for white.
double relative_luminance(Colour colour);
/// WCAG 2.2 contrast ratio: 1 to 21, whichever way round.
double contrast_ratio(Colour a, Colour b);
/// The colour made lighter or darker until it has this relative luminance (0 to 1, to what 8 bits
/// allow). Its hue stays: light is taken away or added in proportion; where a channel can give no
/// more, white is mixed in.
Colour with_luminance(Colour colour, double luminance);
/// The colour, darkened just as far as its contrast with `ground` needs to be `ratio` or more.
/// Nothing where even black is not enough.
std::optional<Colour> with_contrast(Colour colour, Colour ground, double ratio);

}  // namespace chalkleaf
