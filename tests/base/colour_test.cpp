#include "base/colour.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

TEST_CASE("colours are six hexadecimal digits") {
  CHECK(parse_colour("#1c2733") == Colour{0x1C, 0x27, 0x33});
  CHECK(hex_text(Colour{0x1C, 0x27, 0x33}) == "#1c2733");
  CHECK_FALSE(parse_colour("1c2733").has_value());
  CHECK_FALSE(parse_colour("#1c27").has_value());
  CHECK_FALSE(parse_colour("#1c273g").has_value());
}

TEST_CASE("contrast follows WCAG 2.2") {
  // Formula: WCAG 2.2, "contrast ratio" and "relative luminance"; ratios worked from it.
  const auto on_white = [](const char* hex) { return contrast_ratio(*parse_colour(hex), kWhite); };
  CHECK(on_white("#777777") == Approx(4.4781).margin(0.0001));
  CHECK(on_white("#767676") == Approx(4.5422).margin(0.0001));
  CHECK(on_white("#949494") == Approx(3.0335).margin(0.0001));
  CHECK(on_white("#595959") == Approx(7.0047).margin(0.0001));
  CHECK(on_white("#ff0000") == Approx(3.9985).margin(0.0001));
  CHECK(on_white("#0000ff") == Approx(8.5925).margin(0.0001));
  CHECK(contrast_ratio(kBlack, kWhite) == Approx(21.0));
  CHECK(contrast_ratio(kWhite, kBlack) == Approx(21.0));
}
