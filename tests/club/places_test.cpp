#include "club/places.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::club;

TEST_CASE("a path as seen from a folder") {
  CHECK(path_from("/club", "/club/sessions/a.md") == "sessions/a.md");
  CHECK(path_from("/club/sessions", "/club/parts/a.md") == "../parts/a.md");
  CHECK(path_from("/club/a/b", "/club") == "../..");
  CHECK(path_from("/club", "/club") == ".");
  CHECK(path_from("/club", "/clubs/a.md") == "/clubs/a.md");
  CHECK(path_from("/disk/coach", "/disk/club/a.md") == "../club/a.md");
  CHECK(path_from("/", "/club/a.md") == "club/a.md");
}
