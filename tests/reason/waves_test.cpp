// Turns at a station. The sums are worked by hand beside each case; that waiting counts as rest is
// common practice, no source.
#include <catch2/catch.hpp>

#include <fmt/format.h>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

/// `work + rest = reasoning`
std::string summed_waves(const Dose& dose, const Waves& waves) {
  const DrillTime time = dose_time(dose, {}, {}, waves);
  CHECK(time.waves == waves.count);
  return exact_text(time.work) + " + " + exact_text(time.rest) + " = " + time.reasoning;
}

/// `count/gymnasts/places` of a drill at `at` for so many gymnasts.
std::string turns(plan::Place place, const std::string& at, int gymnasts) {
  plan::Club club;
  club.stations = {station("beam", 3, 1), station("floor strip", 1, 8), station("wall", 1, 0)};
  SessionMaker maker(place);
  maker.gymnasts(gymnasts).part("Beams").drill("Walk", reps(1, 1));
  maker.last_drill().at = {at, {}};
  const plan::Session session = maker.session();
  const Waves out = waves(session, club, std::get<plan::Drill>(session.parts[0].steps[0]));
  return std::to_string(out.count) + "/" + std::to_string(out.gymnasts) + "/" +
         std::to_string(out.places);
}

}  // namespace

TEST_CASE("waves: the group through the places of a station, rounded up") {
  using plan::Place;
  CHECK(turns(Place::kGym, "beam", 8) == "3/8/3");
  CHECK(turns(Place::kGym, "Beams", 9) == "3/9/3");
  CHECK(turns(Place::kGym, "beam", 10) == "4/10/3");
  CHECK(turns(Place::kGym, "beam", 3) == "1/0/0");
  CHECK(turns(Place::kGym, "floor strip", 9) == "2/9/8");
  CHECK(turns(Place::kGym, "wall", 30) == "1/0/0");    // takes as many as come
  CHECK(turns(Place::kGym, "corner", 30) == "1/0/0");  // no station of the hall
  CHECK(turns(Place::kGym, "", 30) == "1/0/0");
  CHECK(turns(Place::kHome, "beam", 8) == "1/0/0");
}

TEST_CASE("waves: with little rest the sets follow one another") {
  // 3 × 3 × 20 s = 180 s, of which 60 s are one gymnast's work; her rest of 30 s is less than the
  // 40 s she waits for the other two waves.
  Dose dose = hold(3, s(20));
  dose.rest = s(30);
  CHECK(summed_waves(dose, {3, 9, 3}) == "1 min + 2 min = 3 sets × 3 waves of 3 gymnasts × 20 s");
  CHECK(summed_waves(dose, {3, 8, 3}) ==
        "1 min + 2 min = 3 sets × 3 waves of up to 3 gymnasts × 20 s");
  CHECK(summed_waves(hold(1, s(20)), {2, 2, 1}) == "20 s + 20 s = 2 waves of 1 gymnast × 20 s");
}

TEST_CASE("waves: a long rest is only waited for as far as the others do not fill it") {
  // A set begins every 20 s + 1 min = 80 s, since 2 waves take 40 s: 2 × 80 s + 40 s = 200 s.
  Dose dose = hold(3, s(20));
  dose.rest = s(60);
  CHECK(summed_waves(dose, {2, 6, 3}) ==
        "1 min + 2 min 20 s = 3 sets: 2 × (20 s + 1 min rest) + 2 waves of 3 gymnasts × 20 s");
}

TEST_CASE("waves: one set's rest stands between its sides for each wave, or behind all") {
  Dose dose = hold(1, s(20));
  dose.rest = s(10);
  // 2 × 20 s + 10 s
  CHECK(summed_waves(dose, {2, 6, 3}) ==
        "20 s + 30 s = 2 waves of 3 gymnasts × 20 s + 10 s rest after it");
  dose.sides = plan::Sides::kEachSide;
  // Both waves do one side, then the other: 2 × 2 × 20 s.
  CHECK(summed_waves(dose, {2, 6, 3}) == "40 s + 40 s = 2 sides × 2 waves of 3 gymnasts × 20 s");
}

TEST_CASE("waves: an interval holds all waves, or becomes as long as they are") {
  Dose dose = hold(4, s(10));
  dose.every = s(60);
  CHECK(summed_waves(dose, {3, 9, 3}) ==
        "40 s + 3 min 20 s = 4 sets × 1 min (one every 1 min, of which 3 waves of 3 gymnasts × "
        "10 s)");
  dose.every = s(20);  // reported; the sum is what will really happen: 4 × 30 s
  CHECK(summed_waves(dose, {3, 9, 3}) ==
        "40 s + 1 min 20 s = 4 sets × 3 waves of 3 gymnasts × 10 s");
}

TEST_CASE("waves: more gymnasts never take less time") {
  for (const std::int64_t rest : {0, 5, 45}) {
    for (const bool interval : {false, true}) {
      Duration before;
      for (int gymnasts = 1; gymnasts <= 24; ++gymnasts) {
        Dose dose = hold(3, s(11));
        dose.rest = s(rest);
        if (interval) dose.every = s(30);
        const Waves turns{(gymnasts + 2) / 3, gymnasts, 3};
        const DrillTime time = dose_time(dose, {}, {}, turns);
        CHECK(time.work == s(33));
        CHECK(time.length() >= before);
        before = time.length();
      }
    }
  }
}

TEST_CASE("an interval too short for the waves is reported, with the station that makes them") {
  plan::Club club;
  club.stations = {station("beam", 3, 1)};
  SessionMaker maker = framed(SessionMaker().gymnasts(9).two_adults(), s(60), [](SessionMaker& m) {
    Dose dose = hold(3, s(20));
    dose.every = s(45);
    m.part("Beams").drill("Flamingo", dose);
    m.last_drill().at = m.words("beam");
  });
  CHECK(checked(maker, club) ==
        "s.md:6:1: error: a set is to start every 45 s, but 3 waves of 3 gymnasts take 1 min "
        "[bad-value]; write ‘every 1 min’ or more, or make the set shorter\n"
        "  beam: done in waves here\n");
  CHECK(checked(maker).empty());
}

TEST_CASE("a station that the hall does not have is named") {
  plan::Club club;
  club.stations = {station("beam", 3, 1)};
  const auto at = [&](const std::string& name) {
    return checked(framed(SessionMaker().gymnasts(9).two_adults(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Beams").drill("Flamingo", hold(1, s(20)));
                            m.last_drill().at = m.words(name);
                          }),
                   club);
  };
  const auto said = [](const char* written, const char* hint) {
    return fmt::format(
        "s.md:7:1: warning: the hall has no station ‘{}’, so nobody's turns there are timed "
        "[unknown-station]; {}\n",
        written, hint);
  };
  CHECK(at("baem") == said("baem", "did you mean `at: beam`?"));
  CHECK(at("the far Beam") == said("the far Beam", "did you mean `at: beam`?"));
  CHECK(at("the door") ==
        said("the door",
             "the hall has ‘beam’; write one of them, or add it to ‘hall:’ in club.yaml"));
  CHECK(at("Beams").empty());
  club.stations.clear();
  CHECK(at("the door").empty());
}
