#include <catch2/catch.hpp>

#include "base/span.h"

using namespace chalkleaf;

TEST_CASE("lines end with LF, CRLF or CR, and columns count characters") {
  const Source source("plan.md", "one\r\ntwo\rthrée\n");
  CHECK(source.line_count() == 4);
  CHECK(source.line(1) == "one");
  CHECK(source.line(2) == "two");
  CHECK(source.line(3) == "thrée");
  CHECK(source.line(4).empty());
  CHECK(source.line(99).empty());
  CHECK(source.line_column(5) == LineColumn{2, 1});
  CHECK(source.line_column(14) == LineColumn{3, 5});  // after the two bytes of é
  CHECK(source.line_column(10'000) == LineColumn{4, 1});
}

TEST_CASE("spans join and nest") {
  const Source source("plan.md", "title: Dish");
  const Span key{&source, 0, 5};
  const Span value{&source, 7, 11};
  CHECK(key.joined(value) == Span{&source, 0, 11});
  CHECK(key.joined(value).contains(value));
  CHECK_FALSE(key.contains(value));
  CHECK(value.text() == "Dish");
  CHECK(Span{}.joined(value) == value);
  CHECK(Span{&source, 9, 400}.text() == "sh");
  CHECK_FALSE(static_cast<bool>(Span{}));
}
