// Running text and the places of its bytes.
#include <catch2/catch.hpp>

#include "source/tree.h"

namespace chalkleaf::source {
namespace {

TEST_CASE("each stretch of a text leads to its bytes") {
  const Source file("p", "ab &amp; cd\\*ef");
  const auto at = [&](std::uint32_t begin, std::uint32_t end) { return Span{&file, begin, end}; };
  Text text;
  text.append("ab ", at(0, 3));
  text.append("&", at(3, 8));
  text.append(" c", at(8, 10));
  text.append("d", at(10, 11));
  text.append("*", at(11, 13));
  text.append("ef", at(13, 15));
  CHECK(text.str() == "ab & cd*ef");
  CHECK(text.span() == at(0, 15));
  CHECK(text.span(0, 2).text() == "ab");
  CHECK(text.span(1, 4).text() == "b &amp;");
  CHECK(text.span(3, 4).text() == "&amp;");
  CHECK(text.span(5, 7).text() == "cd");
  CHECK(text.span(7, 9).text() == "\\*e");
  CHECK(text.span(4, 4) == at(8, 8));
  CHECK(text.span(10, 10) == at(15, 15));
  CHECK(text.span(8, 99).text() == "ef");

  const Text part = text.slice(2, 9);
  CHECK(part.str() == " & cd*e");
  CHECK(part.span(1, 2).text() == "&amp;");
  CHECK(part.span().text() == " &amp; cd\\*e");
  CHECK(part.trimmed().str() == "& cd*e");
  CHECK(part.trimmed().span(5, 6).text() == "e");
  CHECK(text.slice(4, 4).empty());
  CHECK(!Text().span());
}

std::string marks(const Text& text) {
  std::string out;
  for (const Text::Mark& mark : text.marks()) {
    out += mark.tone == Tone::kStrong ? "**" : "*";
    out += text.str().substr(mark.begin, mark.end - mark.begin) + "|";
  }
  return out;
}

TEST_CASE("what is set off stays set off through every cut") {
  const Source file("p", "one two three four");
  const auto at = [&](std::uint32_t begin, std::uint32_t end) { return Span{&file, begin, end}; };
  Text text;
  text.append("one ", at(0, 4));
  text.append("two ", at(4, 8), Tone::kStrong);
  text.append("three", at(8, 13), Tone::kStrong);
  text.append(" four", at(13, 18), Tone::kEmphasised);
  CHECK(marks(text) == "**two three|* four|");
  CHECK(marks(text.slice(0, 4)).empty());
  CHECK(marks(text.slice(5, 10)) == "**wo th|");
  CHECK(marks(text.slice(10, 15)) == "**ree|* f|");
  CHECK(marks(text.slice(3, 8).trimmed()) == "**two|");
  CHECK(text.slice(5, 10).marks().at(0).begin == 0);

  Text twice = text.slice(0, 7);
  twice.append(text.slice(7, 18));
  CHECK(twice.str() == text.str());
  CHECK(marks(twice) == marks(text));
  CHECK(twice.span() == text.span());
  twice.append(text);
  CHECK(marks(twice) == "**two three|* four|**two three|* four|");
  CHECK(twice.marks().at(2).begin == 22);
  CHECK(twice.span(18, 21).text() == "one");
}

}  // namespace
}  // namespace chalkleaf::source
