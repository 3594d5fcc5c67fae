// Kit: listed, enough, replaced at home.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Place;

namespace {

plan::StockItem stock(const std::string& name, std::optional<int> count) {
  plan::StockItem out;
  out.name = {name, {}};
  if (count) out.count = plan::Sourced<int>{*count, {}};
  return out;
}

plan::Club club_with(std::vector<plan::StockItem> kit) {
  plan::Club club;
  club.kit = std::move(kit);
  return club;
}

void use(SessionMaker& maker, const std::string& kit, const std::string& how = "") {
  maker.last_drill().uses.push_back({maker.words(kit), {how, {}}});
}

/// A home plan with one drill that `fill` adds to.
template <class Fill>
std::string at_home(SessionMaker maker, Fill fill) {
  maker.safety("An adult stays in the room. Clear the floor.");
  return checked(framed(maker, s(60), [&](SessionMaker& m) {
    m.part("Play").drill("Slides", hold(1, s(20)));
    fill(m);
  }));
}

plan::Substitute substitute(const std::string& kit) {
  plan::Substitute out;
  out.kit = {kit, {}};
  out.name = {"Bear steps", {}};
  out.easier.push_back({"Slower", {}});
  return out;
}

}  // namespace

TEST_CASE("kit of a home plan stands in its equipment, or in every home") {
  const auto said = [](const std::string& kit) {
    return at_home(SessionMaker(Place::kHome).equipment("towel", "a bath towel, or a scarf"),
                   [&](SessionMaker& m) {
                     use(m, kit);
                     m.last_drill().substitutes.push_back(substitute(kit));
                   });
  };
  CHECK(said("towel").empty());
  CHECK(said("two bath towels").empty());
  CHECK(said("scarf").empty());
  CHECK(said("cushion or towel").empty());
  CHECK(said("the wall").empty());
  CHECK(said("cushion") ==
        "s.md:7:1: warning: ‘Slides’ uses ‘cushion’, which the plan's ‘equipment:’ does not list "
        "[unknown-kit]; add a line such as ‘cushion: …’ to ‘equipment:’, so that the family can "
        "look for it beforehand\n");
  CHECK(said("towle") ==
        "s.md:7:1: warning: ‘Slides’ uses ‘towle’, which the plan's ‘equipment:’ does not list "
        "[unknown-kit]; did you mean ‘towel’?\n");
}

TEST_CASE("kit of a gym plan stands in its equipment, the club's kit or its hall") {
  plan::Club club = club_with({stock("mats", 8)});
  club.stations = {station("beam", 3, 0)};
  const auto said = [&](const std::string& kit, const plan::Club& of) {
    return checked(framed(SessionMaker(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Play").drill("Slides", hold(1, s(20)));
                            use(m, kit);
                            m.drill("Hops", hold(1, s(20)));
                            use(m, kit);
                          }),
                   of);
  };
  CHECK(said("crash mat", club).empty());
  CHECK(said("low beams", club).empty());
  CHECK(said("hoop", plan::Club{}).empty());  // no list to be missing from
  CHECK(said("hoop", club) ==
        "s.md:6:1: warning: ‘Slides’ uses ‘hoop’, which the plan's ‘equipment:’ and the club's "
        "‘kit:’ do not list [unknown-kit]; add it to ‘equipment:’ of the plan or to ‘kit:’ in "
        "club.yaml, so that it is set out\n"
        "  hoop: used here too\n");
}

TEST_CASE("the club has enough for the group, or it is said by how much not") {
  const plan::Club club = club_with({stock("hoops", 12), stock("mats", 4), stock("chalk", {})});
  const auto said = [&](int gymnasts, const std::string& kit, const std::string& how) {
    return checked(framed(SessionMaker().gymnasts(gymnasts).two_adults(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Play").drill("Hoop jumps", hold(1, s(20)));
                            use(m, kit, how);
                          }),
                   club);
  };
  CHECK(said(6, "hoops", "two each").empty());
  CHECK(said(8, "hoop", "one between two").empty());
  CHECK(said(8, "hoops", "").empty());
  CHECK(said(40, "chalk", "one each").empty());
  CHECK(said(7, "hoops", "two each") ==
        "s.md:7:1: warning: ‘Hoop jumps’ needs 14 of ‘hoops’ for 7 gymnasts, and the club has 12 "
        "[not-enough-kit]; let them share or take turns (‘one between two’), use other kit, or "
        "correct the number in club.yaml\n"
        "  gymnasts: 7: 7 gymnasts\n");
  CHECK(said(9, "mat", "one between two") ==
        "s.md:7:1: warning: ‘Hoop jumps’ needs 5 of ‘mats’ for 9 gymnasts, and the club has 4 "
        "[not-enough-kit]; let them share or take turns (‘one between two’), use other kit, or "
        "correct the number in club.yaml\n"
        "  gymnasts: 9: 9 gymnasts\n");
}

TEST_CASE("only those who are at it at one time need kit: waves, stations of a circuit") {
  plan::Club club = club_with({stock("hoops", 4)});
  club.stations = {station("beam", 3, 1)};
  const SessionMaker in_waves =
      framed(SessionMaker().gymnasts(9).two_adults(), s(60), [](SessionMaker& m) {
        m.part("Beams").drill("Hoop walk", hold(1, s(20)));
        m.last_drill().at = {"beam", {}};
        use(m, "hoop", "one each");
      });
  CHECK(checked(in_waves, club).empty());
  const SessionMaker in_stations =
      framed(SessionMaker().gymnasts(9).two_adults(), s(60), [](SessionMaker& m) {
        m.part("Strong").drill("Circle");
        m.last_drill().circuit = plan::Circuit{};
        m.last_drill().circuit->work = s(30);
        m.station("Hoop jumps").station("Plank").station("Rest");
        plan::KitUse hoop{m.words("hoop"), {"one each", {}}};
        m.last_drill().stations.front().uses.push_back(hoop);
      });
  CHECK(checked(in_stations, club).empty());
}

TEST_CASE("kit that is fetched for the group is counted too") {
  const plan::Club club = club_with({stock("hoops", 12)});
  const auto said = [&](plan::KitMove::Way way) {
    return checked(framed(SessionMaker().gymnasts(8).two_adults(), s(60),
                          [&](SessionMaker& m) {
                            m.part("Play").kit_move(way, "hoops", "two each");
                            m.drill("Tag", hold(1, s(60)));
                          }),
                   club);
  };
  CHECK(said(plan::KitMove::Way::kPickUp) ==
        "s.md:6:1: warning: this line needs 16 of ‘hoops’ for 8 gymnasts, and the club has 12 "
        "[not-enough-kit]; let them share or take turns (‘one between two’), use other kit, or "
        "correct the number in club.yaml\n"
        "  gymnasts: 8: 8 gymnasts\n");
  CHECK(said(plan::KitMove::Way::kPutAway).empty());
}

TEST_CASE("a home may lack the kit, so something stands in for it") {
  const auto said = [](const std::string& kit, const std::string& how, const std::string& easier) {
    return at_home(SessionMaker(Place::kHome).equipment("towel").equipment("chair"),
                   [&](SessionMaker& m) {
                     use(m, kit, how);
                     if (!easier.empty()) m.last_drill().easier.push_back(m.words(easier));
                   });
  };
  CHECK(said("towel", "", "") ==
        "s.md:7:1: warning: ‘Slides’ uses ‘towel’, and nothing stands in for it in a home without "
        "[no-substitute-at-home]; add a line below it such as ‘- without towel: …’, with an easier "
        "option of its own\n");
  CHECK(said("chair", "", "").empty());
  CHECK(said("towel", "if you have one", "").empty());
  CHECK(said("towel", "", "No towel, hands pressed together").empty());
  CHECK_FALSE(said("towel", "", "No hands").empty());
  CHECK(at_home(SessionMaker(Place::kHome).equipment("towel"), [](SessionMaker& m) {
          use(m, "towel");
          m.last_drill().substitutes.push_back(substitute("towel"));
        }).empty());
}
