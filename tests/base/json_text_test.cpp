#include "base/json_text.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

TEST_CASE("a string becomes JSON in ASCII, whatever it holds") {
  CHECK(json_string("") == "\"\"");
  CHECK(json_string("say \"go\" \\ é\n") == "\"say \\\"go\\\" \\\\ \\u00e9\\n\"");
  CHECK(json_string("\xff") == "\"\\ufffd\"");
}
