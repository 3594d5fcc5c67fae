// PNG: every colour type, depth and interlacing of ISO/IEC 15948, and files made to do harm.
#include <catch2/catch.hpp>

#include "picture/samples.h"

using namespace chalkleaf::picture;

TEST_CASE("every colour type, depth, interlacing and transparency of PNG") {
  const auto all = samples(".png");
  CHECK(all.size() == 156);
  for (auto path : all) {
    INFO(path);
    const auto picture = decode(bytes_of(path));
    REQUIRE(picture.has_value());
    CHECK(difference(*picture, read_pnm(path.replace_extension(".pnm"))) == 0);
  }
}

TEST_CASE("a PNG cut anywhere is said to be cut short") {
  const std::string whole = bytes_of(sample_folder() / "png-2-8-37x23.png");
  REQUIRE(told(whole) == "37 × 23 RGB");
  REQUIRE(whole.size() > 2500);
  for (std::size_t length = 8; length < whole.size(); length += 7) {
    INFO(length);
    CHECK(told(whole.substr(0, length)) == kCutShort);
  }
  CHECK(told(whole.substr(0, whole.size() - 1)) == kCutShort);
}

TEST_CASE("a PNG with one byte changed is a picture or damaged, and never more") {
  const std::string whole = bytes_of(sample_folder() / "png-3-4-interlaced-clear-37x23.png");
  std::size_t damaged = 0;
  for (std::size_t at = 8; at < whole.size(); ++at) {
    std::string changed = whole;
    changed[at] = static_cast<char>(changed[at] ^ 0x41);
    const std::string said = told(changed);
    INFO(at << ": " << said);
    CHECK((said == kDamaged || said == kCutShort || said == "37 × 23 RGB"));
    if (said != "37 × 23 RGB") ++damaged;
  }
  // Every chunk has a sum; only that of a chunk that can be left out (tRNS) may be wrong.
  CHECK(damaged > whole.size() - 8 - 40);
}

TEST_CASE("PNGs made to do harm") {
  const auto too_large = [](const std::string& sides) {
    return "is " + sides +
           " pixels; at most 10000 on a side and 24 million in all can be printed; save it "
           "smaller: "
           "2500 pixels across fill a page";
  };
  CHECK(told_of_hostile("png-more-data-than-pixels") == "10 × 10 grey");
  CHECK(told_of_hostile("png-fewer-data-than-pixels") == kDamaged);
  CHECK(told_of_hostile("png-wide") == too_large("10001 × 1"));
  CHECK(told_of_hostile("png-many-pixels") == too_large("6000 × 4001"));
  CHECK(told_of_hostile("png-2-to-the-31") == too_large("2147483647 × 2147483647"));
  CHECK(told_of_hostile("png-no-width") == kDamaged);
  CHECK(told_of_hostile("png-kind-7") == kDamaged);
  CHECK(told_of_hostile("png-depth-3") == kDamaged);
  CHECK(told_of_hostile("png-no-palette") == kDamaged);
  CHECK(told_of_hostile("png-text-that-swells") == "10 × 10 grey");
  CHECK(told_of_hostile("png-profile-that-swells") == "10 × 10 grey");
  CHECK(told_of_hostile("png-100000-chunks") == "10 × 10 grey");
  CHECK(told_of_hostile("png-bad-sum-of-head") == kDamaged);
  CHECK(told_of_hostile("png-bad-sum-of-data") == kDamaged);
  CHECK(told_of_hostile("png-chunk-of-2-gb") == kCutShort);
  CHECK(told_of_hostile("png-head-twice") == kDamaged);
  CHECK(told_of_hostile("png-head-alone") == kCutShort);
  CHECK(told_of_hostile("png-signature-alone") == kCutShort);
  CHECK(told_of_hostile("png-colours-beyond-the-palette") == "10 × 10 grey");
}
