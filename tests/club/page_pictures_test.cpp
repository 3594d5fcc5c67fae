// Pictures of pages, drawn by poppler from a PDF in memory. What they show is tests/proof.py's.
#include "club/page_pictures.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::club;

namespace {

// ISO 32000-1, annex H.1, with one page more: the least that is a PDF. Poppler mends its missing
// table.
constexpr const char* kTwoPages =
    "%PDF-1.4\n1 0 obj <</Type /Catalog /Pages 2 0 R>> endobj\n"
    "2 0 obj <</Type /Pages /Kids [3 0 R 4 0 R] /Count 2>> endobj\n"
    "3 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 72 144]>> endobj\n"
    "4 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 144 72]>> endobj\n"
    "trailer <</Root 1 0 R>>\n";

// PNG (ISO/IEC 15948), 11.2.2: width and height stand big-endian behind the header chunk's name.
int number_at(const std::string& png, std::size_t at) {
  int out = 0;
  for (std::size_t i = 0; i < 4; ++i) out = out * 256 + static_cast<unsigned char>(png.at(at + i));
  return out;
}

}  // namespace

TEST_CASE("each page becomes a PNG of its size") {
  const auto made = page_pictures(kTwoPages, 2, 50);
  REQUIRE(made);
  REQUIRE(made->size() == 2);
  CHECK(number_at((*made)[0], 16) == 50);
  CHECK(number_at((*made)[0], 20) == 100);
  CHECK(number_at((*made)[1], 16) == 100);
  CHECK(number_at((*made)[1], 20) == 50);
}

TEST_CASE("what is no PDF, or has not that many pages, is said to be so") {
  CHECK(page_pictures("%PDF-1.4\nnothing", 1, 50).error() == "‘pdftoppm’ could not draw page 1");
  CHECK(page_pictures(kTwoPages, 3, 50).error() == "‘pdftoppm’ could not draw page 3");
  CHECK(page_pictures(kTwoPages, 0, 50)->empty());
}
