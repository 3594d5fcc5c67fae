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

// Kay & Blazevich 2012, Med Sci Sports Exerc 44(1):154-164: below 30 s -1.1 %, 30 to 45 s -1.9 %, a
// loss that matters is likely from 60 s on. So one stretch of 45 s, split in holds, is nothing to
// warn of.
TEST_CASE("45 s of a stretch before power are fine, 60 s are not") {
  const auto before_jump = [](std::int64_t sets, Duration time) {
    plan::Club club;
    club.limits.longest_stretch = plan::Sourced<Duration>{s(60), {}};
    return warmed_up(
        [&](SessionMaker& m) {
          m.drill("Jog", hold(1, s(60))).drill("Pike fold", hold(sets, time));
        },
        club);
  };
  CHECK(before_jump(1, s(29)).empty());
  CHECK(before_jump(1, s(45)).empty());
  CHECK(before_jump(3, s(15)).empty());
  CHECK(before_jump(1, s(60)).find("add up to 1 min before") != std::string::npos);
  CHECK(before_jump(3, s(20)).find("add up to 1 min before") != std::string::npos);
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
        "s.md:5:1: note: ‘Passé balance’ works one side at a time, and its dose does not say "
        "that both have their turn [one-side-only]; write ‘each side’, ‘each leg’ or ‘each arm’ "
        "behind the amount\n");
  CHECK(said(each_leg(hold(3, s(10)))).empty());
  CHECK(said(hold(3, s(10)), "Passé balance, left").empty());
  CHECK(said(hold(3, s(10)), "Passé balance", "Swap legs at the bell").empty());
  CHECK(said(a_dose(AmountKind::kLengths, 2)).empty());  // there and back
  CHECK_FALSE(said(a_dose(AmountKind::kLengths, 1)).empty());
}

TEST_CASE("a jog of a few seconds has raised nothing") {
  const auto jogged = [](Duration time) {
    return warmed_up(
        [&](SessionMaker& m) { m.drill("Jog", hold(1, time)).drill("Pike fold", hold(1, s(20))); });
  };
  CHECK(jogged(s(3)).find("stretch-before-raise") != std::string::npos);
  CHECK(jogged(s(14)).find("stretch-before-raise") != std::string::npos);
  CHECK(jogged(s(15)).empty());
}

// Behm et al. 2016, Appl Physiol Nutr Metab 41:1-11: measured within ten minutes.
TEST_CASE("ten minutes after a long stretch it does no more harm") {
  const auto after = [](Duration between) {
    return warmed_up([&](SessionMaker& m) {
      m.drill("Jog", hold(1, s(60))).drill("Pike fold", hold(3, s(20)));
      m.drill("Tag", hold(1, between));
    });
  };
  CHECK(after(min(9)).find("add up to 1 min before") != std::string::npos);
  CHECK(after(min(10)).empty());  // and the change-overs
}

TEST_CASE("in the cool-down those of twelve and over may hold a stretch for a minute") {
  const auto at_the_end = [](int youngest, Duration time) {
    SessionMaker maker;
    maker.group(group("Swifts", youngest, 8)).adults(2);
    maker.part("Warm-up", PartRole::kWarmUp).drill("Jog", hold(1, s(60)));
    maker.part("Cool-down", PartRole::kCoolDown).drill("Pike fold", hold(1, time));
    return checked(maker, {}, book());
  };
  CHECK(at_the_end(12, s(45)).empty());
  CHECK(at_the_end(12, s(60)).empty());
  CHECK(at_the_end(12, s(61)).find("longer than 1 min") != std::string::npos);
  CHECK(at_the_end(11, s(45)).find("longer than 30 s") != std::string::npos);
}
