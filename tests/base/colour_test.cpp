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

TEST_CASE("a colour is made lighter or darker without changing its hue") {
  for (const char* hex : {"#1c2733", "#ffcc00", "#0000ff", "#000000", "#808080", "#ffffff"}) {
    for (const double wanted : {0.02, 0.18, 0.5, 0.9}) {
      INFO(hex << " " << wanted);
      CHECK(relative_luminance(with_luminance(*parse_colour(hex), wanted)) ==
            Approx(wanted).margin(0.006));
    }
  }
  const Colour dark = with_luminance(*parse_colour("#ff8000"), 0.1);
  CHECK(dark.red > dark.green);
  CHECK(dark.green > dark.blue);
}

// WCAG 2.2: #767676 is the lightest grey with 4.5:1 on white, #595959 with 7:1.
TEST_CASE("a colour is darkened no further than its contrast needs") {
  CHECK(hex_text(*with_contrast(*parse_colour("#999999"), kWhite, 4.5)) == "#767676");
  CHECK(hex_text(*with_contrast(*parse_colour("#999999"), kWhite, 7)) == "#595959");
  CHECK(hex_text(*with_contrast(*parse_colour("#123456"), kWhite, 7)) == "#123456");
  for (const char* hex : {"#ffcc00", "#00ff00", "#ff69b4", "#87ceeb", "#ffffff"}) {
    const Colour out = *with_contrast(*parse_colour(hex), kWhite, 7);
    CHECK(contrast_ratio(out, kWhite) >= 7);
    CHECK(contrast_ratio(out, kWhite) < 7.3);
  }
  CHECK_FALSE(with_contrast(kWhite, *parse_colour("#777777"), 7).has_value());
}
