// Markdown bodies: the tree, its text, and the bytes each came from. What a text means is
// CommonMark 0.29 and GitHub's tables; where it stands is checked against the file itself.
#include <catch2/catch.hpp>
#include <thread>

#include "reading.h"
#include "support/random.h"

namespace chalkleaf::source {
namespace {

std::string tree(const std::string& text) { return described(read_text(text).document.body); }

TEST_CASE("blocks") {
  CHECK(tree("# A\n\nB\n===\n\n> C\n\n---\n\n```\nd\n\n e\n```\n\n    f\n\n<div>\ng\n</div>\n") ==
        "document\n  heading 1 «A»\n  heading 1 «B»\n  quote\n    paragraph «C»\n  rule\n"
        "  code «d\n\n e\n» from «d\n\n e»\n  code «f\n» from «f»\n"
        "  html «<div>\ng\n</div>\n» from «<div>\ng\n</div>»\n");
  CHECK(tree("- a\n  - b\n\n  c\n1. d\n\t- e\n") ==
        "document\n  list\n    item\n      paragraph «a»\n      list\n        item\n"
        "          paragraph «b»\n      paragraph «c»\n  list\n    item\n      paragraph «d»\n"
        "      list\n        item\n          paragraph «e»\n");
  CHECK(tree("| a | b \\| c |\n|---|---|\n| 1 |\n| 2 | 3 | 4 | |\n") ==
        "document\n  table\n    row\n      cell «a»\n      cell «b | c» from «b \\| c»\n"
        "    row\n      cell «1»\n      cell\n    row\n      cell «2»\n      cell «3»\n      cell "
        "«4»\n");
}

TEST_CASE("running text and its marks") {
  CHECK(tree("**Safety.** A *b* `c  d` \\*e\\* &amp; &eacute;é &copy\n") ==
        "document\n  paragraph «Safety. A b c  d *e* & éé &copy» from «Safety.** A *b* `c  d` "
        "\\*e\\* &amp; &eacute;é &copy» strong «Safety.» emphasised «b»\n");
  CHECK(tree("a\nb  \nc\\\nd\n") == "document\n  paragraph «a b\nc\nd» from «a\nb  \nc\\\nd»\n");
  CHECK(tree("> a\n> `b\n> c` d\ne\n") ==
        "document\n  quote\n    paragraph «a b c d e» from «a\n> `b\n> c` d\ne»\n");
  CHECK(tree("<b>a</b> <!-- c --> ~~d~~\n") ==
        "document\n  paragraph «<b>a</b> <!-- c --> ~~d~~»\n");
}

// CommonMark 0.29, 6.4; how nested emphasis is flattened is ours: strong wins.
TEST_CASE("emphasis is flattened, its places whole characters") {
  CHECK(tree("*a **b** c*\n") ==
        "document\n  paragraph «a b c» from «a **b** c» emphasised «a » strong «b» emphasised "
        "« c»\n");
  CHECK(tree("**a *b* c** __d__\n") ==
        "document\n  paragraph «a b c d» from «a *b* c** __d» strong «a b c» strong «d»\n");
  CHECK(tree("***é*** *½ &amp; [ü](x.md)*\n") ==
        "document\n  paragraph «é ½ & ü» from «é*** *½ &amp; [ü» strong «é» emphasised «½ & ü» "
        "link «ü» x.md from «[ü](x.md)»\n");
  CHECK(tree("**a\nb `c`** d\n") ==
        "document\n  paragraph «a b c d» from «a\nb `c`** d» strong «a b c»\n");
}

TEST_CASE("links and pictures") {
  CHECK(
      tree("[a b](x.md \"t\") a b, [c][r] [r] <http://e.org> ![d *e*](p.png)[](q.md)\n\n[r]: "
           "y.md\n") ==
      "document\n  paragraph «a b a b, c r http://e.org d e» from «a b](x.md \"t\") a b, [c][r] "
      "[r] <http://e.org> ![d *e» emphasised «e» link «a b» x.md from «[a b](x.md \"t\")» link «c» "
      "y.md from «[c][r]» link «r» y.md from «[r]» link «http://e.org» http://e.org from "
      "«<http://e.org>» image «d e» p.png from «![d *e*](p.png)» link «» q.md from «[](q.md)»\n");
  CHECK(tree("[![a](p.png)](x.md)\n") ==
        "document\n  paragraph «a» image «a» p.png from «![a](p.png)» link «a» x.md from "
        "«[![a](p.png)](x.md)»\n");
}

TEST_CASE("a link definition that nothing uses stays as text") {
  CHECK(
      tree("a\n\n[b]: c\n\n[d]: e\n[f](g)\n") ==
      "document\n  paragraph «a»\n  paragraph «[b]: c»\n  paragraph «f» link «f» g from «[f](g)»\n"
      "  paragraph «[d]: e»\n");
}

TEST_CASE("the exact bytes of a word can be traced behind everything that moves columns") {
  const ReadFile file =
      read_text("\xEF\xBB\xBF---\r\na: b\r\n---\r\n\r\n-\tÉ &amp; \\[x\\]\r\n  *two*: 3 × 10\r\n");
  const MarkNode& item = file.document.body.children.at(0).children.at(0);
  const Text& text = item.children.at(0).text;
  CHECK(text.str() == "É & [x] two: 3 × 10");
  const auto bytes = [&](std::string_view word) {
    const std::size_t at = text.str().find(word);
    return std::string(text.span(at, at + word.size()).text());
  };
  CHECK(bytes("É") == "É");
  CHECK(bytes("&") == "&amp;");
  CHECK(bytes("[x]") == "\\[x\\]");
  CHECK(bytes("two") == "two");
  CHECK(bytes("3 × 10") == "3 × 10");
  CHECK(bytes("] two") == "\\]\r\n  *two");
  CHECK(item.span.text() == "-\tÉ &amp; \\[x\\]\r\n  *two*: 3 × 10");
}

void check_nesting(const MarkNode& node, const Source& source) {
  REQUIRE(node.span.source == &source);
  REQUIRE(node.span.begin <= node.span.end);
  REQUIRE(node.span.end <= source.text().size());
  if (!node.text.empty()) REQUIRE(node.span.contains(node.text.span()));
  std::size_t at = 0;
  for (const Text::Mark& mark : node.text.marks()) {
    REQUIRE(mark.begin >= at);
    REQUIRE(mark.begin < mark.end);
    REQUIRE(mark.end <= node.text.str().size());
    at = mark.end;
  }
  for (const MarkNode& child : node.children) {
    REQUIRE(node.span.contains(child.span));
    check_nesting(child, source);
  }
}

TEST_CASE("places nest in any text") {
  const std::vector<std::string> pieces{
      "- ",    "> ", "# ",   "a", "\n",  "\n\n",  "  ",  "\t", "*",    "`",    "[b](c)", "|",
      "|-|\n", "\\", "&lt;", "é", "<p>", "```\n", "1. ", "[",  "]: d", "\r\n", "\r",     "---\n"};
  std::uint64_t state = 88172645463325252U;  // xorshift64 (Marsaglia 2003)
  for (unsigned round = 0; round < support::rounds(3000); ++round) {
    std::string text;
    for (int i = 0; i < 40; ++i) {
      state ^= state << 13U;
      state ^= state >> 7U;
      state ^= state << 17U;
      text += pieces[state % pieces.size()];
    }
    const ReadFile file = read_text(text);
    INFO(text);
    check_nesting(file.document.body, *file.source);
  }
}

TEST_CASE("what is nested too deeply becomes text") {
  std::string text;
  for (int i = 0; i < 100'000; ++i) text += "> ";
  const ReadFile file = read_text(text + "deep\n");
  const MarkNode* node = &file.document.body;
  int depth = 0;
  while (!node->children.empty()) {
    node = &node->children[0];
    ++depth;
  }
  CHECK(depth == 65);
  CHECK(node->kind == MarkNode::Kind::kParagraph);
  CHECK(node->text.str().substr(node->text.str().size() - 6) == "> deep");
}

TEST_CASE("text right above a table keeps its place") {
  const ReadFile file = read_text("a\n\nb: c\nd *e*\n| f | g |\n|---|---|\n| 1 | 2 |\n");
  const auto& blocks = file.document.body.children;
  REQUIRE(blocks.size() == 3);
  CHECK(blocks[1].kind == MarkNode::Kind::kParagraph);
  CHECK(blocks[1].text.str() == "b: c d e");
  CHECK(blocks[1].text.span(0, 4).text() == "b: c");
  CHECK(blocks[1].span.text() == "b: c\nd *e");
}

TEST_CASE("a table that would fill the memory is read as text") {
  std::string text = "|";
  for (int i = 0; i < 100; ++i) text += "a|";
  text += "\n|";
  for (int i = 0; i < 100; ++i) text += "-|";
  CHECK(read_text(text).document.body.children.at(0).kind == MarkNode::Kind::kParagraph);
}

TEST_CASE("threads may read at the same time") {
  const std::string text = "# A\n\n| a | b |\n|---|---|\n| *1* | [2](c) |\n\n- ~~x~~ www.e.org\n";
  const std::string wanted = tree(text);
  std::vector<std::string> got(4);
  std::vector<std::thread> workers;
  for (std::string& out : got) {
    workers.emplace_back([&out, &text] {
      for (int i = 0; i < 200; ++i) out = tree(text);
    });
  }
  for (std::thread& worker : workers) worker.join();
  for (const std::string& out : got) CHECK(out == wanted);
}

}  // namespace
}  // namespace chalkleaf::source
