// What a body should not be asked for.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;
using plan::PartRole;
using plan::Sides;

namespace {

LibraryDrill stretch(const std::string& name, const std::string& muscle) {
  LibraryDrill out = known(name, DrillKind::kStretch);
  out.stretches = {{muscle, {}}};
  return out;
}

std::vector<LibraryDrill> book() {
  return {known("Jog", DrillKind::kRaise),        known("Arm circles", DrillKind::kMobilise),
          known("Sway", DrillKind::kMobilise),    known("Jump", DrillKind::kJump),
          stretch("Pike fold", "hamstrings"),     stretch("Straddle reach", "hamstrings"),
          stretch("Kneeling reach", "shoulders"), known("Tag", DrillKind::kGame)};
}

Dose each_leg(Dose dose) {
  dose.sides = Sides::kEachLeg;
  return dose;
}

/// A session whose warm-up `fill` writes, and a main part with a jump.
template <class Fill>
std::string warmed_up(Fill fill, const plan::Club& club = {},
                      std::vector<LibraryDrill> drills = book()) {
  SessionMaker maker;
  maker.part("Warm-up", PartRole::kWarmUp);
  fill(maker);
  maker.part("Jumps").drill("Jump", reps(1, 5));
  maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", hold(1, s(60)));
  return checked(maker, club, std::move(drills));
}

}  // namespace

// Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise, then activate and mobilise.
TEST_CASE("a held stretch before anything has raised the pulse") {
  CHECK(warmed_up([](SessionMaker& m) {
          m.drill("Arm circles", reps(1, 10)).drill("Pike fold", hold(1, s(20)));
          m.drill("Kneeling reach", hold(1, s(20))).drill("Jog", hold(1, s(120)));
        }) ==
        "s.md:4:1: error: ‘Pike fold’ is held still before anything has raised the pulse "
        "[stretch-before-raise]; put two or three minutes of running, skipping or jumping before "
        "it, or move it to the cool-down\n"
        "  Kneeling reach: and this one\n");
  CHECK(warmed_up([](SessionMaker& m) {
          m.drill("Jog", hold(1, s(120))).drill("Pike fold", hold(1, s(20)));
        }).empty());
}

TEST_CASE("what may have raised the pulse is given the benefit of the doubt") {
  const auto after = [](auto before) {
    return warmed_up([&](SessionMaker& m) {
      before(m);
      m.drill("Pike fold", hold(1, s(20))).drill("Jog", hold(1, s(60)));
    });
  };
  CHECK(after([](SessionMaker& m) { m.drill("Tag", hold(1, s(60))); }).empty());
  CHECK(after([](SessionMaker& m) { m.note("Run two rounds of the hall."); }).empty());
  // Nobody knows the drill: it may be a run.
  CHECK(after([](SessionMaker& m) {
          m.drill("Galloping geese", hold(1, s(60)));
        }).find("stretch-before-raise") == std::string::npos);
  CHECK(after([](SessionMaker& m) {
          m.drill("Welcome and register", hold(1, s(60)));
        }).find("stretch-before-raise") != std::string::npos);
  // Shorter than a stretch is held: a position on the way.
  CHECK(warmed_up([](SessionMaker& m) {
          m.drill("Pike fold", hold(1, s(9))).drill("Jog", hold(1, s(60)));
        }).empty());
}

TEST_CASE("without a library only what is plainly a held stretch counts") {
  const auto cold = [](const std::string& name, const Dose& dose) {
    return warmed_up([&](SessionMaker& m) { m.drill(name, dose).drill("Jog", hold(1, s(60))); }, {},
                     {});
  };
  CHECK(cold("Calf stretch", hold(1, s(20))) ==
        "s.md:3:1: error: ‘Calf stretch’ is held still before anything has raised the pulse "
        "[stretch-before-raise]; put two or three minutes of running, skipping or jumping before "
        "it, or move it to the cool-down\n");
  CHECK_FALSE(cold("Lion stretch, on the mat", each_leg(hold(1, s(20)))).empty());
  CHECK(cold("Stretch jump", hold(2, s(20))).empty());
  CHECK(cold("Stretch like a cat", hold(1, s(20))).empty());
  CHECK(cold("Team stretch", hold(1, s(180))).empty());
  CHECK(cold("Dynamic calf stretch", hold(1, s(20))).empty());
  CHECK(cold("Calf stretch", reps(1, 10)).empty());
}

// ACSM's Guidelines for Exercise Testing and Prescription, 11th ed., table 5.6: 10-30 s.
TEST_CASE("one hold is 30 s at most, or what the club says") {
  const auto held = [](const Dose& dose, const plan::Club& club = {}) {
    return warmed_up([&](SessionMaker& m) { m.drill("Jog", hold(1, s(60))); }, club).empty()
               ? checked(
                     framed(SessionMaker(), s(60),
                            [&](SessionMaker& m) { m.part("Stretch").drill("Pike fold", dose); }),
                     club, book())
               : "";
  };
  CHECK(held(hold(2, s(30))).empty());
  CHECK(held(hold(2, s(31))) ==
        "s.md:5:1: warning: ‘Pike fold’ is held for 31 s at a time, longer than 30 s "
        "[stretch-too-long]; hold it for 30 s at most, and repeat it if it needs more\n");
  plan::Club club;
  club.limits.longest_stretch = plan::Sourced<Duration>{s(45), {}};
  CHECK(held(hold(2, s(45)), club).empty());
  CHECK_FALSE(held(hold(2, s(46)), club).empty());
}

// Behm et al. 2016, Appl Physiol Nutr Metab 41:1-11: 60 s or more of one muscle group before power.
TEST_CASE("a muscle group is stretched for less than 60 s before power work") {
  const auto sum = [](std::int64_t first, std::int64_t second, const std::string& name,
                      const plan::Club& club = {}) {
    return warmed_up(
        [&](SessionMaker& m) {
          m.drill("Jog", hold(1, s(60))).drill("Pike fold", each_leg(hold(2, s(first))));
          m.drill(name, hold(1, s(second)));
        },
        club);
  };
  CHECK(sum(20, 19, "Straddle reach").empty());  // 40 s + 19 s, on each leg
  CHECK(sum(20, 30, "Kneeling reach").empty());  // another muscle
  CHECK(sum(20, 20, "Straddle reach") ==
        "s.md:4:1: warning: stretches of the hamstrings add up to 1 min before ‘Jump’, which makes "
        "them weaker for it [stretch-too-long]; stay below 1 min for one muscle group, or stretch "
        "after it\n"
        "  Pike fold: 40 s\n"
        "  Straddle reach: 20 s\n"
        "  Jump: this needs speed and force\n");
  plan::Club club;
  club.limits.stretch_before_power = plan::Sourced<Duration>{s(90), {}};
  CHECK(sum(20, 20, "Straddle reach", club).empty());
}

TEST_CASE("stretches after the power work are nobody's business") {
  CHECK(checked(framed(SessionMaker(), s(60),
                       [](SessionMaker& m) {
                         m.part("Jumps").drill("Jump", reps(1, 5));
                         m.part("Splits").drill("Pike fold", hold(4, s(30)));
                       }),
                {}, book())
            .empty());
}

TEST_CASE("a one-sided drill says that both sides have their turn") {
  LibraryDrill passe = known("Passé balance", DrillKind::kBalance);
  passe.one_sided = plan::Sourced<bool>{true, {}};
  const auto said = [&](const Dose& dose, const std::string& name = "Passé balance",
                        const std::string& note = "") {
    std::vector<LibraryDrill> drills = book();
    drills.push_back(passe);
    return checked(framed(SessionMaker(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Beam").drill(name, dose);
                            plan::Note below;
                            below.words = m.words(note.empty() ? "-" : note);
                            m.last_drill().notes.push_back(below);
                          }),
                   {}, std::move(drills));
  };
  CHECK(said(hold(3, s(10))) ==
        "s.md:5:1: warning: ‘Passé balance’ works one side at a time, and its dose does not say "
        "that both have their turn [one-side-only]; write ‘each side’, ‘each leg’ or ‘each arm’ "
        "behind the amount\n");
  CHECK(said(each_leg(hold(3, s(10)))).empty());
  CHECK(said(hold(3, s(10)), "Passé balance, left").empty());
  CHECK(said(hold(3, s(10)), "Passé balance", "Swap legs at the bell").empty());
  CHECK(said(a_dose(AmountKind::kLengths, 2)).empty());  // there and back
  CHECK_FALSE(said(a_dose(AmountKind::kLengths, 1)).empty());
}

TEST_CASE("a dish wants an arch, and the other way round") {
  const auto curved = [](const std::string& name, const std::string& curve) {
    LibraryDrill out = known(name, DrillKind::kShape);
    out.curve = {curve, {}};
    return out;
  };
  const auto said = [&](const std::vector<std::string>& names, bool with_arch = true) {
    std::vector<LibraryDrill> drills = book();
    drills.push_back(curved("Dish hold", "dish"));
    drills.push_back(curved("Tuck-ups", "dish"));
    if (with_arch) drills.push_back(curved("Arch lifts", "arch"));
    drills.push_back(known("Plank", DrillKind::kShape));
    drills.push_back(known("Superman", DrillKind::kShape));
    return checked(framed(SessionMaker(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Shapes");
                            for (const std::string& name : names) m.drill(name, hold(1, s(20)));
                          }),
                   {}, std::move(drills));
  };
  CHECK(said({"Plank"}).empty());
  CHECK(said({"Dish hold", "Arch lifts"}).empty());
  CHECK(said({"Dish hold", "Superman"}).empty());  // an arch by its name
  CHECK(said({"Dish hold", "Tuck-ups"}) ==
        "s.md:5:1: note: ‘Dish hold’ bends the body into a dish, and nothing in this session "
        "into an arch [unpaired-shape]; add an arch, such as ‘Arch lifts’, so that front and back "
        "grow strong together\n"
        "  Tuck-ups: a dish too\n");
  CHECK(said({"Arch lifts"}) ==
        "s.md:5:1: note: ‘Arch lifts’ bends the body into an arch, and nothing in this session "
        "into a dish [unpaired-shape]; add a dish, such as ‘Dish hold’, so that front and back "
        "grow strong together\n");
  CHECK(said({"Dish hold"}, false).find("such as ‘Arch hold’") != std::string::npos);
}
