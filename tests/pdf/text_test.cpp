// Text that is drawn, read and found again by other programs.
#include <catch2/catch.hpp>
#include <regex>

#include "pdf/sample.h"
#include "pdf/text_use.h"

using namespace chalkleaf;
using namespace chalkleaf::pdf;

namespace {

std::string read_by_poppler(const page::DisplayList& list, const std::string& name) {
  return support::run("pdftotext -raw " + saved(name, written(list)) + " - 2>&1").output;
}

page::DisplayList one_line(const std::string& words, double size = 10) {
  Draft d;
  const auto id = d.node(page::Role::kP);
  d.text(page::Owner::of(id), 40, 100, words, size);
  return d.list;
}

}  // namespace

TEST_CASE("clusters run both ways") {
  page::TextItem item;
  item.text = "abcd";
  item.glyphs = {{1, 0, 0, 0, 0}, {2, 0, 0, 0, 1}, {3, 0, 0, 0, 1}, {4, 0, 0, 0, 3}};
  auto found = clusters_of(item);
  REQUIRE(found.size() == 3);
  CHECK(found[1].first == 1);
  CHECK(found[1].count == 2);
  CHECK(found[1].text == "bc");
  CHECK(found[2].text == "d");
  item.glyphs = {{4, 0, 0, 0, 3}, {2, 0, 0, 0, 1}, {1, 0, 0, 0, 0}};  // right to left
  found = clusters_of(item);
  REQUIRE(found.size() == 3);
  CHECK(found[0].text == "d");
  CHECK(found[1].text == "bc");
  CHECK(found[2].text == "a");
}

TEST_CASE("what a code reads as never holds what a reader must not be told") {
  CHECK(readable("a") == u"a");
  CHECK(readable("fi") == u"fi");
  CHECK(readable("3\xC2\xA0s\xE2\x80\xAF") == u"3 s ");
  CHECK(readable("\xEF\xBB\xBF"
                 "a\x01") == u"a");
  CHECK(readable("\xEF\xBB\xBF") == u"\u2060");
  CHECK(readable("") == u"\u2060");
}

TEST_CASE("text is read back as it was written: ligatures, accents, other scripts, soft hyphens") {
  // Witness: poppler's pdftotext.
  const std::string words =
      "AV Toes first, fifty-five \xC3\x97 caf\xC3\xA9, \xCE\xB1\xCE\xB2, \xD0\x96\xD1\x83\xD0\xBA "
      "\xE2\x87\x92 e\xCC\x81nd";
  const std::string composed =
      "AV Toes first, fifty-five \xC3\x97 caf\xC3\xA9, \xCE\xB1\xCE\xB2, \xD0\x96\xD1\x83\xD0\xBA "
      "\xE2\x87\x92 \xC3\xA9nd";
  std::string read = read_by_poppler(one_line(words), "words.pdf");
  read = read.substr(0, read.find('\n'));
  CHECK((read == words || read == composed));
}

TEST_CASE("a glyph that stands for two texts reads as each in its place") {
  Draft d;
  const auto id = d.node(page::Role::kP);
  // Two words; the second says that its glyphs are other characters.
  d.text(page::Owner::of(id), 40, 100, "abc");
  d.text(page::Owner::of(id), 80, 100, "abc");
  std::get<page::TextItem>(d.list.pages[0].items[1]).text = "xyz";
  // And one whose three glyphs are one character.
  d.text(page::Owner::of(id), 120, 100, "abc");
  auto& third = std::get<page::TextItem>(d.list.pages[0].items[2]);
  third.text = "\xE2\x82\xAC";
  for (type::Glyph& glyph : third.glyphs) glyph.cluster = 0;
  std::string read = read_by_poppler(d.list, "two-texts.pdf");
  CHECK(read.substr(0, read.find('\n')) == "abc xyz \xE2\x82\xAC");
}

TEST_CASE("letters stand where they were laid out") {
  // Witness: poppler's bounding boxes. The words of a long kerned line, to 0.02 pt.
  const std::string words = "AVAVAVAV ToToTo Wave Yawn LTLT fififi AVAVAVAVAVAV end";
  const auto list = one_line(words, 12);
  const std::string html =
      support::run("pdftotext -bbox " + saved("boxes.pdf", written(list)) + " - 2>&1").output;
  const auto& item = std::get<page::TextItem>(list.pages[0].items[0]);
  std::vector<double> starts;
  double pen = 40;
  const double k = 12.0 / support::test_fonts().face(item.face)->units_per_em();
  bool at_word = true;
  double end = 0;
  for (const type::Glyph& glyph : item.glyphs) {
    const bool space = item.text[glyph.cluster] == ' ';
    if (at_word && !space) starts.push_back(pen + glyph.dx * k);
    at_word = space;
    pen += glyph.advance * k;
    end = pen;
  }
  const std::regex box(R"(<word xMin="([0-9.]+)\" yMin="[0-9.]+\" xMax="([0-9.]+)\")");
  std::vector<double> seen;
  double seen_end = 0;
  for (std::sregex_iterator it(html.begin(), html.end(), box), none; it != none; ++it) {
    seen.push_back(std::stod((*it)[1]));
    seen_end = std::stod((*it)[2]);
  }
  REQUIRE(seen.size() == starts.size());
  for (std::size_t i = 0; i < seen.size(); ++i) CHECK(seen[i] == Approx(starts[i]).margin(0.02));
  CHECK(seen_end == Approx(end).margin(0.02));
}

TEST_CASE("fonts are embedded, subset and readable") {
  // Witness: poppler's pdffonts; its columns emb, sub, uni.
  const std::string table =
      support::run("pdffonts " + saved("fonts.pdf", written(sample())) + " 2>&1").output;
  INFO(table);
  const std::regex row(R"([A-Z]{6}\+(\S+)\s+CID TrueType\s+Identity-H\s+yes yes yes)");
  std::vector<std::string> names;
  for (std::sregex_iterator it(table.begin(), table.end(), row), none; it != none; ++it) {
    names.push_back((*it)[1]);
  }
  CHECK(names == std::vector<std::string>{"Lato-Regular", "Lato-Bold", "DejaVuSans"});
  CHECK(std::count(table.begin(), table.end(), '\n') == 5);
}

TEST_CASE("a text that holds no character's glyph is refused") {
  auto list = one_line("abc");
  std::get<page::TextItem>(list.pages[0].items[0]).glyphs[1].id = 0;
  const auto out = write(list, support::test_fonts());
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().message == "a text holds a glyph that stands for no character: 'abc'");
  list = one_line("abc");
  std::get<page::TextItem>(list.pages[0].items[0]).face = 99;
  CHECK(write(list, support::test_fonts()).error().message == "there is no font number 99");
}

TEST_CASE("documents of ordinary text share the font they embed; others have their own") {
  // Witness: qpdf unpacks the font files.
  const std::string many =
      "THE QUICK brown fox JUMPS OVER the LAZY DOG; quick jumps over a lazy WFB, 0123456789";
  const std::string others =
      "the quick BROWN FOX jumps: OVER a LAZY dog (0123456789) THE QUICK BROWN JUMPED";
  const auto font_of = [](const std::string& name, const std::string& text) {
    const std::string path = saved(name, written(one_line(text)));
    const std::string out =
        support::run("qpdf --qdf --object-streams=disable " + path + " - 2>/dev/null").output;
    std::smatch found;
    REQUIRE(std::regex_search(out, found, std::regex("/BaseFont /([A-Z]{6})\\+Lato-Regular")));
    const std::string tag = found[1];
    const std::size_t length = out.find("/Length1 ");
    REQUIRE(length != std::string::npos);
    const std::size_t begin = out.find("stream\n", length);
    return std::pair(tag, out.substr(begin, out.find("endstream", begin) - begin));
  };
  const auto first = font_of("shared-1.pdf", many);
  CHECK(font_of("shared-2.pdf", others) == first);
  CHECK(support::run("pdftotext " + saved("shared-3.pdf", written(one_line(others, 4))) + " -")
            .output.find(others) != std::string::npos);
  // A letter more, or few of them, and the font is the document's own.
  const auto accented = font_of("own-1.pdf", many + " é");
  const auto few = font_of("own-2.pdf", "quiet feet");
  CHECK(accented.first != first.first);
  CHECK(few.first != first.first);
  CHECK(few.second.size() * 3 < first.second.size());
}
