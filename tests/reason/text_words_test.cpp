// Text as words: accents, hyphens, plurals.
#include "reason/text_words.h"

#include <catch2/catch.hpp>

using namespace chalkleaf::reason;

namespace {

std::string listed(const std::string& text) {
  std::string out;
  for (const TextWord& word : words_in(text)) {
    out += word.text + "[" + text.substr(word.begin, word.end - word.begin) + "]";
  }
  return out;
}

}  // namespace

TEST_CASE("words are lower case, without accents, whole with their hyphens and apostrophes") {
  CHECK(listed("Passé balance, 10 s") == "passe[Passé]balance[balance]10[10]s[s]");
  CHECK(listed("E\xCC\x81lan") == "elan[E\xCC\x81lan]");  // a combining acute
  CHECK(listed("V‑sit – grown-up's  -  'quoted'") ==
        "v-sit[V‑sit]grown-up's[grown-up's]quoted[quoted]");
  CHECK(listed("don’t") == "don't[don’t]");
  CHECK(listed("10 × 体操") == "10[10]体操[体操]");
  CHECK(listed(" -- ") == "");
  CHECK(listed("a\xFF") == "a[a]");  // not UTF-8
}

TEST_CASE("singulars by rule") {
  for (const auto& [many, one] :
       std::vector<std::pair<std::string, std::string>>{{"hoops", "hoop"},
                                                        {"boxes", "box"},
                                                        {"benches", "bench"},
                                                        {"bodies", "body"},
                                                        {"pass", "pass"},
                                                        {"bus", "bus"},
                                                        {"gas", "gas"},
                                                        {"child's", "child"},
                                                        {"crosses", "cross"},
                                                        {"dishes", "dish"},
                                                        {"s", "s"},
                                                        {"", ""}}) {
    CHECK(singular(many) == one);
  }
  CHECK(has_one_of(words_in("Two water bottles"), {"bottle"}));
  CHECK_FALSE(has_one_of(words_in("Waterfall"), {"water"}));
}
