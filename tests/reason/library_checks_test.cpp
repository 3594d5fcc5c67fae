// What the library says about a plan: names, levels, choices, home.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;
using plan::Place;

namespace {

LibraryDrill of_level(const std::string& name, int level) {
  LibraryDrill out = known(name, DrillKind::kSkill);
  out.level = plan::Sourced<int>{level, {}};
  return out;
}

std::vector<LibraryDrill> framing() {
  return {known("Jog", DrillKind::kRaise), known("Sway", DrillKind::kStretch)};
}

template <class Fill>
std::string judged(Place place, const plan::Club& club, std::vector<LibraryDrill> drills,
                   const std::optional<plan::Group>& group, Fill fill) {
  for (LibraryDrill& one : framing()) drills.push_back(std::move(one));
  SessionMaker maker(place);
  if (group) maker.group(*group);
  if (place == Place::kHome) maker.safety("An adult stays in the room. Clear the floor.");
  return checked(framed(maker, s(20), fill), club, std::move(drills));
}

template <class Fill>
std::string in_gym(std::vector<LibraryDrill> drills, Fill fill) {
  return judged(Place::kGym, {}, std::move(drills), {}, fill);
}

plan::Substitute substitute(const plan::Words& name) {
  plan::Substitute out;
  out.kit = {"line", {}};
  out.name = name;
  out.easier.push_back({"slower", {}});
  return out;
}

}  // namespace

TEST_CASE("a name that is nearly one of the library's is asked about, once for all its lines") {
  CHECK(in_gym({known("Dish hold", DrillKind::kShape)},
               [](SessionMaker& m) {
                 m.part("Shapes").drill("Dsh hold", reps(1, 10)).drill("Dish holds", reps(1, 11));
                 m.part("More").drill("Dsh hold", reps(1, 12));
               }) ==
        "s.md:5:1: warning: the club's library has no drill ‘Dsh hold’ [unknown-drill]; did you "
        "mean ‘Dish hold’? If not, describe it in ‘drills/dsh-hold.md’\n"
        "  Dsh hold: here too\n");
}

TEST_CASE("names like nothing in the library are one message") {
  CHECK(
      in_gym({}, [](SessionMaker& m) { m.part("Shapes").drill("Standing scale", reps(1, 10)); }) ==
      "s.md:5:1: warning: the club's library has no drill ‘Standing scale’ [unknown-drill]; "
      "describe it in a file such as ‘drills/standing-scale.md’, or use the name the library has "
      "for it\n");
  CHECK(
      in_gym({},
             [](SessionMaker& m) {
               m.part("Shapes");
               for (const char* name : {"Pelican", "Zebra's walk", "Ostrich", "Walrus", "Koala"}) {
                 m.drill(name, reps(1, 10));
               }
               m.part("Again")
                   .drill("Pelican", reps(1, 11))
                   .drill("Meerkat", reps(1, 10))
                   .drill("Gnu", reps(1, 10));
             }) ==
      "s.md:5:1: warning: the club's library has none of the drills ‘Pelican’, ‘Zebra's walk’, "
      "‘Ostrich’, ‘Walrus’, ‘Koala’ and 2 more [unknown-drill]; describe each in a file such as "
      "‘drills/pelican.md’, or use the name the library has for it\n"
      "  Zebra's walk: nor this one\n"
      "  Ostrich: nor this one\n"
      "  Walrus: nor this one\n"
      "  Koala: nor this one\n"
      "  Meerkat: nor this one\n"
      "  Gnu: nor this one\n");
}

TEST_CASE("pauses, games in a part with its own time, and circuits need no library") {
  CHECK(in_gym({known("Plank", DrillKind::kStrength)}, [](SessionMaker& m) {
          m.part("Talk").drill("Register and hall check", hold(1, s(60)));
          m.drill("Water and chalk", hold(1, s(60))).drill("Circle time", hold(1, s(60)));
          m.part("Games").budget(s(300)).drill("Musical statues");
          m.part("Strong").drill("Strong circle");
          m.last_drill().circuit = plan::Circuit{};
          m.last_drill().circuit->work = s(30);
          m.station("Plank");
        }).empty());
}

TEST_CASE("choices, moves and stations are looked up one by one") {
  CHECK(in_gym({known("Plank", DrillKind::kStrength)},
               [](SessionMaker& m) {
                 m.part("Strong").drill("Plank or tuna", reps(1, 3));
                 m.last_drill().choices = {m.words("Plank"), m.words("tuna")};
                 Dose moves = a_dose(AmountKind::kMoves, 0);
                 plan::Move one;
                 one.name = m.words("planks");
                 one.amount.count = 10;
                 plan::Move other = one;
                 other.name = m.words("salmon");
                 moves.moves = {one, other};
                 m.drill("Mix", moves);
                 m.drill("Circle");
                 m.last_drill().circuit = plan::Circuit{};
                 m.last_drill().circuit->work = s(30);
                 m.station("Trout");
               }) ==
        "s.md:7:1: warning: the club's library has none of the drills ‘tuna’, ‘salmon’ and ‘Trout’ "
        "[unknown-drill]; describe each in a file such as ‘drills/tuna.md’, or use the name the "
        "library has for it\n"
        "  salmon: nor this one\n"
        "  Trout: nor this one\n");
}

TEST_CASE("choices go from easy to hard, as far as the library knows them") {
  const auto said = [](const std::vector<std::string>& choices) {
    return in_gym({of_level("Donkey kick", 2), of_level("Wall walk-up", 3),
                   of_level("Wall handstand", 4), known("Bear", DrillKind::kSkill)},
                  [&](SessionMaker& m) {
                    m.part("Hands").drill("Upside down", reps(1, 3));
                    for (const std::string& one : choices) {
                      m.last_drill().choices.push_back(m.words(one));
                    }
                  });
  };
  CHECK(said({"Donkey kick", "Wall walk-up", "Wall handstand"}).empty());
  CHECK(said({"Donkey kick", "Bear", "Donkey kick"}).empty());
  CHECK(said({"Wall handstand", "Wall walk-up", "Donkey kick"}) ==
        "s.md:7:1: warning: the choice ‘Wall walk-up’ of level 3 stands behind ‘Wall handstand’ of "
        "level 4 [choices-unordered]; write the easiest first: ‘Donkey kick or Wall walk-up or "
        "Wall handstand’, or correct the level in the library\n");
  CHECK(said({"Wall handstand", "Bear", "Donkey kick"}) ==
        "s.md:8:1: warning: the choice ‘Donkey kick’ of level 2 stands behind ‘Wall handstand’ of "
        "level 4 [choices-unordered]; write ‘Donkey kick’ before ‘Wall handstand’, or correct the "
        "level in the library\n");
}

TEST_CASE("the same line twice in a part is a copy; in two parts, or of a run, it is meant") {
  const auto said = [](auto fill) { return checked(framed(SessionMaker(), s(60), fill)); };
  CHECK(said([](SessionMaker& m) {
          m.part("Shapes").drill("Squats", reps(2, 8)).drill("Plank", hold(1, s(20)));
          m.drill("Squats", reps(2, 8));
        }) ==
        "s.md:7:1: warning: ‘Squats’ is listed twice in ‘Shapes’, with the same dose "
        "[duplicate-drill]; take one of the two lines out, or write it once with more sets\n"
        "  Squats: the first time\n");
  CHECK(said([](SessionMaker& m) {
          m.part("Shapes").drill("Squats", reps(2, 8));
          m.part("Legs").drill("Squats", reps(2, 8));
          m.part("Runs").drill("Easy run", reps(1, 2)).drill("Squats", reps(2, 8));
          m.drill("Easy run", reps(1, 2)).drill("Water", hold(1, s(60)));
          m.drill("Water", hold(1, s(60)));
        }).empty());
}

TEST_CASE("the same line with words of its own below it is meant to be there again") {
  const auto twice = [](const std::string& first, const std::string& second) {
    return checked(framed(SessionMaker(), s(60), [&](SessionMaker& m) {
      m.part("Hands").drill("Handstand", reps(3, 1));
      m.last_drill().cues.push_back({first, {}});
      m.drill("Handstand", reps(3, 1));
      m.last_drill().cues.push_back({second, {}});
    }));
  };
  CHECK(twice("Push tall", "Toes pulled up").empty());
  CHECK_FALSE(twice("Push tall", "Push tall").empty());
}

TEST_CASE("a drill above the group's level is an error, as a choice and as a substitute too") {
  plan::Group wrens = group("Wrens", 6, 8);
  wrens.level = plan::Sourced<int>{2, {}};
  const auto said = [&](const std::string& name, auto more) {
    return judged(Place::kGym, {}, {of_level("Bunny hop", 2), of_level("Back walkover", 6)}, wrens,
                  [&](SessionMaker& m) {
                    m.part("Floor").drill(name, reps(1, 3));
                    more(m);
                  });
  };
  const auto nothing = [](SessionMaker&) {};
  CHECK(said("Bunny hop", nothing).empty());
  CHECK(said("Back walkover", nothing) ==
        "s.md:6:1: error: ‘Back walkover’ is a drill of level 6, and Wrens do drills up to level 2 "
        "[level-above-group]; choose a drill of level 2 or below for them; if a level is wrong, "
        "correct it in the library or in club.yaml\n");
  CHECK(said("Bunny hop", [](SessionMaker& m) {
          m.last_drill().substitutes.push_back(substitute(m.words("Back walkover")));
        }).find("s.md:7:1: error: ‘Back walkover’ is a drill of level 6") == 0);
  CHECK(said("Bunny hop or back walkover", [](SessionMaker& m) {
          m.last_drill().choices = {m.words("Bunny hop"), m.words("back walkover")};
        }).find("s.md:8:1: error: ‘back walkover’ is a drill of level 6") == 0);
}

TEST_CASE("what needs a spotter stays in the gym, wherever a home plan names it") {
  LibraryDrill spotted = known("Handstand", DrillKind::kSkill);
  spotted.spotter = plan::Sourced<bool>{true, {}};
  LibraryDrill apparatus = known("Cast", DrillKind::kSwing);
  apparatus.home = plan::Sourced<bool>{false, {}};
  LibraryDrill fine = known("Bear walk", DrillKind::kSkill);
  fine.home = plan::Sourced<bool>{true, {}};
  fine.spotter = plan::Sourced<bool>{false, {}};
  const auto said = [&](Place place, const std::string& name, auto more) {
    return judged(place, {}, {spotted, apparatus, fine}, {}, [&](SessionMaker& m) {
      m.part("Floor").drill(name, reps(1, 3));
      more(m);
    });
  };
  const auto nothing = [](SessionMaker&) {};
  CHECK(said(Place::kHome, "Bear walk", nothing).empty());
  CHECK(said(Place::kGym, "Handstand", nothing).empty());
  CHECK(said(Place::kHome, "Handstand", nothing) ==
        "s.md:6:1: error: ‘Handstand’ needs a spotter, so it is not for at home [spotter-at-home]; "
        "take it out, or write a drill here that is safe without a coach\n");
  const std::string rung =
      "s.md:7:1: error: ‘Handstand’ needs a spotter, so it is not for at home [spotter-at-home]; "
      "take this choice out, or write one that is safe without a coach\n";
  CHECK(said(Place::kHome, "Bear walk", [](SessionMaker& m) {
          m.last_drill().harder.push_back(m.words("Handstand"));
        }) == rung);
  CHECK(said(Place::kHome, "Bear walk", [](SessionMaker& m) {
          m.last_drill().substitutes.push_back(substitute(m.words("Handstand")));
        }) == rung);
  for (const auto ladder : {&plan::Substitute::easier, &plan::Substitute::harder}) {
    CHECK(said(Place::kHome, "Bear walk", [&](SessionMaker& m) {
            plan::Substitute other = substitute(plan::Words{"Bear walk", {}});
            (other.*ladder).push_back(m.words("Handstand"));
            m.last_drill().substitutes.push_back(std::move(other));
          }) == rung);
  }
  fine.harder.push_back({"Handstand", {fine.source.get(), 0, 9}});
  CHECK(said(Place::kHome, "Bear walk", nothing) ==
        "s.md:6:1: error: ‘Handstand’ needs a spotter, so it is not for at home [spotter-at-home]; "
        "it comes with the drill's own lines in the library: write ‘easier:’ and ‘harder:’ below "
        "this line that are safe without a coach\n");
}
