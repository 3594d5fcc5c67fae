// Papers against the standards' figures, written here in the units the standards use.
#include "base/paper.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <string>

namespace chalkleaf {
namespace {

// ISO 216: A4 210 x 297 mm, A5 148 x 210 mm. ANSI/ASME Y14.1: size A is 8.5 x 11 in. From memory.
TEST_CASE("papers are as large as their standards say") {
  CHECK(paper_size(Paper::kA4) == Size{Length::mm(210), Length::mm(297)});
  CHECK(paper_size(Paper::kA5) == Size{Length::mm(148), Length::mm(210)});
  CHECK(paper_size(Paper::kLetter) == Size{Length::pt(612), Length::pt(792)});
  CHECK(paper_size(Paper::kHalfLetter) == Size{Length::pt(396), Length::pt(612)});
  CHECK(paper_size(Paper::kA5Landscape) == Size{Length::mm(210), Length::mm(148)});
  CHECK(paper_size(Paper::kLetterLandscape) == Size{Length::pt(792), Length::pt(612)});
}

TEST_CASE("a sheet on its side is the same sheet") {
  for (const Paper paper : kPapers) {
    INFO(paper_key(paper));
    CHECK(turned(turned(paper)) == paper);
    CHECK(is_landscape(paper) != is_landscape(turned(paper)));
    CHECK((paper_size(paper).width > paper_size(paper).height) == is_landscape(paper));
    CHECK(paper_size(turned(paper)) == Size{paper_size(paper).height, paper_size(paper).width});
  }
}

// ISO 216 rounds halves down to whole millimetres: two A5 are 1 mm narrower than an A4.
TEST_CASE("two halves make the whole sheet within a millimetre") {
  int halves = 0;
  for (const Paper paper : kPapers) {
    const auto half = half_of(paper);
    if (!half) continue;
    ++halves;
    INFO(paper_key(paper));
    CHECK(double_of(*half) == paper);
    const Size whole = paper_size(paper);
    const Size part = paper_size(*half);
    const bool beside = is_landscape(paper);
    const Length along = beside ? whole.width - part.width * 2 : whole.height - part.height * 2;
    CHECK(along >= Length());
    CHECK(along <= Length::mm(1.001));
    CHECK((beside ? part.height == whole.height : part.width == whole.width));
  }
  CHECK(halves == 4);
}

TEST_CASE("papers are read as people write them") {
  const auto [text, paper] = GENERATE(table<std::string, Paper>({
      {"a4", Paper::kA4},
      {"A5", Paper::kA5},
      {"Letter", Paper::kLetter},
      {"US Letter", Paper::kLetter},
      {"us-letter", Paper::kLetter},
      {"half letter", Paper::kHalfLetter},
      {"half-letter", Paper::kHalfLetter},
      {"Half_Letter", Paper::kHalfLetter},
      {"halfletter", Paper::kHalfLetter},
      {"a5 landscape", Paper::kA5Landscape},
      {"A5-landscape", Paper::kA5Landscape},
      {"landscape A5", Paper::kA5Landscape},
      {"A4, landscape", Paper::kA4Landscape},
      {"A4 portrait", Paper::kA4},
      {"US letter landscape", Paper::kLetterLandscape},
      {"half-letter-landscape", Paper::kHalfLetterLandscape},
  }));
  INFO(text);
  CHECK(read_paper(text) == paper);
}

TEST_CASE("other words are no paper") {
  for (const char* text : {"", "a3", "landscape", "letter landscape portrait", "a4 a5",
                           "a4 landscape landscape", "legal", "us"}) {
    INFO(text);
    CHECK(read_paper(text) == std::nullopt);
  }
}

TEST_CASE("a paper's key is read back") {
  for (const Paper paper : kPapers) CHECK(read_paper(paper_key(paper)) == paper);
}

}  // namespace
}  // namespace chalkleaf
