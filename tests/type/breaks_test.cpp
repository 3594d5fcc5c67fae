// The classes and rules are those of UAX 14 (Unicode line breaking); ICU implements them, so these
// check that the right iterator is asked in the right way.
#include "type/breaks.h"

#include <unicode/uchar.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "base/text.h"

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

// A line of LineBreakTest.txt: its text, and where it may be broken before its end.
struct PublishedCase {
  std::string text;
  std::vector<std::uint32_t> breaks;
};

PublishedCase read_case(const std::string& line) {
  PublishedCase out;
  std::istringstream words(line.substr(0, line.find('#')));
  for (std::string word; words >> word;) {
    if (word == "÷") {
      out.breaks.push_back(static_cast<std::uint32_t>(out.text.size()));
    } else if (word != "×") {
      chalkleaf::append_utf8(out.text, static_cast<char32_t>(std::stoul(word, nullptr, 16)));
    }
  }
  if (!out.breaks.empty()) out.breaks.pop_back();  // the end
  return out;
}

int class_of(char32_t code) {
  return u_getIntPropertyValue(static_cast<UChar32>(code), UCHAR_LINE_BREAK);
}

bool is_letter_class(int c) {
  return c == U_LB_ALPHABETIC || c == U_LB_AMBIGUOUS || c == U_LB_COMPLEX_CONTEXT ||
         c == U_LB_UNKNOWN;
}

// The published breaks as ICU's rules (its line.txt) change them:
// - a hyphen that begins a word stays with its letters: `-x`;
// - a figure stays with the point or comma before it, and so with its word: `.35`, `a.2`; a line
//   may end before such a point when a space is there.
std::vector<std::uint32_t> as_icu_tailors(const PublishedCase& published) {
  std::vector<std::uint32_t> out;
  int before = -1;  // class of the character before, marks left out
  bool at_start = true;
  for (std::size_t at = 0; at < published.text.size();) {
    const chalkleaf::Decoded now = chalkleaf::decode_utf8(published.text, at);
    const int here = class_of(now.code);
    const std::size_t next = at + now.size;
    const int after = next < published.text.size()
                          ? class_of(chalkleaf::decode_utf8(published.text, next).code)
                          : -1;
    const auto offset = static_cast<std::uint32_t>(at);
    const bool listed = std::find(published.breaks.begin(), published.breaks.end(), offset) !=
                        published.breaks.end();
    const bool hyphened = at_start && before == U_LB_HYPHEN && is_letter_class(here);
    const bool pointed = before == U_LB_INFIX_NUMERIC && here == U_LB_NUMERIC;
    const bool opens = before == U_LB_SPACE && here == U_LB_INFIX_NUMERIC && after == U_LB_NUMERIC;
    if ((listed && !hyphened && !pointed) || opens) out.push_back(offset);
    if (here != U_LB_COMBINING_MARK) {
      at_start = before == -1;
      before = here;
    }
    at = next;
  }
  return out;
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

TEST_CASE("all of Unicode's own cases, but for what ICU does better on purpose") {
  // LineBreakTest-15.0.0.txt of the Unicode Character Database (Debian: unicode-data); ICU 72 is of
  // the same version.
  std::ifstream file("/usr/share/unicode/auxiliary/LineBreakTest.txt");
  Breaker breaker("en");
  std::vector<Break> breaks;
  std::size_t cases = 0;
  std::size_t tailored = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    ++cases;
    const PublishedCase published = read_case(line);
    const std::vector<std::uint32_t> wanted = as_icu_tailors(published);
    if (wanted != published.breaks) ++tailored;
    breaker.find(published.text, breaks);
    std::vector<std::uint32_t> found;
    for (const Break& b : breaks) {
      if (b.offset < published.text.size()) found.push_back(b.offset);
    }
    INFO(line);
    CHECK(found == wanted);
  }
  CHECK(cases == 7654);
  CHECK(tailored == 22);
}
