// Hyphens where the authors of the patterns say they belong.
//
// The patterns tested are Debian's hyphen-en-us (a package of the tests only: its authors publish
// what it must find) and hyphen-en-gb, hyphen-de and hyphen-fr, which sheets are set with.
#include "type/hyphenation.h"

#include <catch2/catch.hpp>

#include "base/text.h"
#include "type/hyphenator.h"
#include "type/shelf.h"

using namespace chalkleaf;
using namespace chalkleaf::type;
using Texts = std::vector<std::string>;

namespace {

const LazyHyphenation* patterns(const std::string& language) {
  static const RealFileSystem files;
  static const Hyphenations all(files);
  return &all.of(language);
}

// The word with a hyphen at every place.
std::string hyphenated(const std::string& language, const std::string& word) {
  Hyphenator hyphenator(patterns(language));
  std::string out = word;
  const std::vector<std::uint32_t> places = hyphenator.places(word);
  for (auto place = places.rbegin(); place != places.rend(); ++place) out.insert(*place, "-");
  return out;
}

Inline running(const std::string& text) {
  Inline out = plain(text);
  out.hyphenate = true;
  return out;
}

Texts set_in(const std::string& language, const Inline& text, Length width) {
  Typesetter typesetter(test_fonts(), language, patterns(language));
  return texts(typesetter.set(std::span(&text, 1), width));
}

}  // namespace

TEST_CASE("American patterns find what their authors publish") {
  REQUIRE(patterns("en-US")->get() != nullptr);
  // D. E. Knuth, The TeXbook, appendix H, and the title of F. M. Liang, "Word Hy-phen-a-tion by
  // Com-put-er", Stanford 1983, whose algorithm it is. Values from memory; `-er` is too short to
  // stand alone.
  CHECK(hyphenated("en-US", "hyphenation") == "hy-phen-ation");
  CHECK(hyphenated("en-US", "concatenation") == "con-cate-na-tion");
  CHECK(hyphenated("en-US", "computer") == "com-puter");
  // The exceptions that hyphen.tex ends with, but for `reciprocity`, which later lists changed.
  // Values from memory.
  for (const std::string word : {"as-so-ciate", "as-so-ciates", "dec-li-na-tion", "oblig-a-tory",
                                 "phil-an-thropic", "present", "presents", "project", "projects",
                                 "re-cog-ni-zance", "ref-or-ma-tion", "ret-ri-bu-tion", "ta-ble"}) {
    std::string whole = word;
    std::erase(whole, '-');
    CHECK(hyphenated("en-US", whole) == word);
  }
  CHECK(hyphenated("en-US", "supercalifragilisticexpialidocious") ==
        "su-per-cal-ifrag-ilis-tic-ex-pi-ali-do-cious");
}

TEST_CASE("each language has its own") {
  CHECK(hyphenated("en", "cartwheel") == hyphenated("en-GB", "cartwheel"));
  CHECK(hyphenated("de", "Schwebebalken") == "Schwe-be-bal-ken");
  CHECK(hyphenated("fr", "gymnastique") == "gym-nas-tique");
  CHECK(hyphenated("fr", "équilibre") == "équi-libre");
  CHECK(hyphenated("de", "Übungen") == "Übun-gen");
  CHECK(hyphenated("fr-CA", "gymnastique") == "gym-nas-tique");
  CHECK(hyphenated("fr-Latn", "gymnastique") == "gym-nas-tique");  // no file of that name
  // Patterns in ISO 8859-1 know no other letters.
  CHECK(hyphenated("de", "παράδειγμα") == "παράδειγμα");
}

TEST_CASE("without patterns there are no hyphens, and nothing fails") {
  CHECK(patterns("xx")->get() == nullptr);
  CHECK(patterns("")->get() == nullptr);
  CHECK(patterns("../../etc/passwd")->get() == nullptr);
  CHECK(hyphenated("xx", "hyphenation") == "hyphenation");
  CHECK(Hyphenation::read("") == nullptr);
  CHECK(Hyphenation::read("no patterns\n") == nullptr);
  const Inline text = running("understanding understanding");
  CHECK(set_in("xx", text, width_of("understanding und")).size() == 2);
}

TEST_CASE("of two patterns of the same letters the later one holds, and a comment is none") {
  const auto places = [](const std::string& patterns) {
    return Hyphenation::read("UTF-8\n" + patterns)->places(U"abcdefg");
  };
  using Places = std::vector<std::uint32_t>;
  CHECK(places("b1c\n") == Places{2});
  CHECK(places("b1c\nbc1\n") == Places{3});
  CHECK(places("b1c\nb2c \n") == Places{});
  CHECK(places("# b1c\n# d1e\n%b1c\nc1d") == Places{3});
}

TEST_CASE("two letters at least stay before a hyphen, three behind") {
  for (const std::string language : {"en-US", "en-GB", "de", "fr"}) {
    for (const std::string word : {"aboard", "apparatus", "elastic", "abeille", "Aberglaube",
                                   "oboe", "studio", "area", "Ader", "ouvert"}) {
      const std::string out = hyphenated(language, word);
      INFO(language << " " << out);
      CHECK(out.find('-') >= 2);
      const std::size_t last = out.rfind('-');
      CHECK((last == std::string::npos || out.size() - last > 3));
    }
  }
}

TEST_CASE("names, short forms and figures are not hyphenated for looks") {
  const Hyphenator english(patterns("en"));
  CHECK(english.is_plain_word("understanding"));
  CHECK(english.is_plain_word("(understanding),"));
  for (const std::string word : {"Alderquay", "UNDERSTANDING", "McDonaldson", "under2standing",
                                 "half-turning", "coach’s", "b4"}) {
    INFO(word);
    CHECK_FALSE(english.is_plain_word(word));
  }
  CHECK(Hyphenator(patterns("de")).is_plain_word("Schwebebalken"));
  CHECK_FALSE(Hyphenator(patterns("de")).is_plain_word("DTB"));
  CHECK(hyphenated("en", "(understanding),") == "(un-der-stand-ing),");
  CHECK(hyphenated("en", "under2standing") == "under2standing");
  CHECK(hyphenated("en", "coach’s") == "coach’s");
}

TEST_CASE("a hyphen comes where a line would miss much, and reads as a soft hyphen") {
  const std::string text = "stand upright understanding everybody else";
  const Length width = width_of("stand upright under") + Length::pt(2);
  const Texts plain_lines = set_in("en", plain(text), width);
  CHECK(plain_lines[0] == "stand upright ");
  const Texts lines = set_in("en", running(text), width);
  CHECK(lines.size() <= plain_lines.size());
  std::size_t hyphens = 0;
  std::string all;
  for (const std::string& line : lines) {
    if (line.ends_with("\u00AD")) ++hyphens;
    all += line.ends_with("\u00AD") ? line.substr(0, line.size() - 2) : line;
  }
  CHECK(hyphens == 0);  // a third of the line is free: less than a hyphen costs
  CHECK(all == text);
  // Two thirds of a line free.
  const std::string narrow = "is understanding of it all";
  const Length column = width_of("understanding") + Length::pt(1);
  CHECK(set_in("en", plain(narrow), column)[0] == "is ");
  CHECK(set_in("en", running(narrow), column)[0] == "is understand\u00AD");
  // No hyphen in the last word.
  CHECK(set_in("en", running("is understanding"), column) == Texts{"is ", "understanding"});
}

TEST_CASE("a word wider than its column is hyphenated rather than cut, whatever it is") {
  Typesetter typesetter(test_fonts(), "en", patterns("en"));
  for (const std::string word : {"understandingly", "Understandingly", "(understandingly)"}) {
    const Inline text = plain(word);
    const Paragraph out = typesetter.set(std::span(&text, 1), width_of("understandi"));
    INFO(word);
    CHECK(out.problems.empty());
    REQUIRE(out.lines.size() == 2);
    CHECK(texts(out)[0].ends_with("\u00AD"));
  }
  // What fits beside it is no reason to cut it either, nor is a mark inside it.
  const Inline text = plain("no half-understandingly so");
  const Paragraph out = typesetter.set(std::span(&text, 1), width_of("understandi"));
  CHECK(out.problems.empty());
  // Without hyphens there is no other way.
  const Inline number = plain("1234567890123456789012");
  CHECK(typesetter.set(std::span(&number, 1), width_of("understandi")).problems.size() == 1);
}

TEST_CASE("random text is hyphenated without loss and in no more lines") {
  std::string text;
  for (const std::string word : {"balancing", "carefully", "on", "the", "apparatus", "everyone",
                                 "understands", "a", "little", "about", "straightening", "elbows",
                                 "and", "absorbing", "landings", "together", "quietly"})
    text += word + " ";
  Typesetter typesetter(test_fonts(), "en", patterns("en"));
  std::size_t hyphens = 0;
  for (int points = 45; points < 220; points += 2) {
    const Length width = Length::pt(points);
    const Inline with = running(text);
    const Inline without = plain(text);
    const Paragraph out = typesetter.set(std::span(&with, 1), width);
    CHECK(out.lines.size() <= typesetter.set(std::span(&without, 1), width).lines.size());
    std::string all;
    std::size_t in_a_row = 0;
    for (std::size_t i = 0; i < out.lines.size(); ++i) {
      CHECK(out.lines[i].width <= width);
      std::string line = texts(out)[i];
      const bool hyphen = line.ends_with("\u00AD");
      if (hyphen) line.resize(line.size() - 2);
      in_a_row = hyphen ? in_a_row + 1 : 0;
      hyphens += hyphen ? 1 : 0;
      if (points > 80) CHECK(in_a_row <= 2);
      all += line;
    }
    CHECK(all == text);
  }
  CHECK(hyphens > 10);
}
