// Words of the trade on a family's page.
#include "reason/hard_words.h"

#include <catch2/catch.hpp>

#include "reason/sessions.h"
#include "reason/trade_words.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Place;

namespace {

template <class Fill>
SessionMaker read_at_home(Fill fill) {
  SessionMaker maker(Place::kHome);
  maker.safety("An adult stays in the room. Clear the floor.");
  return framed(maker, s(60), [&](SessionMaker& m) {
    m.part("Shapes");
    fill(m);
  });
}

/// The words that are reported, in the order of the page.
template <class Fill>
std::string hard(Fill fill, const plan::Club& club = {}) {
  const std::string all = checked(read_at_home(fill), club);
  std::string out;
  for (std::size_t at = 0; (at = all.find("the word ‘", at)) != std::string::npos;) {
    at += std::string("the word ‘").size();
    out += (out.empty() ? "" : " ") + all.substr(at, all.find("’", at) - at);
  }
  return out;
}

std::string named(const std::string& name) {
  return hard([&](SessionMaker& m) { m.drill(name, hold(1, s(20))); });
}
std::string cued(const std::string& cue) {
  return hard([&](SessionMaker& m) {
    m.drill("Bear walk", hold(1, s(20)));
    m.last_drill().cues.push_back(m.words(cue));
  });
}

plan::Club explaining(const std::vector<std::string>& words) {
  plan::Club club;
  for (const std::string& word : words) club.words.push_back({{word, {}}, {"something", {}}});
  return club;
}

plan::Note note(const std::string& text, plan::Note::For reader = plan::Note::For::kAll) {
  plan::Note out;
  out.words = {text, {}};
  out.reader = reader;
  return out;
}

}  // namespace

TEST_CASE("a word of the trade is pointed at where it stands, with what it means") {
  CHECK(checked(read_at_home([](SessionMaker& m) {
          m.drill("Long dish hold", hold(1, s(20))).drill("Dish rocks", hold(1, s(20)));
        })) ==
        "s.md:6:6: warning: a family may not know the word ‘dish’, and nothing explains it "
        "[hard-words]; explain it in club.yaml, as in ‘words: {dish: a shallow curve, lying on the "
        "back}’, or in the drill's ‘plain:’, or use a plainer word\n"
        "  Dish: here too\n");
}

TEST_CASE("which words are hard, and which are everybody's") {
  CHECK(named("Passé balance") == "passé");
  CHECK(named("Straddle lever") == "straddle lever");
  CHECK(named("Round-off") == "round-off");
  CHECK(named("V-sit") == "v-sit");
  CHECK(named("Small casts") == "casts");
  CHECK(named("Pike walk-ups") == "pike");
  for (const char* plain :
       {"Cartwheel", "Forward roll", "Handstand", "Bear walk", "Press-ups", "Lunges", "Bridge",
        "Front support", "Star jumps", "Squats", "Plank", "Splits", "Crab"}) {
    CHECK(named(plain).empty());
  }
}

TEST_CASE("a word that is a plain verb there is not hard there") {
  CHECK(cued("Tuck your tail under, tall chest").empty());
  CHECK(cued("Arch your back like a cat").empty());
  CHECK(cued("Arms in a cast? Watch from the side").empty());
  CHECK(cued("Press through the arch of the foot").empty());
  CHECK(cued("Tight tuck shape") == "tuck");
  CHECK(cued("Roll from an arch") == "arch");
  CHECK(named("Tuck jumps") == "tuck");
  CHECK(named("Tuck your knees in").empty());
}

TEST_CASE("explained: by the club, the drill's sentence, a note below it or the text itself") {
  const auto dish = [](SessionMaker& m) { m.drill("Dish hold", hold(1, s(20))); };
  CHECK(hard(dish) == "dish");
  CHECK(hard(dish, explaining({"Dish"})).empty());
  CHECK(hard(dish, explaining({"dish hold"})).empty());
  CHECK(hard([&](SessionMaker& m) {
          dish(m);
          m.last_drill().notes.push_back(note("Lie on your back, lift your feet."));
        }).empty());
  CHECK(hard([&](SessionMaker& m) {
          dish(m);
          m.last_drill().notes.push_back(
              note("Lie on your back, lift your feet.", plan::Note::For::kCoach));
        }) == "dish");
  CHECK(hard([&](SessionMaker& m) {
          dish(m);
          m.last_drill().notes.push_back(note("Slowly."));
        }) == "dish");
  for (const char* text :
       {"Little boat is our dish.", "We call it a dish.", "A dish (a shallow curve) comes first.",
        "A shallow curve (dish).", "Dish: lie on your back and lift your feet.",
        "A dish is a shallow curve on your back."}) {
    INFO(text);
    CHECK(hard([&](SessionMaker& m) {
            m.note(text);
            dish(m);
          }).empty());
  }
  CHECK(hard([&](SessionMaker& m) {
          m.note("Today the dish comes first.");
          dish(m);
        }) == "dish");
}

TEST_CASE("explained by the library's sentence for families") {
  plan::LibraryDrill drill = known("Dish hold", plan::DrillKind::kShape);
  const auto said = [&] {
    return checked(
        read_at_home([](SessionMaker& m) { m.drill("Dish hold", hold(1, s(20))); }), {},
        {drill, known("Jog", plan::DrillKind::kRaise), known("Sway", plan::DrillKind::kRest)});
  };
  CHECK(said().find("‘dish’") != std::string::npos);
  drill.plain = {"Lie on your back and lift your feet.", {}};
  CHECK(said().empty());
}

TEST_CASE("only a home plan in English is judged") {
  plan::Club club;
  club.language = "de";
  const auto dish = [](SessionMaker& m) { m.drill("Dish hold", hold(1, s(20))); };
  CHECK(hard(dish, club).empty());
  club.language = "en-GB";
  CHECK(hard(dish, club) == "dish");
  CHECK(checked(framed(SessionMaker(), s(60), [&](SessionMaker& m) {
          m.part("Shapes");
          dish(m);
        })).empty());
}

TEST_CASE("the club's words that come up, in the order of the page") {
  const plan::Club club = explaining({"arch", "dish", "tuck", "balance", "hip circle", "beam"});
  const auto listed = [&](auto fill) {
    const plan::Session session = read_at_home(fill).session();
    std::string out;
    for (const plan::ExplainedWord* one : words_to_explain(session, club)) {
      out += (out.empty() ? "" : ", ") + one->word.text;
    }
    return out;
  };
  CHECK(listed([](SessionMaker& m) {
          m.drill("Beam balances", hold(1, s(20))).drill("Dish hold", hold(1, s(20)));
          m.last_drill().harder.push_back(m.words("From dish to arch"));
        }) == "beam, balance, dish, arch");
  CHECK(listed([](SessionMaker& m) {
          m.drill("Hip circles", hold(1, s(20)));
          m.last_drill().cues.push_back(m.words("Tuck your chin in"));
          m.last_drill().notes.push_back(note("Dish first", plan::Note::For::kCoach));
        }) == "hip circle");
  CHECK(listed([](SessionMaker& m) { m.drill("Hip swings", hold(1, s(20))); }).empty());
}

TEST_CASE("the table: every word can be found, and means something in plain words") {
  for (const TradeWord& entry : trade_words()) {
    INFO(entry.word);
    CHECK(find_trade_word(entry.word) == &entry);
    CHECK(entry.meaning.size() > 5);
    CHECK(entry.meaning.find_first_of("{}:#") == std::string_view::npos);  // it stands in YAML
  }
}
