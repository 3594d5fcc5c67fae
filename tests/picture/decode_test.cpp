// Which files are pictures for us, and what is said of the others.
#include "picture/decode.h"

#include <catch2/catch.hpp>

#include "picture/samples.h"

using namespace chalkleaf::picture;
using namespace std::string_literals;

TEST_CASE("other formats are named by their first bytes") {
  // The signatures: GIF89a; RFC 9649 (WebP); ISO/IEC 23008-12 (HEIF); ISO 32000-1, 7.5.2; TIFF 6.0;
  // what `file` knows of the rest.
  const auto named = [](const std::string& name) {
    return "is " + name + ", and only PNG and JPEG can be printed; save it again as PNG or JPEG";
  };
  CHECK(told("GIF89a\1\0\1\0"s) == named("a GIF"));
  CHECK(told("RIFF\x24\0\0\0WEBPVP8 "s) == named("a WebP picture"));
  CHECK(told("\0\0\0\x18"
             "ftypheic\0\0\0\0"s) == named("a HEIC photo"));
  CHECK(told("\0\0\0\x18"
             "ftypmif1\0\0\0\0"s) == named("a HEIC photo"));
  CHECK(told("\0\0\0\x18"
             "ftypavif\0\0\0\0"s) == named("an AVIF picture"));
  CHECK(told("\0\0\0\x18"
             "ftypisom\0\0\0\0"s) == named("a film"));
  CHECK(told("<?xml version=\"1.0\"?>\n<svg xmlns=\"\">"s) == named("an SVG drawing"));
  CHECK(told("%PDF-1.7\n"s) == named("a PDF"));
  CHECK(told("II*\0\x08\0\0\0"s) == named("a TIFF picture"));
  CHECK(told("MM\0*\0\0\0\x08"s) == named("a TIFF picture"));
  CHECK(told("BM\x36\0\0\0"s) == named("a BMP picture"));
  CHECK(told("PK\3\4\x14\0"s) == named("a ZIP archive or an office document"));
  CHECK(told("<!DOCTYPE html><html>"s) ==
        "is a web page, not a picture; open the page and save the picture itself, as PNG or JPEG");
  CHECK(
      told("version https://git-lfs.github.com/spec/v1\n"s) ==
      "is not here yet: this is the note Git LFS leaves in its place; run `git lfs pull` to fetch "
      "it");
  CHECK(told("") == "is empty; put the picture there again");
  CHECK(told("a line of chalk") == "is neither a PNG nor a JPEG; save it again as PNG or JPEG");
  CHECK(told("\x89PNG\n\x1A\n"s) ==  // line ends changed on the way, as a bad transfer does
        "is neither a PNG nor a JPEG; save it again as PNG or JPEG");
}

TEST_CASE("a file of more than 8 MB is not looked into") {
  CHECK(told(std::string(kMostBytes + 1, '\0')) ==
        "is larger than 8 MB; save it smaller: 2500 pixels across fill a page");
}

TEST_CASE("a picture in colour that has none is kept as grey") {
  // The samples' expectations drop needless colour by the same rule, so one is told here apart.
  const Picture grey = decode(bytes_of(sample_folder() / "png-0-8-37x23.png")).value();
  CHECK(grey.channels == 1);
  CHECK(grey.pixels.size() == 37 * 23);
  CHECK(told_of_hostile("png-as-large-as-may-be") == "6000 × 4000 grey");
}

TEST_CASE("nothing but pixels comes out: no place, no camera") {
  const std::string photo = bytes_of(sample_folder() / "jpeg-turned-6.jpg");
  REQUIRE(photo.find("SECRET-PLACE") != std::string::npos);
  const Picture picture = decode(photo).value();
  CHECK(picture.pixels.find("SECRET-PLACE") == std::string::npos);
  CHECK(picture.pixels.size() == 61U * 45 * 3);
}
