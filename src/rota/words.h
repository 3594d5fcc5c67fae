// The words by which a rotation is found in a coach's text: what a station is called, what a break
// is.
//
// Language, so data: one file a language, `themes/words/<language>/rota.yaml`, whose head says what
// each list is for. Tested by tests/rota/words_test.cpp.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/span.h"

namespace chalkleaf::rota {

/// Words that mean one thing, each as single words in lower case.
using Phrases = std::vector<std::vector<std::string>>;

/// A word of a text: letters and digits, in lower case; any other sign alone.
struct Token {
  std::string text;
  std::size_t begin = 0;  ///< bytes of the text
  std::size_t end = 0;
  bool is_word() const;
  bool is_number() const;
};
std::vector<Token> tokens_of(std::string_view text);

/// The lists of the file, each under its key.
struct Words {
  SourcePtr source;
  Phrases stations;
  Phrases pauses;
  Phrases rotating;  ///< `rotations`, `then rotate`: groups go from station to station
  Phrases events;    ///< `events`, `apparatus`: what a heading over a grid may say instead
  Phrases turns;     ///< `turn 2`, `rot 2`: names a row or column by its number
  Phrases first;     ///< the same without a number, in order: `first`, `second`, …
  Phrases minutes;
  Phrases each;  ///< behind a length: of every turn
  Phrases move;  ///< behind or before a length: from one station to the next
  Phrases rest;  ///< in a cell: nowhere
  Phrases group;
  Phrases coach;
  Phrases children;
  Phrases years;
  Phrases at;  ///< between a name and a station: `Jo on vault`
  Phrases with;
  Phrases from;
  Phrases until;
  Phrases most;  ///< before or behind how many a station takes
  Phrases same;  ///< two words for one station: `fx floor`
  Phrases red, orange, yellow, green, turquoise, blue, purple, black;  ///< in the names of groups
};

/// Reads such a file; null when it is not right (reported).
std::shared_ptr<const Words> read_words(const SourcePtr& source, Diagnostics& diagnostics);

/// The tokens of the longest phrase that begins at `at`; 0 when none does.
std::size_t match(const Phrases& phrases, const std::vector<Token>& tokens, std::size_t at);
/// Whether one stands anywhere in the text.
bool within(const Phrases& phrases, std::string_view text);

}  // namespace chalkleaf::rota
