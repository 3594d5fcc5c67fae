// Circuits: their places and limits, and whole messages. Which texts are circuits is in
// dose_corpus.txt; the words are common practice, no source.
#include <catch2/catch.hpp>

#include "dose_meaning.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a circuit keeps its place, and leaves out what was not said") {
  const std::string text = "3 rounds, 30 s work, 1 min between rounds";
  const auto source = std::make_shared<const Source>("dose", text);
  const auto read = parse_circuit(running_text(source)).value().value();
  CHECK(read.circuit.span.text() == text);
  CHECK(read.circuit.rounds == 3);
  CHECK(read.circuit.work == Duration::seconds(30));
  CHECK_FALSE(read.circuit.rest);
  CHECK(read.circuit.between == Duration::minutes(1));
  CHECK(read.may_be_dose);  // without stations below it: 3 x 30 s, rest 1 min
}

struct HalfCircuit {
  const char* written;
  const char* meaning;
};

TEST_CASE("half a circuit says what is wrong and how circuits are written") {
  const HalfCircuit cases[] = {
      {"3 rounds, music on",
       "! ‘music on’ cannot be read as a part of a circuit | write the circuit as one of: `3 "
       "rounds, 30 s work, 15 s rest`, `3 rounds of 30 s on / 15 s off, 1 min between rounds`, or "
       "`3 rounds` and a dose at each station"},
      {"3 rounds, rest 30 s",
       "! ‘rest 30 s’ may be after each station or after each round | write `30 s between "
       "stations` or `30 s between rounds`"},
      {"3 rounds, 30/15", "! ‘30/15’ has no unit | say seconds or minutes: `30 s on / 15 s off`"},
      {"3 rounds, 30 work, 15 rest",
       "! ‘30 work’ has no unit | say seconds or minutes: `30 s work`"},
      {"3 rounds, work 30", "! ‘work 30’ has no unit | say seconds or minutes: `work 30 s`"},
      {"2–3 rounds, 30 s work", "! ‘2–3’ is a range | choose one number of rounds"},
      {"3 rounds, 30 s work, 10–15 s rest, 1 min between rounds",
       "! ‘10–15 s’ is a range | choose one number, the one you would call out"},
      {"0 rounds", "! ‘0’ is not a number of rounds | write a whole number from 1 to 100"},
      {"2.5 rounds", "! ‘2.5’ is not a number of rounds | write a whole number from 1 to 100"},
      {"3 rounds, 0 s work",
       "! ‘0 s work’ is no time at all | write a time above zero, such as `30 s work`"},
      {"3 rounds, 25 h work",
       "! ‘25 h’ is not a time to train for | write a time of at most 24 hours, in whole "
       "thousandths of a second"},
      {"3 rounds, 1 min between rounds, 2 min between rounds",
       "! this circuit gives the rest between rounds twice | leave one out"}};
  for (const HalfCircuit& c : cases) {
    INFO(c.written);
    CHECK(circuit_meaning(c.written) == c.meaning);
  }
}

TEST_CASE("a line too long for a circuit is none") {
  CHECK(circuit_meaning("3 rounds" + std::string(kLongestDose, ' ')) == "-");
}

}  // namespace
}  // namespace chalkleaf::plan
