// What comes when, and for how long.
#include <catch2/catch.hpp>

#include "reason/line_times.h"
#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;
using plan::PartRole;

namespace {

LibraryDrill loaded(const std::string& name, DrillKind kind, const std::string& region, int load) {
  LibraryDrill out = known(name, kind);
  out.loads.emplace_back(plan::Words{region, {}}, plan::Sourced<int>{load, {}});
  return out;
}

std::vector<LibraryDrill> order_book() {
  LibraryDrill sprints = known("Sprints", DrillKind::kRaise);
  sprints.effort = plan::Sourced<int>{8, {}};
  LibraryDrill spring = known("Handspring", DrillKind::kSkill);
  spring.level = plan::Sourced<int>{7, {}};
  LibraryDrill wheel = known("Cartwheel", DrillKind::kSkill);
  wheel.level = plan::Sourced<int>{3, {}};
  LibraryDrill dish = known("Seat shape", DrillKind::kShape);
  dish.longest = plan::Sourced<Duration>{s(20), {}};
  return {known("Jog", DrillKind::kRaise),
          known("Arm circles", DrillKind::kMobilise),
          known("Sway", DrillKind::kMobilise),
          known("Squats", DrillKind::kStrength),
          known("Walk", DrillKind::kRest),
          loaded("Tuck jump", DrillKind::kJump, "knees", 2),
          loaded("Frog hop", DrillKind::kJump, "ankles", 1),
          sprints,
          spring,
          wheel,
          dish};
}

template <class Fill>
std::string ordered(Fill fill) {
  SessionMaker maker;
  maker.part("Warm-up", PartRole::kWarmUp);
  fill(maker);
  maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", hold(1, s(60)));
  return checked(maker, {}, order_book());
}

std::string held_by(std::optional<int> age, const Dose& dose) {
  SessionMaker maker;
  if (age) maker.group(group("Wrens", *age, 6)).adults(2);
  return checked(
      framed(maker, s(60), [&](SessionMaker& m) { m.part("Shapes").drill("Seat shape", dose); }),
      {}, order_book());
}

}  // namespace

// Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise, activate, mobilise, and
// only then potentiate.
TEST_CASE("power waits for half a minute that raises the pulse") {
  const auto after = [](Duration jog) {
    return ordered([&](SessionMaker& m) {
      m.drill("Jog", hold(1, jog)).drill("Arm circles", reps(1, 10));
      m.drill("Tuck jump", reps(1, 8));
    });
  };
  CHECK(after(s(3)) ==
        "s.md:5:1: warning: ‘Tuck jump’ needs full power, and only 3 s before it may have raised "
        "the pulse [power-before-raise]; put two or three minutes of running, skipping or a "
        "running game before it\n");
  CHECK_FALSE(after(s(29)).empty());
  CHECK(after(s(30)).empty());
}

TEST_CASE("a small bounce is no power, and unknown words may have raised the pulse") {
  CHECK(ordered([](SessionMaker& m) { m.drill("Frog hop", reps(1, 8)); }).empty());
  CHECK(ordered([](SessionMaker& m) {
          m.note("Run two rounds.").drill("Tuck jump", reps(1, 8));
        }).empty());
  CHECK(ordered([](SessionMaker& m) {
          m.budget(min(5)).part("Jumps").drill("Tuck jump", reps(1, 8));
        }).empty());
}

TEST_CASE("a hard skill does not come straight behind very hard work") {
  const auto behind = [](Duration work, Duration between, const std::string& skill) {
    return ordered([&](SessionMaker& m) {
      m.drill("Jog", hold(1, min(3))).part("Work").drill("Sprints", hold(1, work));
      m.drill("Arm circles", hold(1, between)).part("Floor").drill(skill, reps(1, 4));
    });
  };
  CHECK(behind(min(5), s(30), "Handspring") ==
        "s.md:8:1: warning: ‘Handspring’ comes straight behind 5 min of very hard work "
        "[skill-when-tired]; put ‘Handspring’ before that work, or ten easy minutes between them\n"
        "  Sprints: 5 min\n");
  CHECK(behind(min(4), s(30), "Handspring").empty());
  CHECK(behind(min(5), min(10), "Handspring").empty());
  CHECK(behind(min(5), s(30), "Cartwheel").empty());
}

TEST_CASE("work in the warm-up makes nobody tired") {
  CHECK(ordered([](SessionMaker& m) {
          m.drill("Sprints", hold(1, min(6))).part("Floor").drill("Handspring", reps(1, 4));
        }).empty());
}

// Common practice, no source: shape holds of 15-20 s, longer with age.
TEST_CASE("a hold is as long as the age allows") {
  CHECK(held_by(6, hold(1, s(20))).empty());
  CHECK(held_by(6, hold(1, s(21))) ==
        "s.md:7:1: warning: ‘Seat shape’ is held for 21 s, longer than children of 6 keep it in "
        "good form (20 s) [hold-too-long]; hold it for 20 s at most, rest as long, and repeat\n");
  CHECK(held_by(7, hold(1, s(30))).empty());
  CHECK_FALSE(held_by(11, hold(1, s(31))).empty());
  CHECK(held_by(12, hold(1, s(40))).empty());
  CHECK_FALSE(held_by(12, hold(1, s(41))).empty());
  CHECK(held_by({}, hold(1, s(60))).empty());
  CHECK(held_by({}, hold(1, s(61))).find("most children") != std::string::npos);
}

TEST_CASE("ten minutes of a shape are a place in the lesson and no hold") {
  CHECK(held_by(6, hold(1, min(2))).empty());
  Dose held = hold(1, min(2));
  held.amount.held = true;
  CHECK_FALSE(held_by(6, held).empty());
}

TEST_CASE("line times: a station stands in its circuit, with the work of all rounds") {
  SessionMaker maker;
  maker.part("Floor").drill("Jog", hold(1, s(60))).drill("Circuit");
  plan::Circuit circuit;
  circuit.rounds = 2;
  circuit.work = s(30);
  circuit.rest = s(10);
  maker.last_drill().circuit = circuit;
  maker.station("Squats").station("Star");
  const plan::Session session = maker.session();
  const Timetable times = timetable(session, {});
  const LineTimes lines(times);
  const auto& whole = std::get<plan::Drill>(session.parts[0].steps[1]);
  CHECK(lines.of(whole).begin == s(75));
  CHECK(lines.of(whole.stations[1]).begin == s(75 + 40));
  CHECK(lines.of(whole.stations[1]).work == s(60));
  CHECK(lines.raising(plan::Drill{}) == min(10));
}

TEST_CASE("a way to go is as long as nobody knows, and a row of things is what moves in it") {
  CHECK(ordered([](SessionMaker& m) {
          m.drill("Jog", reps(1, 2)).drill("Tuck jump", reps(1, 8));
        }).empty());
  CHECK(ordered([](SessionMaker& m) {
          m.drill("Walk, jog, skips", hold(1, min(5))).drill("Tuck jump", reps(1, 8));
        }).empty());
}
