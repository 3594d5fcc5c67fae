// Numbers and strings as ISO 32000-1, 7.3, spells them.
#include "pdf/syntax.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;
using namespace chalkleaf::pdf;

namespace {

std::string number(std::int64_t thousandths) {
  std::string out;
  append_thousandths(out, thousandths);
  return out;
}

std::string colour(Colour value, Paint paint) {
  std::string out;
  append_colour(out, value, paint);
  return out;
}

}  // namespace

TEST_CASE("numbers are exact and as short as can be") {
  CHECK(number(0) == "0");
  CHECK(number(1000) == "1");
  CHECK(number(-1000) == "-1");
  CHECK(number(841'890) == "841.89");
  CHECK(number(5) == ".005");
  CHECK(number(-20) == "-.02");
  CHECK(number(-1'500) == "-1.5");
  CHECK(number(12'345'678'901) == "12345678.901");
}

TEST_CASE("quotients are rounded half away from zero") {
  CHECK(rounded_quotient(5, 10) == 1);
  CHECK(rounded_quotient(-5, 10) == -1);
  CHECK(rounded_quotient(14, 10) == 1);
  CHECK(rounded_quotient(-14, 10) == -1);
  CHECK(rounded_quotient(0, 7) == 0);
}

TEST_CASE("text strings are plain where they can be, UTF-16 where they must be") {
  CHECK(text_string("Tuck (both) \\ sides") == "(Tuck \\(both\\) \\\\ sides)");
  CHECK(text_string("caf\xC3\xA9") == "<FEFF00630061006600E9>");
  CHECK(text_string("\xF0\x9F\xA4\xB8") == "<FEFFD83EDD38>");  // U+1F938, person cartwheeling
  CHECK(text_string("a\nb") == "<FEFF0061000A0062>");
  CHECK(text_string("") == "()");
}

TEST_CASE("colours are grey where they are grey") {
  CHECK(colour(kBlack, Paint::kFill) == "0 g\n");
  CHECK(colour(kWhite, Paint::kStroke) == "1 G\n");
  CHECK(colour({128, 128, 128}, Paint::kFill) == ".502 g\n");
  CHECK(colour({255, 0, 51}, Paint::kFill) == "1 0 .2 rg\n");
  CHECK(colour({255, 0, 51}, Paint::kStroke) == "1 0 .2 RG\n");
}
