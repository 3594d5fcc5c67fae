#include "base/text.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

TEST_CASE("edit distance counts a swap of neighbours as one") {
  CHECK(edit_distance("equipment", "equipmnet") == 1);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);  // Levenshtein's textbook pair, value from memory
}
