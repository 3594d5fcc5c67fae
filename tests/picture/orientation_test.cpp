// EXIF's eight ways up, against its own table; the samples compare the same with Pillow.
#include "picture/orientation.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::picture;
using namespace std::string_literals;

namespace {

std::string jpeg_with(const std::string& segment) {
  const auto length = segment.size() + 2;
  return "\xFF\xD8\xFF\xE1"s + static_cast<char>(length >> 8) + static_cast<char>(length & 0xFF) +
         segment + "\xFF\xDA"s;
}

}  // namespace

TEST_CASE("the eight orientations") {
  // CIPA DC-008-2019, 4.6.4 A: where the file's first row and first column belong. In the file:
  //   a b c
  //   d e f
  const auto turned = [](int orientation) {
    const Picture out = upright({3, 2, 1, "abcdef"}, orientation);
    return std::to_string(out.width) + "x" + std::to_string(out.height) + " " + out.pixels;
  };
  CHECK(turned(1) == "3x2 abcdef");  // row top, column left
  CHECK(turned(2) == "3x2 cbafed");  // top, right
  CHECK(turned(3) == "3x2 fedcba");  // bottom, right
  CHECK(turned(4) == "3x2 defabc");  // bottom, left
  CHECK(turned(5) == "2x3 adbecf");  // left, top
  CHECK(turned(6) == "2x3 daebfc");  // right, top
  CHECK(turned(7) == "2x3 fcebda");  // right, bottom
  CHECK(turned(8) == "2x3 cfbead");  // left, bottom
  CHECK(turned(0) == "3x2 abcdef");
  CHECK(turned(9) == "3x2 abcdef");
  CHECK(upright({1, 2, 3, "rgbRGB"}, 6).pixels == "RGBrgb");
}

TEST_CASE("the orientation is found, or the picture stays as it is") {
  const std::string entry6 = "\x12\x01\x03\0\x01\0\0\0\x06\0\0\0"s;
  const std::string little = "Exif\0\0II*\0\x08\0\0\0\x01\0"s;
  CHECK(orientation_of(jpeg_with(little + entry6)) == 6);
  CHECK(orientation_of(
            jpeg_with("Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x03\0\0"s)) == 3);
  CHECK(orientation_of(jpeg_with(little)) == 1);                        // no entry
  CHECK(orientation_of(jpeg_with(little + entry6.substr(0, 9))) == 1);  // half an entry
  CHECK(orientation_of(jpeg_with("Exif\0\0II*\0\xFF\xFF\xFF\xFF"s)) == 1);
  CHECK(orientation_of(jpeg_with("Exif\0\0XX*\0"s)) == 1);
  CHECK(orientation_of(jpeg_with(little + "\x12\x01\x03\0\x01\0\0\0\x09\0\0\0"s)) == 1);
  CHECK(orientation_of("\xFF\xD8\xFF\xE1\xFF\xFF"s) == 1);
  CHECK(orientation_of("\xFF\xD8\xFF\xE1\0\0"s) == 1);
  CHECK(orientation_of("\xFF\xD8") == 1);
  CHECK(orientation_of("") == 1);
}
