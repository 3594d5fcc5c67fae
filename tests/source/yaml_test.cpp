// YAML with the place of every value, checked against the file's own bytes. Forms are those of YAML
// 1.2.2, chapters 6 to 8.
#include <catch2/catch.hpp>

#include "base/text.h"
#include "reading.h"

namespace chalkleaf::source {
namespace {

std::string read(const std::string& yaml) {
  Diagnostics diagnostics;
  const auto source = std::make_shared<const Source>("c.yaml", yaml);
  const auto root = read_yaml(source, diagnostics);
  return (root ? described(*root) : "nothing") + messages(diagnostics);
}

TEST_CASE("scalars and where they stand") {
  CHECK(read("a: b c # d\ne: 'f'\ng: \"h \\\"i\\\"\"\n") ==
        "{a=b c, e=f<'f'>, g=h \"i\"<\"h \\\"i\\\"\">}");
  CHECK(read("a: 'it''s'\nb: x#y\nc: 9:30\n") == "{a=it's<'it''s'>, b=x#y, c=9:30}");
  CHECK(read("a: b\n  c\n\n  d\ne: f\n") == "{a=b c\nd<b\n  c\n\n  d>, e=f}");
  CHECK(read("a: |\n  b\n    c\n\nd: >-\n  e\n  f\n") ==
        "{a=b\n  c\n<|\n  b\n    c>, d=e f<>-\n  e\n  f>}");
  CHECK(read("a:\nb: ~\nc: null\nd: ''\n") == "{a=~<>, b=~<~>, c=~<null>, d=<''>}");
  CHECK(read("'a b': c\n\"d\": e\n12: f\nnull: g\n") == "{a b<'a b'>=c, d<\"d\">=e, 12=f, null=g}");
}

TEST_CASE("lists and maps, block and flow, duplicates kept") {
  CHECK(read("a: [b, 'c', [d]]\ne: {f: g, h: , i}\n") ==
        "{a=[b, c<'c'>, [d]], e={f=g, h=~<>, i=~<>}}");
  CHECK(read("a:\n- b\n- c: d\n  e: f\n-\n- - g\n") == "{a=[b, {c=d, e=f}, ~<>, [g]]}");
  CHECK(read("a: 1\na: 2\n") == "{a=1, a=2}");
  CHECK(read("") == "{}");
  CHECK(read("# nothing\n") == "{}");
  CHECK(read("---\na: b\n...\n") == "{a=b}");
}

TEST_CASE("collections have places, too") {
  Diagnostics diagnostics;
  const auto source =
      std::make_shared<const Source>("c", "a: [b, c ]\nd:\n  - e\n  - f: g\nh: {} # x\n");
  const YamlNode root = read_yaml(source, diagnostics).value();
  CHECK(root.entries.at(0).second.span.text() == "[b, c ]");
  CHECK(root.entries.at(1).second.span.text() == "- e\n  - f: g");
  CHECK(root.entries.at(2).second.span.text() == "{}");
}

// yaml-cpp counts offsets without a byte-order mark, drops a lone CR and ends at U+0004.
TEST_CASE("places are right behind a byte-order mark, CRLF, lone CR and wide characters") {
  const std::string plain =
      "title: Séance – ½ 🤸\nplace: 'hôme'\nm:\n  a: [é, \"ü\"]\n  b: c\nlong: d\n  é\n";
  const std::string wanted =
      "{title=Séance – ½ 🤸, place=hôme<'hôme'>, m={a=[é, ü<\"ü\">], b=c}, long=d "
      "é<d\n "
      " "
      "é>}";
  CHECK(read(plain) == wanted);
  CHECK(read("\xEF\xBB\xBF" + plain) == wanted);
  CHECK(read("\xEF\xBB\xBF" + replace_all(plain, "\n", "\r\n")) ==
        replace_all(wanted, "<d\n", "<d\r\n"));
  CHECK(read(replace_all(plain, "\n", "\r")) == replace_all(wanted, "<d\n", "<d\r"));
  CHECK(read("a: b\x04 c\nd: e\n") == "{a=b  c<b\x04 c>, d=e}");

  const ReadFile file =
      read_text("\xEF\xBB\xBF---\r\ntitle: Séance\r\nplace: gym\r\n---\r\n# É\r\n");
  CHECK(described(file.document.front.value()) == "{title=Séance, place=gym}");
  CHECK(described(file.document.body) == "document\n  heading 1 «É»\n");
}

TEST_CASE("anchors, aliases, tags and merge keys are refused") {
  CHECK(read("a: &x b\nc: d\n") ==
        "{a=b<&x b>, c=d}c.yaml:1:4: error: a value cannot begin with ‘&’ [bad-value]; put the "
        "whole value in quotation marks\n");
  CHECK(read("a: &x [b]\nc: *x\n") ==
        "{a=[b], c=?<*x>}c.yaml:1:4: error: a value cannot begin with ‘&’ [bad-value]; put the "
        "whole value in quotation marks\n"
        "c.yaml:2:4: error: a value cannot begin with ‘*’ [bad-value]; put the whole value in "
        "quotation marks\n");
  CHECK(read("a: !!str b\n").find("cannot begin with ‘!’") != std::string::npos);
  CHECK(read("<<: {a: b}\n").find("cannot be merged in") != std::string::npos);
}

TEST_CASE("depth, number and size are bounded") {
  const std::string deep = std::string(100'000, '[');
  CHECK(read("a: " + deep).find("error") != std::string::npos);
  CHECK(read("a: " + std::string(40, '[') + std::string(40, ']') + "\nb: c\n") ==
        "{a=[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[?<"
        "[>]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]], b=c}"
        "c.yaml:1:35: error: this is nested too deeply; what is inside is not read [bad-value]; "
        "write it with fewer levels\n");
  std::string many = "a: [";
  for (int i = 0; i < 30'000; ++i) many += "1,";
  CHECK(read(many + "]\n").find("there are more than 20000 values here") != std::string::npos);
  CHECK(read("a: " + std::string(300'000, 'b')) ==
        "nothingc.yaml:1:1: error: this is too long to be read [bad-value]; check that this is the "
        "right file\n");
}

}  // namespace
}  // namespace chalkleaf::source
