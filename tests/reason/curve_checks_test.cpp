// Front and back of the body.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;

namespace {

LibraryDrill of_curve(const std::string& name, const std::string& curve) {
  LibraryDrill out = known(name, DrillKind::kShape);
  out.curve = {curve, {}};
  return out;
}
LibraryDrill that_trains(const std::string& name, const std::string& what) {
  LibraryDrill out = known(name, DrillKind::kStrength);
  out.trains = {{what, {}}};
  return out;
}

std::string said_of(const std::vector<std::string>& names, bool with_arch = true) {
  std::vector<LibraryDrill> drills{known("Jog", DrillKind::kRaise),
                                   known("Sway", DrillKind::kMobilise),
                                   of_curve("Dish hold", "dish"),
                                   of_curve("Tuck-ups", "dish"),
                                   that_trains("Lion lifts", "back thighs"),
                                   that_trains("Bear lifts", "trunk"),
                                   known("Star hold", DrillKind::kShape),
                                   known("Superman", DrillKind::kShape),
                                   known("Hip bridge", DrillKind::kStrength)};
  if (with_arch) {
    drills.push_back(of_curve("Arch lifts", "arch"));
    drills.push_back(of_curve("Swimmers", "arch"));
  }
  return checked(framed(SessionMaker(), s(60),
                        [&](SessionMaker& m) {
                          m.part("Shapes");
                          for (const std::string& name : names) m.drill(name, hold(1, s(20)));
                        }),
                 {}, std::move(drills));
}

}  // namespace

TEST_CASE("several dishes want something for the back, and the other way round") {
  CHECK(said_of({"Dish hold", "Tuck-ups"}) ==
        "s.md:5:1: note: 2 lines bend the body into a dish, and nothing in this session loads the "
        "back of the body [unpaired-shape]; add an arch, such as ‘Arch lifts’, so that front and "
        "back grow strong together\n"
        "  Tuck-ups: a dish too\n");
  CHECK(said_of({"Arch lifts", "Swimmers"}) ==
        "s.md:5:1: note: 2 lines bend the body into an arch, and nothing in this session loads the "
        "front of the body [unpaired-shape]; add a dish, such as ‘Dish hold’, so that front and "
        "back grow strong together\n"
        "  Swimmers: an arch too\n");
  CHECK(said_of({"Dish hold", "Tuck-ups"}, false).find("such as ‘Arch hold’") != std::string::npos);
}

TEST_CASE("one shape is no lopsided plan") {
  CHECK(said_of({"Star hold"}).empty());
  CHECK(said_of({"Dish hold"}).empty());
  CHECK(said_of({"Arch lifts"}).empty());
}

TEST_CASE("any drill for the other side balances them: by its shape, what it trains, its name") {
  CHECK(said_of({"Dish hold", "Tuck-ups", "Arch lifts"}).empty());
  CHECK(said_of({"Dish hold", "Tuck-ups", "Lion lifts"}).empty());
  CHECK(said_of({"Dish hold", "Tuck-ups", "Superman"}).empty());
  CHECK(said_of({"Dish hold", "Tuck-ups", "Hip bridge"}).empty());
  CHECK_FALSE(said_of({"Dish hold", "Tuck-ups", "Bear lifts"}).empty());
  CHECK(said_of({"Arch lifts", "Swimmers", "Bear lifts"}).empty());
}
