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

TEST_CASE("a sheet is called after its plan, as far as the name is safe") {
  CHECK(sheet_name("tuesday") == "tuesday");
  CHECK(sheet_name("12 May, 17.00") == "12 May, 17.00");
  CHECK(sheet_name("..") == "plan");
  CHECK(sheet_name("") == "plan");
  CHECK(sheet_name("- a. ") == "a");
  CHECK(sheet_name("a\tb\x07"
                   "c") == "a_b_c");
  CHECK(sheet_name("a\xE2\x80\xAE"
                   "cod\xFF") == "a_cod_");  // right-to-left override; no UTF-8
}
