#include "draft/lexicon.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft::Role;

TEST_CASE("the shipped words are read, the longest phrase first") {
  const draft::Pieces pieces = draft::pieces_of("there and back x2, cool down");
  CHECK(draft_test::english().match(Role::kThereAndBack, pieces, 0, pieces.size()) == 3);
  CHECK(draft_test::english().match(Role::kCoolDown, pieces, pieces.size() - 2, pieces.size()) ==
        2);
  CHECK(draft_test::english().match(Role::kCoolDown, pieces, 0, pieces.size()) == 0);
}

TEST_CASE("a role nobody knows is reported") {
  Diagnostics diagnostics;
  const SourcePtr source = source::load_text("x.yaml", "langauge: [a]\nsecond: [s]\n", diagnostics);
  const auto root = source::read_yaml(source, diagnostics);
  REQUIRE(root);
  draft::Lexicon::read(*root, diagnostics);
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(diagnostics.all()[0].message == "words have no role ‘langauge’");
}

TEST_CASE("an x beside a number is the sign, in a word it is a letter") {
  const draft::Pieces pieces = draft::pieces_of("casts x5, land on the x");
  CHECK(pieces[1].is(draft::Piece::Kind::kTimes));
  CHECK(pieces.back().is(draft::Piece::Kind::kWord));
}

TEST_CASE("other words for the keys of front matter stand for them") {
  CHECK(draft_test::english().key("duration") == "slot");
  CHECK(draft_test::english().key("kit") == "equipment");
  CHECK(draft_test::english().key("weather").empty());
}

TEST_CASE("the quick way to cut a phrase into words gives what the tokenizer gives") {
  Diagnostics diagnostics;
  const SourcePtr source = source::load(
      RealFileSystem(), support::repository() + "/themes/words/en.yaml", "en.yaml", diagnostics);
  REQUIRE(source);
  const auto root = source::read_yaml(source, diagnostics);
  REQUIRE(root);
  std::size_t phrases = 0;
  for (const source::YamlEntry& entry : root->entries) {
    for (const source::YamlNode& phrase : entry.second.items) {
      std::vector<std::string> whole;
      for (const draft::Piece& piece : draft::pieces_of(phrase.text)) whole.push_back(piece.text);
      INFO(phrase.text);
      CHECK(draft::words_of_phrase(phrase.text) == whole);
      ++phrases;
    }
  }
  CHECK(phrases > 3000);
}
