// When two names mean one drill. Common practice in the words of plans, no source; the letters
// without accents are those of Unicode 15 (Latin-1 Supplement, Latin Extended-A).
#include "plan/drill_names.h"

#include <catch2/catch.hpp>

namespace chalkleaf::plan {
namespace {

std::string key(std::string_view name) { return key_of_name(name).key; }

/// The keys that find() tries, longest first.
std::vector<std::string> tried(std::string_view name) {
  const NameKey made = key_of_name(name);
  std::vector<std::string> out{made.key};
  for (const NameCut& cut : made.cuts) out.push_back(made.key.substr(0, cut.size));
  return out;
}

using List = std::vector<std::string>;

TEST_CASE("case, hyphens, spaces, accents and plurals do not matter") {
  const std::vector<List> same{
      {"Dish hold", "dish holds", "DISH-HOLD", "dish  hold", "Dish_hold", "Dishhold", "Dish Hold."},
      {"Push-up", "push ups", "Pushups", "push–up"},
      {"Plié", "plie", "PLIÉS", "Plie\u0301", "pliés"},
      {"Bunny hop", "bunnies hop", "Bunny hops"},
      {"Crunch", "crunches"},
      {"Relevé in première", "releves in premiere"},
      {"Coach's choice", "Coach’s choice", "coachs choice"},
      {"Roll & freeze", "roll and freeze"},
      {"Jog on the spot", "Jog on spot", "jog on a spot"},
      {"ŁÓDKA", "lodka"},
      {"Куколка", "куколка"},
  };
  for (const List& names : same) {
    for (const std::string& name : names) {
      INFO(name);
      CHECK(key(name) == key(names[0]));
    }
  }
}

TEST_CASE("what is another drill stays another drill") {
  const std::vector<std::pair<const char*, const char*>> apart{
      {"Dish hold", "Dish rock"},
      {"Press", "Pres sit"},
      {"Arch", "March"},
      {"Step up", "Step"},
      {"Forward roll", "Backward roll"},
      {"Jump", "Jump down"},
      {"Tuck jump", "Tuck"},
      {"Handstand", "Headstand"},
      {"Beam 1", "Beam 2"},
      {"Beam A", "Beam"},
  };
  for (const auto& [a, b] : apart) {
    INFO(a << " / " << b);
    CHECK(key(a) != key(b));
  }
}

TEST_CASE("qualification is cut off from its end, and never the whole name") {
  CHECK(tried("Dish hold, palms pressed together") ==
        List{"dishholdpalmpressedtogether", "dishhold"});
  CHECK(tried("Handstand against the wall, belly in") ==
        List{"handstandagainstwallbellyin", "handstandagainstwall"});
  CHECK(tried("Walk (slowly) on the line") == List{"walkslowlyonline", "walkslowly", "walk"});
  CHECK(tried("Shape – like a star") == List{"shapelikestar", "shape"});
  CHECK(tried("Forward roll down the wedge") == List{"forwardrolldownwedge", "forwardroll"});
  CHECK(tried("Jump down and freeze") == List{"jumpdownandfreeze"});
  CHECK(tried("On the line") == List{"online"});
  CHECK(tried("(Dish) hold") == List{"dishhold"});
  CHECK(tried("Dish hold,") == List{"dishhold"});
  CHECK(tried("Push-up") == List{"pushup"});
}

TEST_CASE("where a move leads, or what is done in it, is the drill's own name") {
  CHECK(tried("Dish to arch") == List{"dishtoarch"});
  CHECK(tried("Lunge to handstand") == List{"lungetohandstand"});
  CHECK(tried("Bridge from standing") == List{"bridgefromstanding"});
  CHECK(tried("Run to the wall") == List{"runtowall", "run"});
  CHECK(tried("Roll from the box") == List{"rollfrombox"});
  CHECK(tried("Tuck jump with half turn") == List{"tuckjumpwithhalfturn"});
  CHECK(tried("Dish with towel") == List{"dishwithtowel", "dish"});
  CHECK(tried("Dish with the towel") == List{"dishwithtowel", "dish"});
  CHECK(tried("Cartwheel on beam") == List{"cartwheelonbeam", "cartwheel"});
  CHECK(key_of_name("Lunge to handstand").begin == 5);
}

TEST_CASE("what changes the movement is not cut off") {
  CHECK(tried("Splits with a foot on the bench").size() == 1);
  CHECK(tried("Handstand at the wall").size() == 1);
  CHECK(tried("Squat on from the block").size() == 1);
  CHECK(tried("Band pull in, out, up").size() == 3);  // `bandpull` is none of them
  CHECK(tried("Straight jump off the end").size() == 1);
  CHECK(tried("Cartwheel without hands").size() == 1);
  CHECK(tried("Bridge on back").size() == 1);
  CHECK(tried("Skips with a rope").size() == 1);
  CHECK(tried("Cartwheel over the rope") == List{"cartwheeloverrope", "cartwheel"});
  CHECK(tried("Jump over a toy, two feet") == List{"jumpovertoytwofeet", "jumpovertoy", "jump"});
  CHECK(tried("Squats with a partner").size() == 1);
  CHECK(tried("Kick-ups with a partner to spot") == List{"kickupwithpartnertospot", "kickup"});
}

TEST_CASE("sides are no part of a name, and help changes none") {
  CHECK(tried("Cartwheels left and right") == List{"cartwheelleftandright", "cartwheel"});
  CHECK(tried("Shoulder rolls L + R") == List{"shoulderrolllr", "shoulderroll"});
  CHECK(tried("Right") == List{"right"});
  CHECK(tried("Handstand with spot") == List{"handstandwithspot", "handstand"});
}

TEST_CASE("a part's title names an apparatus when it names one") {
  CHECK(apparatus_in("Beam") == "beam");
  CHECK(apparatus_in("Low beam, 15 min") == "beam");
  CHECK(apparatus_in("Parallel bars") == "parallelbar");
  CHECK(apparatus_in("HB") == "bar");
  CHECK(apparatus_in("Vault and beam").empty());
  CHECK(apparatus_in("Warm-up").empty());
  CHECK(apparatus_in("").empty());
  CHECK(keys_on("beam", "halfturn") == List{"halfturnonbeam", "beamhalfturn"});
  CHECK(keys_on("floor", "halfturn").empty());
  // What is done on an apparatus is said with the cut, for the drill to agree.
  const NameKey turn = key_of_name("Half turn on the beam");
  REQUIRE(turn.cuts.size() == 1);
  CHECK(turn.cuts[0].apparatus == "beam");
  CHECK(key_of_name("Balance, beside the beam").cuts[0].apparatus.empty());
}

TEST_CASE("no text is too odd or too long for a key") {
  CHECK(key("").empty());
  CHECK(key("!!! …").empty());
  CHECK(key_of_name(std::string(100'000, 'a')).key.size() == kLongestName);
  std::string commas;
  for (int i = 0; i < 1'000; ++i) commas += "a,";
  CHECK(key_of_name(commas).cuts.size() <= 12);
  const std::string cut_in_a_letter = std::string(kLongestName - 1, 'a') + "é";
  CHECK(key_of_name(cut_in_a_letter).key.size() >= kLongestName - 1);
}

}  // namespace
}  // namespace chalkleaf::plan
