#include "club/places.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::club;

TEST_CASE("a path as seen from a folder") {
  CHECK(path_from("/club", "/club/sessions/a.md") == "sessions/a.md");
  CHECK(path_from("/club/sessions", "/club/parts/a.md") == "../parts/a.md");
  CHECK(path_from("/club/a/b", "/club") == "../..");
  CHECK(path_from("/club", "/club") == ".");
  CHECK(path_from("/club", "/clubs/a.md") == "/clubs/a.md");
  CHECK(path_from("/home/coach", "/home/club/a.md") == "../club/a.md");
  CHECK(path_from("/", "/club/a.md") == "club/a.md");
}

TEST_CASE("percent signs are decoded as RFC 3986, 2.1 has them, or left alone") {
  CHECK(percent_decoded("warm%20up.md") == "warm up.md");
  CHECK(percent_decoded("%C3%A9%2f%2F") == "é//");
  CHECK(percent_decoded("100%") == "100%");
  CHECK(percent_decoded("%4") == "%4");
  CHECK(percent_decoded("%zz%41") == "%zzA");
}
