// What lines are known by, what they weigh, and that bytes kept of the weights are believed only
// when they are some.
#include "reason/line_weights.h"

#include <catch2/catch.hpp>

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "base/files.h"
#include "plan/danger_book.h"
#include "reason/second_reading.h"
#include "source/read.h"
#include "support/places.h"

using namespace chalkleaf;
using reason::LinePlace;
using reason::LineWeights;
using reason::SecondReading;

namespace {

struct English {
  std::shared_ptr<const plan::DangerBook> book;
  std::unique_ptr<reason::WordPatterns> patterns;
  std::unique_ptr<reason::LineWords> words;
};

const English& english() {
  static const English kEnglish = [] {
    Diagnostics found;
    const std::string path = support::repository() + "/themes/words/en/dangers.yaml";
    English out;
    out.book =
        plan::read_danger_book(source::load(RealFileSystem(), path, "dangers.yaml", found), found);
    out.patterns = std::make_unique<reason::WordPatterns>(*out.book);
    out.patterns->seal();
    out.words = std::make_unique<reason::LineWords>(*out.book);
    return out;
  }();
  return kEnglish;
}

std::set<std::string> marks_of(const std::string& line, LinePlace place) {
  std::set<std::string> out;
  line_marks(english().words->words(line, english().patterns->sentences(line)), place,
             [&](std::string_view mark) { out.emplace(mark); });
  return out;
}

LineWeights shipped_weights() {
  const auto text = RealFileSystem().read(
      support::repository() + "/themes/words/en/danger_weights.txt", 4'000'000);
  REQUIRE(text);
  const auto weights = LineWeights::read(*text);
  REQUIRE(weights);
  return *weights;
}

constexpr LinePlace kItemAtHome{LinePlace::Kind::kItem, true};

double odds_of(const LineWeights& weights, const std::string& line) {
  return weights.danger(english().words->words(line, english().patterns->sentences(line)),
                        kItemAtHome);
}

}  // namespace

TEST_CASE("a line is known by its words, their neighbours, their kinds and what is negated") {
  const auto marks = marks_of("Jump off the sofa: 90 s", kItemAtHome);
  for (const char* mark : {"home item", "jump", "home jump", "jump_off", "off_sofa", "jump~sofa",
                           "@sofa", "home @sofa", "off~@sofa", "t5"}) {
    INFO(mark);
    CHECK(marks.count(mark) == 1);
  }
  CHECK(marks.count("the") == 0);
  const auto none = marks_of("No headstands", {LinePlace::Kind::kText, false});
  CHECK(none.count("!headstand") == 1);
  CHECK(none.count("gym text") == 1);
  CHECK(none.count("gym headstand") == 0);
}

TEST_CASE("numbers are known by their size, times by their length") {
  CHECK(marks_of("12 x 40", kItemAtHome).count("n3") == 1);
  CHECK(marks_of("twelve", kItemAtHome).count("n3") == 1);
  CHECK(marks_of("Plank: 4 min", kItemAtHome).count("t6") == 1);
  CHECK(marks_of("Plank: 10 s", kItemAtHome).count("t0") == 1);
}

TEST_CASE("weights are read line by line, and each mark of a line counts once") {
  const auto weights = LineWeights::read("# says what it is\n[danger]\n-10\n30 sofa\n5 jump\n");
  REQUIRE(weights);
  // Two known marks among the six of a short line: (30 + 5) tenths by their share, less one.
  const auto marks = marks_of("Sofa jump sofa", kItemAtHome);
  CHECK(odds_of(*weights, "Sofa jump sofa") ==
        Approx(3.5 * reason::share_of_mark(marks.size()) - 1.0));
  CHECK(odds_of(LineWeights(), "Sofa jump sofa") == 0);
  CHECK_FALSE(LineWeights::read("12 sofa\n"));              // of no section
  CHECK_FALSE(LineWeights::read("[danger]\nmany sofa\n"));  // no number
}

TEST_CASE("weights from an image are those it was made of; other bytes are refused") {
  const LineWeights made = shipped_weights();
  const auto image = std::make_shared<const std::string>(made.image());
  const auto kept = LineWeights::from_image(*image, image);
  REQUIRE(kept);
  CHECK(kept->image() == *image);
  for (const std::string line :
       {"Jump off the wardrobe: 5", "March on the spot: 1 min", "Nobody holds their breath."})
    CHECK(odds_of(*kept, line) == odds_of(made, line));
  for (const std::string& wrong :
       {std::string(), std::string("x"), image->substr(0, image->size() / 2), *image + "x",
        std::string(image->size(), '\0')})
    CHECK_FALSE(LineWeights::from_image(wrong, nullptr));
}

TEST_CASE("what is forbidden weighs less than what is asked for") {
  const LineWeights weights = shipped_weights();
  for (const auto& [asked, forbidden] : std::vector<std::pair<std::string, std::string>>{
           {"Leap from the bunk bed: 5", "Nobody leaps from the bunk bed."},
           {"Train on through the pain", "Nobody trains on through pain, we stop."},
           {"Hold your breath in the plank: 20 s", "Breathe in the plank, never hold your breath."},
           {"Splits: Dad pushes your hips down", "Splits: nobody pushes your hips down."}}) {
    INFO(asked);
    CHECK(odds_of(weights, asked) > odds_of(weights, forbidden) + 1.0);
  }
}

TEST_CASE("a pattern is believed unless the words speak against it; words alone need to be clear") {
  const SecondReading with(*english().book, std::make_shared<const LineWeights>(shipped_weights()));
  CHECK(with.with_pattern(0) == SecondReading::Belief::kSure);
  CHECK(with.with_pattern(-2) == SecondReading::Belief::kUnsure);
  CHECK(with.with_pattern(-5) == SecondReading::Belief::kNone);
  CHECK(with.alone(1.9) == SecondReading::Belief::kNone);
  CHECK(with.alone(2.1) == SecondReading::Belief::kSure);
  CHECK(with.alone_of_people(2.1) == SecondReading::Belief::kNone);
  const SecondReading without(*english().book, nullptr);
  CHECK(without.with_pattern(-5) == SecondReading::Belief::kSure);
  CHECK(without.alone(9) == SecondReading::Belief::kNone);
}
