// The corpus of doses (dose_corpus.txt), line by line, and what holds for any dose: its canonical
// form means the same, and no text makes the reader crash or crawl.
#include <catch2/catch.hpp>
#include <chrono>
#include <fstream>

#include "base/text.h"
#include "dose_meaning.h"
#include "support/places.h"
#include "support/random.h"

namespace chalkleaf::plan {
namespace {

using support::Random;

struct CorpusLine {
  std::string kind;  ///< `dose`, `line`, `circuit`
  std::string written;
  std::string meaning;
  int number = 0;
};

std::vector<CorpusLine> read_corpus() {
  std::ifstream file(support::repository() + "/tests/plan/dose_corpus.txt");
  std::vector<CorpusLine> out;
  std::string kind;
  std::string line;
  for (int number = 1; std::getline(file, line); ++number) {
    if (line.empty() || line.starts_with("# ")) continue;
    if (line[0] == '@') {
      kind = line.substr(1);
      continue;
    }
    const std::size_t bar = line.rfind(" | ");
    REQUIRE(bar != std::string::npos);
    const std::string written =
        replace_all(replace_all(line.substr(0, bar), "\\t", "\t"), "\\u00A0", "\u00A0");
    out.push_back({kind, written, line.substr(bar + 3), number});
  }
  return out;
}

std::string meaning_of(const CorpusLine& line) {
  std::string got = line.kind == "dose"   ? dose_meaning(line.written)
                    : line.kind == "line" ? line_meaning(line.written)
                                          : circuit_meaning(line.written);
  if (got.starts_with("! ")) got.resize(got.find(" | "));  // hints are for dose_mistakes_test.cpp
  return got;
}

TEST_CASE("every line of the corpus means what it says there") {
  const auto corpus = read_corpus();
  CHECK(corpus.size() >= 400);
  CHECK(std::count_if(corpus.begin(), corpus.end(),
                      [](const CorpusLine& l) { return l.meaning.starts_with("! "); }) >= 75);
  for (const CorpusLine& line : corpus) {
    INFO("dose_corpus.txt:" << line.number << ": " << line.written);
    CHECK(meaning_of(line) == line.meaning);
  }
}

TEST_CASE("a dose in its canonical form is the same dose") {
  for (const CorpusLine& line : read_corpus()) {
    if (line.kind != "dose" || line.meaning.starts_with("! ")) continue;
    INFO("dose_corpus.txt:" << line.number << ": " << line.written);
    CHECK(dose_meaning(line.meaning) == line.meaning);
  }
}

// Not only are none of them refused: no problem lacks its words, and each lies in the text.
TEST_CASE("whatever is refused says what, where and what to write") {
  for (const CorpusLine& line : read_corpus()) {
    if (line.kind != "dose" || !line.meaning.starts_with("! ")) continue;
    INFO("dose_corpus.txt:" << line.number << ": " << line.written);
    const auto source = std::make_shared<const Source>("dose", line.written);
    const auto dose = parse_dose(running_text(source));
    REQUIRE_FALSE(dose);
    CHECK(dose.error().hint.size() > 10);
    CHECK(dose.error().end <= line.written.size());
    CHECK(dose.error().begin <= dose.error().end);
  }
}

// Every token the language knows, thrown together: nothing is taken for something else when it is
// written out and read again.
TEST_CASE("any dose that is accepted has a canonical form that means the same") {
  const std::vector<std::string> pieces{
      "3",       "10",          "20 s",       "1:30",       "½ min",
      " x ",     " sets of ",   " reps",      " steps",     ", ",
      ", ",      ", ",          "rest 20 s",  "each side",  " each",
      " hold",   "max hold",    "up to 15 s", "3 goes",     "twice",
      "8–12",    "every 1 min", "effort 6",   "pace 2 s",   "tempo 3-0-1-0",
      "slow",    " star jumps", " squats",    "(",          ")",
      "2 x (",   " + ",         "AMRAP ",     "EMOM 6 min", " BW",
      "no rest", "10 left",     "10 right",   "20–30 s",    " – ",
      "/",       " then ",      " on",        "15 s off",   "each way: in, out",
      "10 kg",   "failure"};
  int accepted = 0;
  for (unsigned seed = 1; seed <= support::rounds(60'000); ++seed) {
    Random random(seed);
    std::string text;
    const std::size_t n = 1 + random.below(7);
    for (std::size_t i = 0; i < n; ++i) text += pieces[random.below(pieces.size())];
    const std::string first = dose_meaning(text);
    if (first.starts_with("! ")) continue;
    ++accepted;
    const std::string second = dose_meaning(first);
    if (first == second) continue;
    INFO(text);
    CHECK(second == first);
  }
  CHECK(accepted > static_cast<int>(support::rounds(60'000) / 20));
}

TEST_CASE("any bytes are read without harm, in places inside the text") {
  const std::vector<std::string> pieces{"\xEF\xB8\x8F",
                                        "\xE2\x83\xA3",
                                        "\xF0\x9F\x94\x9F",
                                        "\xC3",
                                        "'",
                                        "\"",
                                        "’",
                                        "½",
                                        "x",
                                        "х",
                                        "ｘ",
                                        "3",
                                        "99999999999",
                                        ":",
                                        "30",
                                        "s",
                                        "min",
                                        "(",
                                        ")",
                                        ",",
                                        "/",
                                        "-",
                                        "–",
                                        ".",
                                        " ",
                                        "\n",
                                        "\t",
                                        "and",
                                        "a",
                                        "half",
                                        "rounds",
                                        "hold",
                                        "m",
                                        "E/S",
                                        "left",
                                        "~",
                                        "+",
                                        "@",
                                        "１",
                                        "：",
                                        std::string(1, '\0')};
  for (unsigned seed = 1; seed <= support::rounds(40'000); ++seed) {
    Random random(seed);
    std::string text;
    const std::size_t n = random.below(14);
    for (std::size_t i = 0; i < n; ++i) text += pieces[random.below(pieces.size())];
    const auto source = std::make_shared<const Source>("dose", text);
    const source::Text running = running_text(source);
    const auto dose = parse_dose(running);
    const bool inside = dose ? dose->span.end <= text.size()
                             : dose.error().begin <= dose.error().end &&
                                   dose.error().end <= text.size() && !dose.error().hint.empty();
    const auto circuit = parse_circuit(running);
    const bool told = circuit || !circuit.error().message.empty();
    if (inside && told) continue;
    INFO(text);
    CHECK(inside);
    CHECK(told);
  }
}

// A dose has at most kLongestDose bytes; the worst of that length stay cheap. The bound is a
// hundred times what they take on a slow machine.
TEST_CASE("the longest doses cost little") {
  const auto many = [](const std::string& piece) {
    std::string out;
    while (out.size() + piece.size() <= kLongestDose) out += piece;
    return out;
  };
  for (const std::string& text : {many("("),
                                  many("10 a, "),
                                  many("(10 a, "),
                                  many("10 a (5 b), "),
                                  many("a 1,"),
                                  many("1-"),
                                  many("1/"),
                                  many("1 "),
                                  many("x"),
                                  many("- "),
                                  many("10 left, "),
                                  many("each way: "),
                                  many("rest "),
                                  many("then 1 "),
                                  many("3 x "),
                                  many("10 a, rest 1 s, "),
                                  many("as many "),
                                  many("1 min and "),
                                  many("2 x (10 a, 10 b), "),
                                  many("half "),
                                  many(", 10 squats x 3")}) {
    INFO(text.substr(0, 40));
    const auto begin = std::chrono::steady_clock::now();
    for (int i = 0; i < 10; ++i) {
      dose_meaning(text);
      line_meaning(text);
      circuit_meaning(text);
    }
    const auto took = std::chrono::steady_clock::now() - begin;
    CHECK(std::chrono::duration_cast<std::chrono::milliseconds>(took).count() < 3'000);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
