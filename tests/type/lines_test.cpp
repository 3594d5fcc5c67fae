#include "type/lines.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "support/places.h"
#include "support/shell.h"
#include "type/shelf.h"

using namespace chalkleaf;
using namespace chalkleaf::type;
using Texts = std::vector<std::string>;

namespace {

Paragraph set(const std::vector<Inline>& text, Length width) {
  Typesetter typesetter(test_fonts());
  return typesetter.set(text, width);
}

const Length kWide = Length::pt(1000);

std::vector<std::string> problem_texts(const Paragraph& paragraph) {
  std::vector<std::string> out;
  for (const TextProblem& problem : paragraph.problems) {
    out.push_back((problem.kind == TextProblem::Kind::kCutWord ? "cut " : "missing ") +
                  problem.text);
  }
  return out;
}

}  // namespace

TEST_CASE("widths are the font's own advances") {
  // Witness: tests/support/font_advances.py reads hmtx by itself. Words without kerning pairs.
  for (const std::string word : {"nnnn", "Hinunin", "mill"}) {
    const support::Ran ran =
        support::run(fmt::format("/usr/bin/python3 {}/tests/support/font_advances.py {} {}",
                                 support::repository(), kAndika, word));
    REQUIRE(ran.status == 0);
    const std::int64_t units = std::stoll(ran.output);
    const std::int64_t em = std::stoll(ran.output.substr(ran.output.find(' ')));
    INFO(word << " " << ran.output);
    CHECK(width_of(word, style("learner")) ==
          Length::millipoints((2 * units * 10'000 + em) / (2 * em)));
  }
}

TEST_CASE("letters are kerned and joined as the font says") {
  CHECK(width_of("AV") < width_of("A") + width_of("V"));
  const Paragraph joined = set({plain("fi")}, kWide);  // Lato has a ligature for it
  REQUIRE(joined.lines.size() == 1);
  REQUIRE(joined.lines[0].fragments.size() == 1);
  CHECK(joined.lines[0].fragments[0].text == "fi");
  CHECK(joined.lines[0].fragments[0].glyphs.size() == 1);
}

TEST_CASE("words of one style are one fragment, as wide as its glyphs") {
  const Paragraph out = set({plain("Hold the shape for 20 s")}, kWide);
  REQUIRE(out.lines.size() == 1);
  REQUIRE(out.lines[0].fragments.size() == 1);
  const Fragment& fragment = out.lines[0].fragments[0];
  std::int64_t units = 0;
  for (const Glyph& glyph : fragment.glyphs) units += glyph.advance;
  CHECK(fragment.width == Length::millipoints((units * 10'000 * 2 + 2000) / 4000));
  CHECK(fragment.width == out.lines[0].width);
  CHECK(fragment.x == Length());
  // OS/2 of Lato: sTypoAscender 1610, sTypoDescender -390, of 2000 units.
  CHECK(out.lines[0].ascent.in_millipoints() == 8050);
  CHECK(out.lines[0].descent.in_millipoints() == 1950);
  for (const Glyph& glyph : fragment.glyphs) CHECK(glyph.cluster < fragment.text.size());
}

TEST_CASE("lines end between words, are never too wide and never too many") {
  const std::string text =
      "Stand tall on the low beam, arms by your ears. Reach long, look at the far end of the beam, "
      "and walk to it in eight slow steps: heel, toe; heel, toe. Turn, breathe, come back.";
  for (int points = 40; points < 300; points += 7) {
    const Length width = Length::pt(points);
    const Paragraph out = set({plain(text)}, width);
    std::string all;
    for (std::size_t i = 0; i < out.lines.size(); ++i) {
      CHECK(out.lines[i].width <= width);
      const std::string own = texts(out)[i];
      all += own;
      if (i + 1 < out.lines.size() && points >= 60) CHECK(own.back() == ' ');
    }
    CHECK(all == text);
    CHECK(out.problems.empty());
    // Filled line by line it takes as many: each takes words as long as they fit.
    std::size_t lines = 1;
    std::string line;
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = std::min(text.find(' ', at), text.size() - 1) + 1;
      const std::string word = text.substr(at, end - at);
      if (!line.empty() && width_of(line + word.substr(0, word.find(' '))) > width) {
        ++lines;
        line.clear();
      }
      line += word;
      at = end;
    }
    CHECK(out.lines.size() == lines);
  }
}

TEST_CASE("the right edge is made even") {
  // First fit would leave `a` and `beam.` alone: one line full, one nearly empty.
  const std::string text = "Walk on a line, then a low beam";
  const Length width = width_of("Walk on a line, then") + Length::pt(1);
  CHECK(texts(set({plain(text)}, width)) == Texts{"Walk on a line, then ", "a low beam"});
  // A crumb at the end costs: `in` goes down to it.
  CHECK(texts(set({plain("stand tall and breathe in now")},
                  width_of("stand tall and breathe in") + Length::pt(1))) ==
        Texts{"stand tall and breathe ", "in now"});
}

TEST_CASE("the space a line is broken at is kept, beyond the line's width") {
  const Paragraph out = set({plain("one two")}, width_of("one ") + Length::pt(1));
  CHECK(texts(out) == Texts{"one ", "two"});
  CHECK(out.lines[0].width == width_of("one"));
  CHECK(out.lines[0].fragments[0].width > out.lines[0].width);
}

TEST_CASE("a line end ends the line") {
  CHECK(texts(set({plain("one\ntwo")}, kWide)) == Texts{"one", "two"});
  CHECK(texts(set({plain("one\n\ntwo\r\nthree\n")}, kWide)) == Texts{"one", "", "two", "three"});
  CHECK(set({plain("")}, kWide).lines.empty());
  CHECK(set({}, kWide).lines.empty());
  const Paragraph out = set({plain("\n")}, kWide);
  REQUIRE(out.lines.size() == 1);
  CHECK(out.lines[0].ascent.in_millipoints() == 8050);
  CHECK(out.lines[0].descent.in_millipoints() == 1950);
  CHECK(out.lines[0].width == Length());
}

TEST_CASE("an unbroken stretch stays whole where it fits a line") {
  const Length width = width_of("Rest then 3 set");
  Inline dose = plain("3 sets of ten");
  CHECK(texts(set({plain("Rest then "), dose}, width)) == Texts{"Rest then 3 ", "sets of ten"});
  dose.unbroken = true;
  CHECK(texts(set({plain("Rest then "), dose}, width)) == Texts{"Rest then ", "3 sets of ten"});
  // Too long for any line: broken as usual.
  dose.text = "3 sets of ten and then some more of it";
  for (const Line& line : set({plain("Rest then "), dose}, width).lines) CHECK(line.width <= width);
  // It fits by itself, but not with the comma that must follow it.
  dose.text = "3 sets of ten";
  const Paragraph tight = set({dose, plain(", rest")}, width_of("3 sets of ten"));
  CHECK(texts(tight) == Texts{"3 sets of ", "ten, rest"});
  CHECK(tight.problems.empty());
}

TEST_CASE("no line ends at a no-break space, and it is a space's glyph") {
  const Paragraph out = set({plain("rest 20\xC2\xA0s")}, width_of("rest 20 "));
  CHECK(texts(out) == Texts{"rest ", "20\xC2\xA0s"});
  const Paragraph narrow = set({plain("20\xE2\x80\xAFs", style("display"))}, kWide);
  REQUIRE(narrow.lines.size() == 1);
  CHECK(narrow.problems.empty());
  CHECK(narrow.lines[0].fragments[0].glyphs.size() == 4);
  CHECK(narrow.lines[0].width > width_of("20s", style("display")));
}

TEST_CASE("words are broken at hyphens and dashes, and kerned whole where they are not") {
  const std::string text = "a half-turn";
  CHECK(texts(set({plain(text)}, width_of("a half-") + Length::pt(1))) == Texts{"a half-", "turn"});
  CHECK(texts(set({plain(text)}, width_of("half-turn"))) == Texts{"a half-", "turn"});
  CHECK(texts(set({plain(text)}, width_of(text))) == Texts{text});
  CHECK(texts(set({plain(text)}, width_of("a half-") - Length::millipoints(1)))[0] == "a ");
  CHECK(width_of("To-Vy") < width_of("To-") + width_of("Vy"));
}

TEST_CASE("figures of a column are all of one width, whatever stands beside them") {
  const auto width = [](const std::string& text, Figures figures) {
    Typesetter typesetter(test_fonts());
    Inline one = plain(text);
    one.figures = figures;
    return typesetter.natural_width(std::span(&one, 1));
  };
  for (int n = 0; n < 100; ++n) {
    const std::string time = fmt::format("1{}:{}7", n / 10, n % 10);
    CHECK(width(time, Figures::kTabular) == width("10:00", Figures::kTabular));
  }
  // Words beside them are remembered apart: Lato kerns AV, a column does not.
  CHECK(width("AV", Figures::kTabular) > width("AV", Figures::kOfTheFont));
}

TEST_CASE("a soft hyphen shows where the line ends at it, and only there") {
  const std::string text =
      "bal\xC2\xAD"
      "ance";
  const Paragraph whole = set({plain(text)}, kWide);
  CHECK(texts(whole) == Texts{"balance"});
  CHECK(whole.lines[0].width == width_of("balance"));
  const Paragraph broken = set({plain(text)}, width_of("balanc"));
  // ISO 32000-1, 14.8.2.2.3: a hyphen made by breaking a line reads as U+00AD.
  CHECK(texts(broken) == Texts{"bal\xC2\xAD", "ance"});
  CHECK(broken.lines[0].fragments[0].glyphs.size() == 4);
  CHECK(broken.lines[0].width > width_of("bal"));
  // Where the hyphen itself would not fit, the line ends earlier.
  CHECK(texts(set({plain("moving bal\xC2\xAD"
                         "ance")},
                  width_of("moving bal"))) == Texts{"moving ", "balance"});
}

TEST_CASE("a word wider than the line is cut between characters, and told of") {
  const Length width = width_of("WWWW") + Length::pt(1);
  const Paragraph out = set({plain("so WWWWWWWWWW go")}, width);
  CHECK(texts(out) == Texts{"so ", "WWWW", "WWWW", "WW go"});
  CHECK(problem_texts(out) == Texts{"cut WWWWWWWWWW"});
  // An accent stays on its letter.
  const Paragraph accents = set({plain("e\xCC\x81"
                                       "e\xCC\x81")},
                                Length::pt(1));
  CHECK(texts(accents) == Texts{"e\xCC\x81", "e\xCC\x81"});
  // A very long word is shown in short.
  const Paragraph longer = set({plain(std::string(1000, 'x'))}, width);
  CHECK(problem_texts(longer) == Texts{"cut " + std::string(60, 'x') + "…"});
}

TEST_CASE("a character comes from the first font that has it") {
  // Arrows: in DejaVu Sans, the second of the chain.
  const Paragraph out = set({plain("go \xE2\x87\x92 on")}, kWide);
  REQUIRE(out.lines.size() == 1);
  std::vector<FaceId> faces;
  for (const Fragment& fragment : out.lines[0].fragments) faces.push_back(fragment.face);
  CHECK(faces == std::vector<FaceId>{0, 2, 0});
  CHECK(texts(out) == Texts{"go \xE2\x87\x92 on"});
  CHECK(out.problems.empty());
  CHECK(out.lines[0].fragments[1].x == out.lines[0].fragments[0].width);
  CHECK(out.lines[0].fragments[2].x ==
        out.lines[0].fragments[0].width + out.lines[0].fragments[1].width);
}

TEST_CASE("a character no font has is told of once, and something stands for it") {
  const std::string source = "here";
  const Source file("plan.md", source);
  Inline text = plain("\xE4\xB8\xAD\xE4\xB8\xAD and \xE4\xB8\xAD", style("display"));
  text.origin = {&file, 0, 4};
  const Paragraph out = set({text, plain("\xE4\xB8\xAD", style("display"))}, kWide);
  CHECK(problem_texts(out) == Texts{"missing \xE4\xB8\xAD", "missing \xE4\xB8\xAD"});  // two places
  CHECK(out.problems[0].script == "Han");
  CHECK(out.problems[0].origin == text.origin);
  CHECK_FALSE(out.problems[1].origin);
  CHECK(texts(out)[0] == "\xE4\xB8\xAD\xE4\xB8\xAD and \xE4\xB8\xAD\xE4\xB8\xAD");
  for (const Fragment& fragment : out.lines[0].fragments) {
    for (const Glyph& glyph : fragment.glyphs) CHECK(glyph.id != 0);
  }
}

TEST_CASE("what is missing has the name of its script, signs have none") {
  const auto script = [](const std::string& text) {
    const Paragraph out = set({plain(text, style("display"))}, kWide);
    return out.problems.empty() ? "nothing missing" : out.problems[0].script;
  };
  CHECK(script("\u0915") == "Devanagari");
  CHECK(script("\u4E2D") == "Han");
  CHECK(script("\U00013000") == "Egyptian Hieroglyphs");
  CHECK(script("\U0001F938").empty());
  CHECK(script("\u2042").empty());
  CHECK(script("a") == "nothing missing");
}

TEST_CASE("invisible characters neither show nor count as missing") {
  const Paragraph out = set({plain("\xEF\xBB\xBF"
                                   "be\xE2\x81\xA0"
                                   "am\xE2\x80\x8E\x01",
                                   style("display"))},
                            kWide);
  CHECK(texts(out) == Texts{"beam"});
  CHECK(out.problems.empty());
  const Paragraph joiner = set({plain("a\xE2\x80\x8D"
                                      "b\xEF\xB8\x8F",
                                      style("display"))},
                               kWide);
  CHECK(joiner.problems.empty());
  CHECK(joiner.lines[0].fragments[0].glyphs.size() == 2);
}

TEST_CASE("styles meet within a word") {
  const Paragraph out = set({plain("half", style("text", Weight::kBold)), plain("way there")},
                            width_of("halfway the"));
  CHECK(texts(out) == Texts{"halfway ", "there"});
  CHECK(out.lines[0].fragments.size() == 2);
  CHECK(out.lines[0].fragments[0].face == 1);
  CHECK(out.lines[0].fragments[1].inline_index == 1);
}

TEST_CASE("a used typesetter sets as a new one does") {
  Typesetter used(test_fonts());
  const Inline text = plain("Kestrels: 3 \xC3\x97 8 tuck jumps, half-turn between");
  const auto shown = [](const Paragraph& paragraph) {
    std::string out;
    for (const Line& line : paragraph.lines) {
      for (const Fragment& f : line.fragments) {
        out += fmt::format("{}@{}+{}:", f.text, f.x.in_millipoints(), f.width.in_millipoints());
        for (const Glyph& g : f.glyphs) {
          out += fmt::format("{},{},{},{},{} ", g.id, g.advance, g.dx, g.dy, g.cluster);
        }
      }
    }
    return out;
  };
  for (int i = 0; i < 200; ++i) {
    const Inline other = plain(fmt::format("word{} half-{} turn", i, i));
    used.set(std::span(&other, 1), Length::pt(20 + i));
  }
  CHECK(shown(used.set(std::span(&text, 1), Length::pt(90))) == shown(set({text}, Length::pt(90))));
}

TEST_CASE("what is remembered is what would be set again") {
  Typesetter typesetter(test_fonts());
  const auto same = [](const Paragraph& a, const Paragraph& b) {
    if (a.lines.size() != b.lines.size() || a.problems.size() != b.problems.size()) return false;
    for (std::size_t i = 0; i < a.lines.size(); ++i) {
      if (a.lines[i].width != b.lines[i].width || a.lines[i].ascent != b.lines[i].ascent ||
          a.lines[i].fragments.size() != b.lines[i].fragments.size())
        return false;
      for (std::size_t f = 0; f < a.lines[i].fragments.size(); ++f) {
        const Fragment& one = a.lines[i].fragments[f];
        const Fragment& other = b.lines[i].fragments[f];
        if (one.text != other.text || one.face != other.face || one.size != other.size ||
            one.colour != other.colour || one.x != other.x ||
            one.inline_index != other.inline_index)
          return false;
      }
    }
    return true;
  };
  // Each differs from the first in one thing that lines depend on.
  std::vector<std::vector<Inline>> texts(9, {plain("twelve 12 steps with quiet feet")});
  texts[1][0].text += "!";
  texts[2][0].size = texts[2][0].size * 2;
  texts[3][0].colour = {200, 0, 0};
  texts[4][0].unbroken = true;
  texts[5][0].figures = Figures::kTabular;
  texts[6][0].style = style("learner");
  texts[7] = {plain("twelve 12 steps "), plain("with quiet feet")};
  texts[8] = {plain("twelve 12 "), plain("steps with quiet feet")};
  for (int round = 0; round < 3; ++round) {
    for (const std::vector<Inline>& text : texts) {
      for (const double width : {60.0, 61.0, 400.0}) {
        const auto once = typesetter.set_once(text, Length::pt(width));
        REQUIRE(once != nullptr);
        CHECK(same(*once, set(text, Length::pt(width))));
        Typesetter other(test_fonts());
        CHECK(typesetter.natural_width(text) == other.natural_width(text));
      }
    }
  }
  const std::span first(texts[0]);
  CHECK(typesetter.set_once(first, kWide) == typesetter.set_once(first, kWide));
  CHECK(typesetter.set_once(first, kWide) != typesetter.set_once(first, kWide * 2));
  // A problem names where the text comes from, so it is found each time.
  const Source source("p.md", "supercalifragilistic");
  Inline cut = plain("supercalifragilistic");
  for (const std::uint32_t begin : {0U, 5U}) {
    cut.origin = {&source, begin, begin + 3};
    const auto made = typesetter.set_once(std::span(&cut, 1), Length::pt(30));
    REQUIRE(made->problems.size() == 1);
    CHECK(made->problems[0].origin.begin == begin);
  }
}

TEST_CASE("what is remembered stays within bounds") {
  Typesetter typesetter(test_fonts());
  for (int i = 0; i < 20'000; ++i) {
    const Inline one = plain(std::to_string(i));
    CHECK(typesetter.set_once(std::span(&one, 1), kWide)->lines.size() == 1);
  }
  const Inline one = plain("7");
  CHECK(texts(*typesetter.set_once(std::span(&one, 1), kWide)) == Texts{"7"});
}
