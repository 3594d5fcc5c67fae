// The words of rotations: the shipped ones are whole, and what is wrong in a file is named.
#include "rota/words.h"

#include <catch2/catch.hpp>

#include "grids.h"

using namespace chalkleaf;

TEST_CASE("rota words: the shipped ones know places, breaks and ways to say a length") {
  const rota::Words& words = rota_test::english();
  CHECK(rota::within(words.stations, "the Beam + craft corner"));
  CHECK(rota::within(words.pauses, "WATER / LOO"));
  CHECK_FALSE(rota::within(words.stations, "Reds"));
  CHECK(rota::match(words.each, rota::tokens_of("28 mins each"), 2) == 1);
}

TEST_CASE("rota words: a key that means nothing and one that is missing are named") {
  Diagnostics found;
  const SourcePtr source = source::load_text("rota.yaml", "language: en\nplaces: [vault]\n", found);
  CHECK(rota::read_words(source, found) == nullptr);
  std::vector<std::string> names;
  for (const Diagnostic& one : found.all()) names.push_back(one.name + " " + one.message);
  CHECK(names.at(0) == "unknown-key ‘places’ means nothing here");
  CHECK(names.at(1) == "missing-key there are no words for ‘stations’");
}
