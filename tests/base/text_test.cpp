#include "base/text.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

TEST_CASE("UTF-8: characters are decoded, wrong bytes are found") {
  CHECK(decode_utf8("é", 0).code == 0xE9);
  CHECK(decode_utf8("é", 0).size == 2);
  CHECK(decode_utf8("\xF0\x9F\xA4\xB8", 0).code == 0x1F938);
  CHECK(count_characters("naïve ½ – ’") == 11);
  CHECK_FALSE(first_invalid_utf8("dish – arch").has_value());
  // Unicode 15.0, 3.9, table 3-7: overlong forms, surrogates and values past U+10FFFF are
  // ill-formed.
  CHECK(first_invalid_utf8("ab\xC0\x80") == 2);
  CHECK(first_invalid_utf8("\xED\xA0\x80") == 0);
  CHECK(first_invalid_utf8("\xF4\x90\x80\x80") == 0);
  CHECK(first_invalid_utf8("x\xE2\x82") == 1);
  CHECK(first_invalid_utf8("caf\xE9") == 3);
}

TEST_CASE("UTF-8: what is written is what is read, for one character of each length") {
  for (const char32_t code : {U'a', U'é', U'€', U'\U0001F938'}) {
    std::string text;
    append_utf8(text, code);
    CHECK(decode_utf8(text, 0).code == code);
    CHECK(decode_utf8(text, 0).size == text.size());
  }
}

TEST_CASE("trim takes no-break spaces too") {
  CHECK(trim(" \t a b\xC2\xA0\r\n") == "a b");
  CHECK(trim("\xC2\xA0").empty());
}

TEST_CASE("lists read as people say them") {
  CHECK(join_list({}) == "");
  CHECK(join_list({"a"}) == "a");
  CHECK(join_list({"a", "b"}, "or") == "a or b");
  CHECK(join_list({"a", "b", "c"}) == "a, b and c");
}

TEST_CASE("edit distance counts a swap of neighbours as one") {
  CHECK(edit_distance("equipment", "equipmnet") == 1);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);  // Levenshtein's textbook pair, value from memory
  CHECK(edit_distance("über", "uber") == 1);       // characters, not bytes
}

TEST_CASE("a guess is made only when it is close") {
  const std::vector<std::string> keys = {"title", "place", "group", "equipment"};
  CHECK(closest("equipmnet", keys) == "equipment");
  CHECK(closest("Titel", keys) == "title");
  CHECK_FALSE(closest("weather", keys).has_value());
  CHECK_FALSE(closest("x", {"pdf"}).has_value());
}

TEST_CASE("display width: wide characters two, marks none") {
  CHECK(display_width("abc") == 3);
  CHECK(display_width("漢字") == 4);
  CHECK(display_width("e\xCC\x81") == 1);
}
