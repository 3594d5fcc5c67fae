// JPEG: grey, colour, inks, progressive, turned; and files made to do harm.
#include <catch2/catch.hpp>

#include "picture/samples.h"

using namespace chalkleaf::picture;

TEST_CASE("JPEGs come out as Pillow reads them") {
  const auto all = samples(".jpg");
  CHECK(all.size() == 18);
  for (auto path : all) {
    INFO(path);
    const std::string name = path.stem();
    const auto picture = decode(bytes_of(path));
    REQUIRE(picture.has_value());
    // Inks are turned into light by a formula each program rounds in its own way.
    CHECK(difference(*picture, read_pnm(path.replace_extension(".pnm"))) <=
          (name.find("cmyk") == std::string::npos ? 0 : 1));
  }
}

TEST_CASE("inks come out as the colours they were made from") {
  // Not by any decoder: the top right corner of the scene is red and blue, hardly any green.
  for (const char* name : {"jpeg-cmyk.jpg", "jpeg-colour.jpg", "jpeg-progressive.jpg"}) {
    INFO(name);
    const Picture picture = decode(bytes_of(sample_folder() / name)).value();
    const auto at = [&](std::size_t c) {
      return static_cast<int>(static_cast<unsigned char>(picture.pixels[(2 * 61 + 58) * 3 + c]));
    };
    CHECK(at(0) == Approx(242).margin(12));
    CHECK(at(1) == Approx(11).margin(12));
    CHECK(at(2) == Approx(128).margin(12));
  }
}

TEST_CASE("a JPEG cut anywhere is said to be cut short") {
  for (const char* name : {"jpeg-colour.jpg", "jpeg-progressive.jpg", "jpeg-turned-5.jpg"}) {
    const std::string whole = bytes_of(sample_folder() / name);
    for (std::size_t length = 3; length < whole.size(); length += 50) {
      INFO(name << " " << length);
      CHECK(told(whole.substr(0, length)) == kCutShort);
    }
    CHECK(told(whole.substr(0, whole.size() - 1)) == kCutShort);
  }
}

TEST_CASE("a JPEG with one byte changed is a picture or a problem") {
  const std::string whole = bytes_of(sample_folder() / "jpeg-progressive.jpg");
  for (std::size_t at = 0; at < whole.size(); at += 3) {
    std::string changed = whole;
    changed[at] = static_cast<char>(changed[at] ^ 0xA5);
    const auto out = decode(changed);
    if (!out) {
      CHECK_FALSE(out.error().message.empty());
      CHECK_FALSE(out.error().hint.empty());
    }
  }
}

TEST_CASE("JPEGs made to do harm") {
  const std::string too_much =
      "takes too much work to unpack; save it again as a plain JPEG (not progressive), or as PNG";
  const std::string rare =
      "is a rare kind of JPEG that cannot be printed; save it again as PNG, or as an ordinary JPEG";
  const auto too_large = [](const std::string& sides) {
    return "is " + sides +
           " pixels; at most 10000 on a side and 24 million in all can be printed; save it "
           "smaller: "
           "2500 pixels across fill a page";
  };
  CHECK(told_of_hostile("jpeg-883-scans") == too_much);
  CHECK(told_of_hostile("jpeg-883-large-scans") == too_much);
  CHECK(told_of_hostile("jpeg-90-scans") == "64 × 48 grey");
  CHECK(told_of_hostile("jpeg-scans-again") == kDamaged);
  CHECK(told_of_hostile("jpeg-wide") == too_large("10001 × 8"));
  CHECK(told_of_hostile("jpeg-65535") == too_large("65535 × 65535"));
  CHECK(told_of_hostile("jpeg-larger-than-it-is") == kDamaged);
  CHECK(told_of_hostile("jpeg-no-height") == kDamaged);
  CHECK(told_of_hostile("jpeg-no-tables") == kDamaged);
  // libjpeg-turbo then takes the codes of T.81, annex K, as for films; here they are the right
  // ones.
  CHECK(told_of_hostile("jpeg-no-codes") == "61 × 45 RGB");
  CHECK(told_of_hostile("jpeg-12-bits") == rare);
  CHECK(told_of_hostile("jpeg-lossless") == rare);
  CHECK(told_of_hostile("jpeg-start-alone") == kCutShort);
  CHECK(told_of_hostile("jpeg-100000-comments") == "61 × 45 RGB");
  CHECK(told_of_hostile("jpeg-exif-of-65535-entries") == "45 × 61 RGB");
}
