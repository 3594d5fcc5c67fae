#include "base/colour.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace chalkleaf {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

// WCAG 2.2, "relative luminance": the transfer curve of one channel.
double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

// The same the other way.
std::uint8_t channel(double light) {
  const double c = light <= 0.0031308 ? light * 12.92 : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(std::clamp(c, 0.0, 1.0) * 255));
}

}  // namespace

std::optional<Colour> parse_colour(std::string_view text) {
  if (text.size() != 7 || text[0] != '#') return std::nullopt;
  int value[6];
  for (std::size_t i = 0; i < 6; ++i) {
    value[i] = hex_digit(text[i + 1]);
    if (value[i] < 0) return std::nullopt;
  }
  const auto channel = [&](int i) {
    return static_cast<std::uint8_t>(value[i] * 16 + value[i + 1]);
  };
  return Colour{channel(0), channel(2), channel(4)};
}

std::string hex_text(Colour c) {
  return fmt::format("#{:02x}{:02x}{:02x}", c.red, c.green, c.blue);
}

double relative_luminance(Colour c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

double contrast_ratio(Colour a, Colour b) {
  const double one = relative_luminance(a);
  const double two = relative_luminance(b);
  return (std::max(one, two) + 0.05) / (std::min(one, two) + 0.05);
}

Colour with_luminance(Colour colour, double luminance) {
  const double now = relative_luminance(colour);
  double light[3] = {linear(colour.red), linear(colour.green), linear(colour.blue)};
  if (now <= 0) {
    for (double& one : light) one = luminance;
  } else {
    const double most = *std::max_element(std::begin(light), std::end(light));
    const double factor = std::min(luminance / now, 1 / most);
    for (double& one : light) one *= factor;
    const double reached = now * factor;
    const double white = reached < luminance ? (luminance - reached) / (1 - reached) : 0;
    for (double& one : light) one += (1 - one) * white;
  }
  return {channel(light[0]), channel(light[1]), channel(light[2])};
}

std::optional<Colour> with_contrast(Colour colour, Colour ground, double ratio) {
  if (contrast_ratio(colour, ground) >= ratio) return colour;
  double luminance = (relative_luminance(ground) + 0.05) / ratio - 0.05;
  if (luminance < 0) return std::nullopt;
  // Rounding to 8 bits may cost a hair: then a hair darker.
  constexpr int kMostTries = 16;
  for (int i = 0; i < kMostTries; ++i) {
    const Colour out = with_luminance(colour, std::max(0.0, luminance));
    if (contrast_ratio(out, ground) >= ratio) return out;
    luminance -= 0.001;
  }
  return kBlack;
}

}  // namespace chalkleaf
