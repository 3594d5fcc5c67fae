// Adults, water, pictures.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::PartRole;
using plan::Place;

namespace {

SessionMaker with_adults(const plan::Group& group, std::optional<int> adults) {
  SessionMaker maker;
  maker.group(group);
  if (adults) maker.adults(*adults);
  return framed(maker, s(60), [](SessionMaker&) {});
}

// The smallest number of adults that is not reported.
int needed(int age, int size) {
  int adults = 1;
  while (!checked(with_adults(group("Wrens", age, size), adults)).empty()) ++adults;
  return adults;
}

}  // namespace

// NSPCC, recommended adult to child ratios: 4-8 1:6, 9-12 1:8, 13-18 1:10, always two adults. The
// three worked examples are those of reference-values.md, section 5 (calc).
TEST_CASE("adults: the worked examples of the published ratios") {
  CHECK(needed(6, 14) == 3);
  CHECK(needed(10, 17) == 3);
  CHECK(needed(14, 5) == 2);
}

// The same guidance for the youngest, 2-3 1:4 and 0-2 1:3: value from memory.
TEST_CASE("adults: under-fours need more of them") {
  CHECK(needed(3, 8) == 2);
  CHECK(needed(3, 9) == 3);
  CHECK(needed(2, 9) == 3);
  CHECK(needed(1, 9) == 3);
  CHECK(needed(1, 10) == 4);
}

TEST_CASE("adults: where parents take part, nobody counts coaches by the youngest") {
  SessionMaker maker;
  maker.group(group("Ducklings", 2, 12)).adults(2);
  CHECK(checked(framed(maker, s(60), [](SessionMaker& m) {
          m.part("Play").note("Each child with a parent.").drill("Jog", hold(1, s(60)));
        })).empty());
}

TEST_CASE("adults: a helper under eighteen is none") {
  plan::Club club;
  const auto member = [](const std::string& name, const std::string& qualification) {
    plan::StaffMember out;
    out.name = {name, {}};
    out.qualification = {qualification, {}};
    out.groups = {{"Wrens", {}}};
    return out;
  };
  const auto enough = [&](const std::string& name, const std::string& qualification) {
    club.staff = {member("Lead coach", "Level 2"), member(name, qualification)};
    return checked(with_adults(group("Wrens", 6, 10), {}), club).empty();
  };
  CHECK(enough("Second coach", "Level 1, since 2019"));
  CHECK(enough("Assistant", "18 years with the club"));
  CHECK_FALSE(enough("Young leader", ""));
  CHECK_FALSE(enough("Helper, aged 16", ""));
  CHECK_FALSE(enough("Helper", "15 years old"));
  CHECK_FALSE(enough("Junior helper", ""));
}

TEST_CASE("adults: who counts the children is asked for the adults") {
  const auto said = [](const std::string& words, const plan::Club& club = {}) {
    SessionMaker maker;
    maker.gymnasts(14);
    return checked(
        framed(maker, s(60),
               [&](SessionMaker& m) { m.part("Play").note(words).drill("Jog", hold(1, s(60))); }),
        club);
  };
  CHECK(said("Off we go.") ==
        "s.md:2:1: note: 14 gymnasts come, and nothing says how many adults are with them "
        "[no-adults-stated]; write ‘adults: 2’ here, and only those of 18 and over\n");
  CHECK(said("Two coaches are with them.").empty());
  CHECK(said("A helper at each beam.").empty());
  plan::Club club;
  club.staff.emplace_back();
  SessionMaker of_a_group;  // its size is the club's, and no plan's own
  of_a_group.group(group("Wrens", 6, 14));
  CHECK(checked(framed(of_a_group, s(60), [](SessionMaker&) {})).empty());
  CHECK(said("Off we go.", club).find("warning: 14 gymnasts") != std::string::npos);
}

TEST_CASE("adults: the edges of the ratios") {
  CHECK(needed(4, 12) == 2);
  CHECK(needed(4, 13) == 3);
  CHECK(needed(8, 13) == 3);
  CHECK(needed(9, 16) == 2);
  CHECK(needed(12, 17) == 3);
  CHECK(needed(13, 20) == 2);
  CHECK(needed(13, 21) == 3);
  CHECK(needed(17, 1) == 2);
  CHECK(needed(18, 100) == 1);  // adults themselves
}

TEST_CASE("adults: too few for the group, and too few for any") {
  CHECK(checked(with_adults(group("Wrens", 6, 14), 2)) ==
        "s.md:3:1: error: 14 gymnasts, the youngest 6 years old, need 3 adults (one for 6), and "
        "there are 2 [too-few-adults]; when more come, write ‘adults: 3’; or take at most 12 "
        "gymnasts\n");
  CHECK(checked(with_adults(group("Wrens", 6, 5), 1)) ==
        "s.md:3:1: error: any group needs 2 adults, and there is 1 [too-few-adults]; when more "
        "come, write ‘adults: 2’\n");
}

TEST_CASE("adults: those of the plan, else the group's, else the staff who name it; or unknown") {
  plan::Club club;
  plan::Group wrens = group("Wrens", 6, 14);
  CHECK(checked(with_adults(wrens, {}), club).empty());
  plan::StaffMember coach;
  coach.name = {"Lead coach", {}};
  coach.groups = {{"Kestrels", {}}, {"wrens", {}}};
  club.staff = {coach, coach};
  club.staff.back().groups = {{"Kestrels", {}}};
  CHECK(checked(with_adults(wrens, {}), club).find("and there is 1 ") != std::string::npos);
  CHECK(checked(with_adults(wrens, 3), club).empty());
  wrens.adults = plan::Sourced<int>{3, {}};
  CHECK(checked(with_adults(wrens, {}), club).empty());
}

TEST_CASE("adults: a club may want more than two, and fewer gymnasts may come") {
  plan::Club club;
  club.limits.fewest_adults = plan::Sourced<int>{3, {}};
  CHECK(checked(with_adults(group("Swifts", 13, 5), 2), club) ==
        "s.md:3:1: error: any group needs 3 adults, and there are 2 [too-few-adults]; when more "
        "come, write ‘adults: 3’\n");
  SessionMaker few;
  few.group(group("Wrens", 6, 14)).gymnasts(12).adults(2);
  CHECK(checked(framed(few, s(60), [](SessionMaker&) {})).empty());
}

namespace {

/// 30 min, what `fill` adds, 35 min.
template <class Fill>
std::string long_session(Fill fill, const plan::Club& club = {}) {
  SessionMaker maker;
  maker.part("Warm-up", PartRole::kWarmUp).drill("Run", hold(1, min(30)));
  fill(maker);
  maker.part("Cool-down", PartRole::kCoolDown).drill("Swing", hold(1, min(35)));
  return checked(maker, club);
}

}  // namespace

// Water at least every hour is common practice, no source.
TEST_CASE("water: a session of more than an hour has a break for it") {
  CHECK(long_session([](SessionMaker&) {}) ==
        "s.md:1:1: error: this session takes 1 h 5 min 15 s and has no water break "
        "[no-water-break]; add a line such as ‘- Water: 2 min’ before ‘Swing’\n"
        "  Swing: about the middle of that time\n");
  CHECK(long_session([](SessionMaker& m) { m.drill("Water", hold(1, min(2))); }).empty());
  CHECK(long_session([](SessionMaker& m) { m.note("A drink for everybody."); }).empty());
  CHECK(long_session([](SessionMaker& m) {
          Dose dose = hold(3, min(1));
          dose.remarks = {{"sip between sets", {}}};
          m.drill("Hang", dose);
        }).empty());
  CHECK(long_session([](SessionMaker& m) { m.part("Water break").budget(min(3)); }).empty());
  CHECK(long_session([](SessionMaker& m) {
          m.kit_move(plan::KitMove::Way::kPickUp, "water bottles", "");
        }).empty());
}

TEST_CASE("water: exactly an hour needs none; the club may set less") {
  SessionMaker hour;
  hour.part("Warm-up", PartRole::kWarmUp).drill("Run", hold(1, min(30) - s(15)));
  hour.part("Cool-down", PartRole::kCoolDown).drill("Swing", hold(1, min(30)));
  CHECK(checked(hour).empty());
  plan::Club club;
  club.limits.water_after = plan::Sourced<Duration>{min(50), {}};
  CHECK(checked(hour, club) ==
        "s.md:1:1: error: this session takes 1 h and has no water break [no-water-break]; add a "
        "line such as ‘- Water: 2 min’ before ‘Swing’\n"
        "  Swing: about the middle of that time\n");
}

// American Academy of Pediatrics 2011, Pediatrics 128(3):e741-e747: value from memory.
TEST_CASE("water: in the heat every twenty minutes, whatever the club allows") {
  const auto hot = [](std::optional<bool> heat, Duration run) {
    SessionMaker maker;
    if (heat) maker.raw().heat = plan::Sourced<bool>{*heat, {}};
    maker.part("Warm-up", PartRole::kWarmUp).drill("Run", hold(1, run));
    maker.part("Cool-down", PartRole::kCoolDown).drill("Swing", hold(1, min(5)));
    plan::Club club;
    club.limits.water_after = plan::Sourced<Duration>{min(50), {}};
    return checked(maker, club);
  };
  CHECK(hot({}, min(20)).empty());
  CHECK(hot(false, min(20)).empty());
  CHECK(hot(true, min(20)).find("takes 25 min 15 s and has no water break") != std::string::npos);
  CHECK(hot(true, min(15) - s(15)).empty());
}

TEST_CASE("water: one break in a long session is not enough, words for the whole of it are") {
  const auto early = [](SessionMaker maker) {
    maker.part("Warm-up", PartRole::kWarmUp).drill("Run", hold(1, min(10)));
    maker.drill("Water", hold(1, min(2))).drill("Hang", hold(1, min(35)));
    maker.drill("Swing", hold(1, min(35)));
    maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", hold(1, min(10)));
    return checked(maker);
  };
  CHECK(early(SessionMaker()) ==
        "s.md:1:1: error: 1 h 20 min 45 s pass in this session without a water break "
        "[no-water-break]; add a line such as ‘- Water: 2 min’ before ‘Swing’\n"
        "  Swing: about the middle of that time\n");
  CHECK(early(SessionMaker().note("Water whenever they ask.")).empty());
  CHECK(early(SessionMaker().safety("Bottles with water stand by the door.")).empty());
}

// WCAG 2.2, success criterion 1.1.1.
TEST_CASE("pictures: each says what it shows; the same one is told once") {
  const auto picture = [](const std::string& text) {
    plan::Note note;
    note.kind = plan::Note::Kind::kPicture;
    note.picture = "line.png";
    if (!text.empty()) note.words = {text, {}};
    return note;
  };
  const auto said = [&](const std::string& text) {
    return checked(framed(SessionMaker(), s(60), [&](SessionMaker& m) {
      m.part("Shapes").drill("Bear walk", hold(1, s(20)));
      m.last_drill().notes.push_back(picture(text));
      m.drill("Cat walk", hold(1, s(20)));
      m.last_drill().notes.push_back(picture(text));
    }));
  };
  CHECK(said("two children on a line").empty());
  for (const char* nothing : {"", " "}) {
    CHECK(said(nothing) ==
          "s.md:5:1: warning: this picture has no text for who cannot see it "
          "[picture-without-text]; say what it shows between the square brackets, as in ‘![a child "
          "in dish shape](dish.png)’\n"
          "  Cat walk: here too\n");
  }
}
