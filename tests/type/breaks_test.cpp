// The classes and rules are those of UAX 14 (Unicode line breaking); ICU implements them, so these
// check that the right iterator is asked in the right way.
#include "type/breaks.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::type;

namespace {

// The text with a bar at every allowed and a slash at every forced break.
std::string marked(const std::string& text) {
  Breaker breaker("en");
  std::vector<Break> breaks;
  breaker.find(text, breaks);
  std::string out;
  std::size_t done = 0;
  for (const Break& b : breaks) {
    out += text.substr(done, b.offset - done) + (b.forced ? "/" : "|");
    done = b.offset;
  }
  return out + text.substr(done);
}

}  // namespace

TEST_CASE("lines may end where UAX 14 says") {
  CHECK(marked("Hold it, then rest.") == "Hold |it, |then |rest.");
  CHECK(marked("half-turn (two)") == "half-|turn |(two)");  // LB21, LB14
  CHECK(marked("3\xC2\xA0sets") == "3\xC2\xA0sets");        // LB12, no-break space
  CHECK(marked("8\xE2\x80\x93"
               "11") == "8\xE2\x80\x93|11");  // LB21, en dash
  CHECK(marked("bal\xC2\xAD"
               "ance") == "bal\xC2\xAD|ance");                       // soft hyphen
  CHECK(marked("one\ntwo\r\nthree\n") == "one\n/two\r\n/three\n/");  // LB5
  CHECK(marked("a\xE2\x80\x8B"
               "b") == "a\xE2\x80\x8B|b");  // LB8, zero width space
  CHECK(marked("") == "");
}

TEST_CASE("words are cut between graphemes") {
  Breaker breaker("en");
  // e + combining acute, then a flag of two regional indicators (UAX 29, GB9, GB12).
  const std::string text =
      "e\xCC\x81"
      "a\xF0\x9F\x87\xA6\xF0\x9F\x87\xAA";
  CHECK(breaker.graphemes(text) == std::vector<std::uint32_t>{3, 4, 12});
  CHECK(breaker.graphemes("").empty());
}

TEST_CASE("an unknown language breaks as the standard says for all") {
  Breaker breaker("no-such-language-at-all");
  std::vector<Break> breaks;
  breaker.find("a b", breaks);
  CHECK(breaks == std::vector<Break>{{2, false}});
}
