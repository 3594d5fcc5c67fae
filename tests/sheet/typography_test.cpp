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
  CHECK(typographic("up - and down") == "up\u00A0– and down");
  CHECK(typographic("up -- and down") == "up\u00A0– and down");
  CHECK(typographic("3 x 5, 3x5") == "3\u00A0×\u00A05, 3×5");
  CHECK(typographic("2 x a week, 4 x") == "2\u00A0× a week, 4\u00A0×");
  CHECK(typographic("a 1/2 turn, (1/4), 3/4.") == "a ½ turn, (¼), ¾.");
  CHECK(typographic("1/2-turn") == "½-turn");
  CHECK(typographic("wait...") == "wait…");
}

TEST_CASE("what only looks alike stays") {
  CHECK(typographic("tempo 3-0-1-0 on 2026-12-02") == "tempo 3-0-1-0 on 2026-12-02");
  CHECK(typographic("warm-up, tip-toe") == "warm-up, tip-toe");
  CHECK(typographic("box 4 next to 5 x-shapes") == "box 4 next to 5 x-shapes");
  CHECK(typographic("on 1/2/2026, 21/2, 1/25, 4:1/2, won 3/4/5") ==
        "on 1/2/2026, 21/2, 1/25, 4:1/2, won 3/4/5");
  CHECK(typographic("at 17:05, 1.5 m") == "at 17:05, 1.5\u00A0m");
  CHECK(typographic("wait.... no .. yes") == "wait.... no .. yes");
  CHECK(typographic("https://example.org/1/2...3-4 me-2-3@example.org www.a.org/5-6") ==
        "https://example.org/1/2...3-4 me-2-3@example.org www.a.org/5-6");
  CHECK(typographic("2 feet, step 4 sideways, 3 high") == "2 feet, step 4 sideways, 3 high");
  CHECK(typographic("box x box, 3x, x3, max 5") == "box x box, 3x, x3, max 5");
  CHECK(typographic("--- a line ---") == "--- a line ---");
  CHECK(typographic("- first") == "- first");
  CHECK(typographic("déjà-vu ½ – ’ ×") == "déjà-vu ½\u00A0– ’ ×");
  CHECK(typographic("").empty());
}

TEST_CASE("a number stays with its unit") {
  CHECK(typographic("hold 20 s, rest 2 min") == "hold 20\u00A0s, rest 2\u00A0min");
  CHECK(typographic("10 reps (8 kg)") == "10\u00A0reps (8\u00A0kg)");
  CHECK(typographic("1/2 min") == "½\u00A0min");
  CHECK(typographic("3 ×, 3 × 20 s") == "3\u00A0×, 3\u00A0×\u00A020\u00A0s");
  CHECK(typographic("3 steps, 2 mats, 2 m-long") == "3 steps, 2 mats, 2 m-long");
  CHECK(typographic("two s, b4 s") == "two s, b4\u00A0s");
}

TEST_CASE("places in the text move along with its marks") {
  const std::string text = "it's \"up\" 3 x 5";  // marks at 2, 5, 8 and 12
  std::array<std::size_t, 6> places = {0, 2, 3, 6, 9, text.size()};
  const std::string set = typographic(text, places);
  CHECK(set == "it’s “up” 3\u00A0×\u00A05");
  CHECK(places == std::array<std::size_t, 6>{0, 2, 5, 10, 15, set.size()});
}
