// What kit a line means, and how much of it.
#include "reason/kit_words.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::reason;

namespace {

std::string things(const std::string& text) {
  std::string out;
  for (const auto& thing : things_in(text)) out += "[" + joined(thing) + "]";
  return out;
}

/// `2 for 1`, or `-`.
std::string share(const std::string& text) {
  const auto found = share_in(text);
  if (!found) return "-";
  return std::to_string(found->items) + " for " + std::to_string(found->gymnasts);
}

}  // namespace

TEST_CASE("things: the nouns, one of several with `or`") {
  CHECK(things("two hoops each") == "[hoop]");
  CHECK(things("a bath towel, rolled") == "[bath towel rolled]");
  CHECK(things("a scarf or a towel") == "[scarf][towel]");
  CHECK(things("mats beside the beam") == "[mat]");
  CHECK(things("the") == "");
  CHECK(things("or or") == "");
}

TEST_CASE("kit is listed by its noun, in a name or what it is described as") {
  KitNouns nouns;
  CHECK(nouns.empty());
  for (const char* text :
       {"floor bar", "a low floor bar or a foam roller to grip", "mats", "tape"}) {
    nouns.add(text);
  }
  const auto has = [&](const char* text) { return nouns.has(things_in(text).front()); };
  CHECK(has("bar"));
  CHECK(has("crash mat"));
  CHECK(has("foam roller"));
  CHECK(has("roll of tape"));
  CHECK_FALSE(has("hoop"));
  CHECK_FALSE(has("floor cushion"));
}

TEST_CASE("a wall is everywhere, wall bars are not") {
  const auto everywhere = [](const char* text) { return is_everywhere(things_in(text).front()); };
  CHECK(everywhere("the wall"));
  CHECK(everywhere("kitchen chairs"));
  CHECK_FALSE(everywhere("wall bars"));
  CHECK_FALSE(everywhere("towel"));
}

TEST_CASE("shares: how many for how many") {
  CHECK(share("hoops, two each") == "2 for 1");
  CHECK(share("two hoops each") == "2 for 1");
  CHECK(share("hoop one each") == "1 for 1");
  CHECK(share("hoops, 3 per gymnast") == "3 for 1");
  CHECK(share("one mat for every child") == "1 for 1");
  CHECK(share("mat, one between two") == "1 for 2");
  CHECK(share("one block for three") == "1 for 3");
  CHECK(share("ropes: one per pair") == "1 for 2");
  CHECK(share("one to a pair") == "1 for 2");
  CHECK(share("wall mats, two gymnasts to each") == "1 for 2");
}

TEST_CASE("what says nothing plain about a share is left alone") {
  for (const char* text : {"low beams, three lines", "towel", "hoops each", "two hoops",
                           "hold 10 s each side", "one on each side", "block, one at each end",
                           "12 hoops in a line", "two or three each", "", "each"}) {
    INFO(text);
    CHECK(share(text) == "-");
  }
}

TEST_CASE("what a group needs is rounded up") {
  CHECK(Share{2, 1}.needed_by(8) == 16);
  CHECK(Share{1, 2}.needed_by(7) == 4);
  CHECK(Share{1, 3}.needed_by(9) == 3);
}
