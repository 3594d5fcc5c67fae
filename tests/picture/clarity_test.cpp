// How well pictures can be seen on white paper, against WCAG's contrast ratio.
#include "picture/clarity.h"

#include <catch2/catch.hpp>
#include <random>

#include "base/colour.h"

using namespace chalkleaf;
using namespace chalkleaf::picture;

namespace {

Picture grey(std::initializer_list<int> pixels) {
  Picture out{static_cast<int>(pixels.size()), 1, 1, {}};
  for (const int one : pixels) out.pixels.push_back(static_cast<char>(one));
  return out;
}

}  // namespace

TEST_CASE("paper is no mark, and what is clear reaches 3:1") {
  // The lightest grey of 3:1 on white is #949494 (WCAG 2.2's formula; a value widely published).
  CHECK(clarity_on_white(grey({255, 255, 255, 255})).marks == 0);
  CHECK(clarity_on_white(grey({255, 255, 255, 255})).clear == 0);
  CHECK(clarity_on_white(grey({0, 255, 0, 255})).marks == 0.5);
  CHECK(clarity_on_white(grey({0, 255, 0, 255})).clear == 1);
  CHECK(clarity_on_white(grey({0x94, 0x95})).clear == 0.5);
  CHECK(clarity_on_white(grey({0xC0, 0xC0, 0xC0, 0x20})).clear == 0.25);
  CHECK(clarity_on_white(Picture{}).marks == 0);
}

TEST_CASE("a colour is judged by its contrast with white") {
  std::mt19937 random(20261126);  // NOLINT(cert-msc51-cpp): the same colours each time
  for (int i = 0; i < 5000; ++i) {
    const auto channel = [&] { return static_cast<std::uint8_t>(random() % 256); };
    const Colour colour{channel(), channel(), channel()};
    const double contrast = contrast_ratio(colour, kWhite);
    if (std::abs(contrast - 3.0) < 1e-9) continue;
    const Picture one{1,
                      1,
                      3,
                      {static_cast<char>(colour.red), static_cast<char>(colour.green),
                       static_cast<char>(colour.blue)}};
    INFO(hex_text(colour) << " " << contrast);
    CHECK(clarity_on_white(one).clear == (contrast >= 3.0 ? 1 : 0));
  }
}
