// Whatever is set, the lines are whole: properties on random text, and time that grows no faster
// than the text.
#include <catch2/catch.hpp>
#include <ctime>
#include <random>

#include "base/text.h"
#include "support/random.h"
#include "type/shelf.h"

using namespace chalkleaf;
using namespace chalkleaf::type;

namespace {

std::string joined(const Paragraph& paragraph) {
  std::string out;
  for (const std::string& text : texts(paragraph)) out += text;
  return out;
}

void check_glyphs(const Paragraph& paragraph) {
  for (const Line& line : paragraph.lines) {
    for (const Fragment& fragment : line.fragments) {
      REQUIRE_FALSE(first_invalid_utf8(fragment.text).has_value());
      for (const Glyph& glyph : fragment.glyphs) {
        REQUIRE(glyph.id != 0);
        REQUIRE(glyph.cluster < fragment.text.size());
      }
    }
  }
}

// Of the processor, not of the clock on the wall: other programs run beside the tests.
double seconds_to_set(const Inline& text, Length width) {
  Typesetter typesetter(test_fonts());
  const std::clock_t begin = std::clock();
  typesetter.set(std::span(&text, 1), width);
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

}  // namespace

TEST_CASE("random words in random widths: nothing is lost, no line is too wide") {
  const std::vector<std::string> alphabet{
      "a",           "b",  "W", "i",        "1",        " ",        " ",
      "-",           ",",  "(", ")",        "\"",       "\xC3\xA9", "\xE2\x80\x93",
      "fi",          "AV", "T", "\xC2\xA0", "\xCE\xB1", "\xD0\x96", "e\xCC\x81",
      "\xE2\x80\x99"};
  std::mt19937 random(3);
  Typesetter typesetter(test_fonts());
  for (unsigned round = 0; round < support::rounds(3000); ++round) {
    std::vector<Inline> text;
    std::string all;
    for (std::size_t i = 0; i < 1 + random() % 3; ++i) {
      Inline part = plain("", style("text", random() % 2 ? Weight::kBold : Weight::kRegular));
      part.unbroken = random() % 4 == 0;
      for (std::size_t n = random() % 40; n > 0; --n)
        part.text += alphabet[random() % alphabet.size()];
      all += part.text;
      text.push_back(part);
    }
    const Length width = Length::pt(12 + static_cast<double>(random() % 120));
    INFO(all);
    const Paragraph out = typesetter.set(text, width);
    REQUIRE(joined(out) == all);
    check_glyphs(out);
    for (const Line& line : out.lines) REQUIRE(line.width <= width);
    Length widest;
    for (const Line& line : typesetter.set(text, Length::pt(100'000)).lines) {
      widest = std::max(widest, line.width);
    }
    REQUIRE(typesetter.natural_width(text) == widest);
  }
}

TEST_CASE("random bytes are set without harm") {
  std::mt19937 random(5);
  Typesetter typesetter(test_fonts());
  for (unsigned round = 0; round < support::rounds(300); ++round) {
    Inline text = plain("");
    text.unbroken = round % 2 == 0;
    for (std::size_t n = random() % 400; n > 0; --n)
      text.text.push_back(static_cast<char>(random()));
    check_glyphs(typesetter.set(std::span(&text, 1), Length::pt(static_cast<double>(round % 50))));
  }
}

TEST_CASE("very long words and endless paragraphs take time in proportion") {
  for (const std::string part : {"W", "balance ", "on-to ", "\xE2\x80\x8B", "a-", "a\xC2\xAD",
                                 "\xCC\x81", "a ", "\n", "\xE4\xB8\xAD", "a\xE2\x81\xA0"}) {
    for (const double points : {0.0, 80.0}) {
      Inline text = plain("");
      while (text.text.size() < 20'000) text.text += part;
      const double once = seconds_to_set(text, Length::pt(points));
      const std::string unit = text.text;
      for (int i = 1; i < 8; ++i) text.text += unit;
      const double eight = seconds_to_set(text, Length::pt(points));
      INFO(part << " at " << points << " pt: " << once << " s and " << eight << " s");
      // Eight times the text; sixty-four times the time would be quadratic. The floor keeps a busy
      // machine from failing it.
      CHECK(eight < 30 * std::max(once, 0.01));
    }
  }
}

TEST_CASE("what is not shown changes nothing about where a long word is cut") {
  std::string shown;
  std::string joined_up;
  for (int i = 0; i < 120; ++i) {
    shown += "a";
    joined_up += "a\xE2\x81\xA0";  // a word joiner behind each letter
  }
  Typesetter typesetter(test_fonts());
  const auto lines = [&](const std::string& text) {
    std::vector<double> out;
    const Inline word = plain(text, style("text", Weight::kRegular));
    for (const Line& line : typesetter.set(std::span(&word, 1), Length::pt(100)).lines)
      out.push_back(line.width.in_pt());
    return out;
  };
  CHECK(lines(joined_up) == lines(shown));
  CHECK(lines(shown).size() > 5);
}
