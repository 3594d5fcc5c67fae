#include "sheet/typography.h"

#include <array>
#include <catch2/catch.hpp>

using chalkleaf::sheet::typographic;

TEST_CASE("typed marks become typographer's marks") {
  CHECK(typographic("the coach's signal") == "the coach’s signal");
  CHECK(typographic("say \"grow\" and 'hold'") == "say “grow” and ‘hold’");
  CHECK(typographic("(\"up\")") == "(“up”)");
  CHECK(typographic("class of '26") == "class of ’26");
  CHECK(typographic("ages 9-11") == "ages 9–11");
  CHECK(typographic("up - and down") == "up – and down");
  CHECK(typographic("up -- and down") == "up – and down");
  CHECK(typographic("3 x 5, 3x5") == "3 × 5, 3×5");
}

TEST_CASE("what only looks alike stays") {
  CHECK(typographic("tempo 3-0-1-0 on 2026-12-02") == "tempo 3-0-1-0 on 2026-12-02");
  CHECK(typographic("warm-up, tip-toe") == "warm-up, tip-toe");
  CHECK(typographic("box 4 next to 5 x-shapes") == "box 4 next to 5 x-shapes");
  CHECK(typographic("--- a line ---") == "--- a line ---");
  CHECK(typographic("- first") == "- first");
  CHECK(typographic("déjà-vu ½ – ’ ×") == "déjà-vu ½ – ’ ×");
  CHECK(typographic("").empty());
}

TEST_CASE("places in the text move along with its marks") {
  const std::string text = "it's \"up\" 3 x 5";  // marks at 2, 5, 8 and 12
  std::array<std::size_t, 6> places = {0, 2, 3, 6, 9, text.size()};
  const std::string set = typographic(text, places);
  CHECK(set == "it’s “up” 3 × 5");
  CHECK(places == std::array<std::size_t, 6>{0, 2, 5, 10, 15, set.size()});
}
