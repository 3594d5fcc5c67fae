// The words and times of a hall: what is read of them, what is said of mistakes, and that the ones
// that are shipped are whole.
#include "plan/hall_book.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "base/files.h"
#include "source/read.h"
#include "support/places.h"

using namespace chalkleaf;

namespace {

std::shared_ptr<const plan::HallBook> hall_of(const std::string& text, std::string& said) {
  Diagnostics found;
  const SourcePtr source = source::load_text("hall.yaml", text, found);
  auto out = plan::read_hall_book(source, found);
  for (const Diagnostic& one : found.sorted()) {
    said += render(one, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

}  // namespace

TEST_CASE("hall book: places, activities, times and factors") {
  std::string said;
  const auto book = hall_of(
      "language: en\nplaces:\n  vault: {words: [vault, mini tramp], goes: each, lanes: 2, lane: 8, "
      "blocked: 14 s, cycle: 40 s, only: [jump], source: s}\n"
      "activities:\n  game: {words: [game], kinds: [game], places: none, lasts: 5 min, source: s}\n"
      "times: {rep: 2.5 s}\nfactors: {low: 0.7, high: 1.45}\npaces: {half routine: 40 s}\n",
      said);
  CHECK(said.empty());
  REQUIRE(book);
  const plan::HallPlace& vault = book->places.at(0);
  CHECK(vault.words == plan::Phrases{{"vault"}, {"mini", "tramp"}});
  CHECK(vault.goes == plan::HallPlace::Goes::kEach);
  CHECK(vault.only == std::vector{plan::DrillKind::kJump});
  CHECK(vault.blocked == Duration::seconds(14));
  const plan::HallActivity* game = book->activity("game");
  REQUIRE(game != nullptr);
  CHECK(game->places == plan::HallActivity::Places::kNone);
  CHECK(game->alone == Duration::minutes(5));  // as long as among others, unless it says
  CHECK(book->time("rep") == Duration::milliseconds(2500));
  CHECK(book->time("nothing") == Duration());
  CHECK(book->factor("high") == Approx(1.45));
  CHECK(book->factor("nothing") == Approx(1));
  CHECK(book->paces.at(0).first == std::vector<std::string>{"half", "routine"});
}

TEST_CASE("hall book: mistakes are named with what to write, and then there is no book") {
  std::string said;
  CHECK(hall_of("places:\n  vault: {words: [vault], blocked: long, source: s}\n"
                "  bars: {words: [bars], blocked: 5 s}\n"
                "  beam: {words: [beam], blocked: 5 s, lanes: 0, only: [fun], source: s}\n"
                "factors: {low: 0.123}\nplaces-to-be: {}\n",
                said) == nullptr);
  CHECK(said ==
        "hall.yaml:2:3: error: ‘vault’ is not whole [missing-key]; give it words, blocked and "
        "source\n"
        "hall.yaml:2:36: error: ‘long’ is no length of time [bad-value]; write a length of time\n"
        "hall.yaml:3:3: error: ‘bars’ is not whole [missing-key]; give it words, blocked and "
        "source\n"
        "hall.yaml:4:46: error: ‘0’ is no whole number above 0 [bad-value]; write a whole number "
        "above 0\n"
        "hall.yaml:4:56: error: ‘fun’ is no kind of drill [bad-value]; write a kind of drill\n"
        "hall.yaml:5:16: error: ‘0.123’ is no number with at most two digits behind its point "
        "[bad-value]; write a number with at most two digits behind its point\n"
        "hall.yaml:6:1: error: ‘places-to-be’ means nothing here [unknown-key]; remove it, or see "
        "the head of the file for the keys there are\n");
}

TEST_CASE("hall book: the shipped one reads without a message and has what the model asks for") {
  const RealFileSystem files;
  Diagnostics found;
  const std::string path = support::repository() + "/themes/words/en/hall.yaml";
  const auto book = plan::read_hall_book(source::load(files, path, "hall.yaml", found), found);
  REQUIRE(book);
  CHECK(found.all().empty());
  for (const char* time :
       {"rep", "step", "length", "max-hold", "between-sets", "skill", "shared", "hold-in-one-go",
        "queue-told", "between-stations", "station-told", "move-told", "remark", "further"}) {
    CHECK(book->time(time) > Duration());
  }
  for (const char* activity : {"warm-up", "cool-down", "home", "other"}) {
    CHECK(book->activity(activity) != nullptr);
  }
  CHECK(book->factor("low") < 1);
  CHECK(book->factor("high") > 1);
}
