#include "source/cost.h"

#include <catch2/catch.hpp>

#include "source/read.h"

using namespace chalkleaf;
using source::costly_shape;

namespace {

std::string repeated(const std::string& piece, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += piece;
  return out;
}

}  // namespace

TEST_CASE("shapes that cost a parser more than their size are refused with a reason") {
  // Each took seconds, minutes or gigabytes before it was refused.
  CHECK(costly_shape("[a]: " + std::string(131'072, 'x') + "\n\n" + repeated("[a]", 43'690)));
  CHECK(costly_shape(repeated("- ", 65'536) + "a" + std::string(131'072, '\n')));
  CHECK(costly_shape(repeated("1. ", 40'000) + "a" + std::string(131'072, '\n')));
  CHECK(costly_shape(repeated("- ", 30'000) + "a"));
  CHECK(costly_shape(repeated(repeated("> ", 2'000) + "a\n\n", 15)));
  CHECK(costly_shape("a " + repeated("<?", 131'072)));
  CHECK(costly_shape(repeated("a <!A ", 60'000)));
  CHECK(costly_shape(repeated("![[]()", 83'000)));
  CHECK(costly_shape(repeated("*a ", 80'000) + repeated("_a*_ ", 50'000)));
  CHECK(costly_shape(repeated("*a**b_ ", 70'000)));
  CHECK(costly_shape(repeated("a *b* [b](c) d ", 30'000)));
  CHECK(costly_shape(repeated("*a `b* ` ", 50'000) + repeated("_a*_ ", 10'000)));
  CHECK(costly_shape(repeated("[`]` ", 50'000) + repeated("[]()", 10'000)));
  CHECK(costly_shape(repeated("a|b\n|-|-|-|\n", 30'000)));
  CHECK(
      costly_shape(repeated("a *b*\r\n[b](c) d\r\n", 20'000)));  // a line end is not an empty line
}

TEST_CASE("texts of more pieces than memory has room for are refused") {
  const auto refusal = [](const std::string& text) {
    const auto found = costly_shape(text);
    return found ? found->what + " / " + found->hint : std::string();
  };
  const std::string hint =
      " / a plan is a page or two of text: check that this is the right file, or split it";
  CHECK(refusal(repeated("a\n", 250'000)) == "it has more than 36000 lines" + hint);  // 600 MB
  CHECK(refusal(repeated("a\n\n", 160'000)) == "it has more than 36000 lines" + hint);
  CHECK(refusal(repeated("- - - - a\n", 50'000)) == "it has more than 36000 lines" + hint);
  CHECK(refusal(repeated("a:\n", 80'000)) == "it has more than 36000 lines" + hint);
  CHECK(refusal(repeated("`a\\b&c` words and\n\n", 30'000)).empty());
  CHECK(refusal(repeated("`````````````a\n\n", 30'000)) ==
        "it has more than 150000 marks of emphasis, links and code" + hint);
}

TEST_CASE("a refusal says where, and what to change") {
  Diagnostics diagnostics;
  const std::string text = "# T\n\n" + repeated("![[]()", 83'000);
  CHECK(source::load_text("p.md", text, diagnostics) == nullptr);
  REQUIRE(diagnostics.all().size() == 1);
  const Diagnostic& found = diagnostics.all()[0];
  CHECK(found.message ==
        "this file cannot be read: too many marks of emphasis (‘*’, ‘_’) and brackets (‘[’) stand "
        "in one paragraph here");
  CHECK(found.hint ==
        "put empty lines between paragraphs, or a backslash before a mark that is meant as it is, "
        "as in ‘\\*’");
  CHECK(found.span.source->line_column(found.span.begin).line == 3);
  CHECK(found.span.begin > 1'000);
}

TEST_CASE("half a megabyte of what a person writes is far from them") {
  const auto filled = [](const std::string& piece) {
    return repeated(piece, 500'000 / piece.size());
  };
  CHECK_FALSE(
      costly_shape(filled("- [Dish hold](#dish): 3 x 20 s\n  - cue: *long* and **still**\n    - > "
                          "deep\n<!-- mine -->\n")));
  CHECK_FALSE(costly_shape(filled("Some **strong** and *quiet* words, [a link](b.md).\n\n")));
  CHECK_FALSE(
      costly_shape(filled("Some **strong** and *quiet* words: (*aside*) snake_case 2 * 3\n")));
  CHECK_FALSE(costly_shape(filled("- *Übung* 3: [x] do\n")));
  CHECK_FALSE(costly_shape("\n| a | b |\n|---|---|\n" +
                           filled("| *c* | [d](e.md), `f` |\n").substr(0, 300'000)));
  CHECK_FALSE(
      costly_shape(filled(std::string(80, '-') + "\n1.5 m\n\n" + std::string(80, '*') + "\n")));
  CHECK_FALSE(costly_shape(filled("plain words without any mark at all ")));
  CHECK_FALSE(costly_shape("[a]: b.md\n\n" + repeated("[a] ", 5'000)));
  CHECK_FALSE(costly_shape(""));
}

TEST_CASE("a text that is only a little over the bound is refused, one a little under is read") {
  CHECK_FALSE(costly_shape("*a* [b] [c]", 1'000));
  CHECK(costly_shape("*a* [b] [c]", 50));
}
