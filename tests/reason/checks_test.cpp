// The checks, as whole messages.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::PartRole;
using plan::Place;

namespace {

std::string with_dose(const Dose& dose) {
  return checked(
      framed(SessionMaker(), s(60), [&](SessionMaker& m) { m.part("Bars").drill("Dish", dose); }));
}

}  // namespace

TEST_CASE("a sound session has nothing to report") { CHECK(with_dose(hold(2, s(20))).empty()); }

TEST_CASE("a session without parts gets one message, not five") {
  CHECK(checked(SessionMaker(Place::kHome).slot(s(60))) ==
        "s.md:1:1: error: this session has no parts, so no warm-up and no cool-down "
        "[missing-warm-up]; write a heading for each part, such as ‘## Warm-up’, with its drills "
        "in a list below\n");
}

TEST_CASE("warm-up and cool-down must be there") {
  SessionMaker maker;
  maker.part("Beam").drill("Walk", reps(1, 10));
  CHECK(checked(maker) ==
        "s.md:1:1: warning: this session has no cool-down [missing-cool-down]; end it with a part "
        "under the heading ‘## Cool-down’\n"
        "s.md:1:1: warning: this session has no warm-up [missing-warm-up]; begin it with a part "
        "under the heading ‘## Warm-up’\n");
}

TEST_CASE("warm-up and cool-down must have something to do") {
  SessionMaker maker;
  maker.part("Warm-up", PartRole::kWarmUp);
  maker.part("Cool-down", PartRole::kCoolDown).budget(s(60));
  CHECK(
      checked(maker) ==
      "s.md:2:1: warning: the warm-up ‘Warm-up’ has no drills [missing-warm-up]; list at least one "
      "drill below its heading, link a shared part there, or give it a time of its own under "
      "‘timings: parts:’\n");
}

TEST_CASE("warm-up comes first and cool-down last") {
  SessionMaker maker;
  maker.part("Beam").drill("Walk", reps(1, 10));
  maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", reps(1, 10));
  maker.part("Warm-up", PartRole::kWarmUp).drill("Jog", reps(1, 10));
  CHECK(checked(maker) ==
        "s.md:4:1: warning: the cool-down ‘Cool-down’ comes before ‘Warm-up’ [cool-down-not-last]; "
        "move ‘Cool-down’ down, after ‘Warm-up’\n"
        "  Warm-up: this comes last now\n"
        "s.md:6:1: warning: the warm-up ‘Warm-up’ comes after ‘Beam’ [warm-up-not-first]; move "
        "‘Warm-up’ up, before ‘Beam’\n"
        "  Beam: this comes first now\n");
}

TEST_CASE("a second warm-up further on is no mistake") {
  CHECK(checked(framed(SessionMaker(), s(60), [](SessionMaker& m) {
          m.part("Floor").drill("Roll", reps(1, 5));
          m.part("Warm-up for wrists", PartRole::kWarmUp).drill("Circles", reps(1, 10));
        })).empty());
}

TEST_CASE("every drill has a dose, unless its part has a time of its own") {
  CHECK(checked(framed(SessionMaker(), s(60),
                       [](SessionMaker& m) {
                         m.part("Play").budget(s(300)).drill("Islands");
                         m.part("Bars").drill("Tuck jump");
                       })) ==
        "s.md:8:1: warning: ‘Tuck jump’ has no dose [no-dose]; write how much after a colon, as in "
        "‘Tuck jump: 2 x 10’, or give ‘Bars’ a time of its own under ‘timings: parts:’\n");
}

TEST_CASE("the advice for a missing dose does not damage the line") {
  const auto said = [](const char* name) {
    const std::string all = checked(
        framed(SessionMaker(), s(60), [&](SessionMaker& m) { m.part("Bars").drill(name); }));
    return all.substr(all.find("[no-dose]; ") + 11);
  };
  CHECK(
      said("Rows - 10") ==
      "write the drill, a colon and how much: `Rows: 10`; if the number is no dose, give ‘Bars’ a "
      "time of its own under ‘timings: parts:’\n");
  CHECK(said("Count to 10") ==
        "write how much after a colon, as in ‘Dish hold: 2 x 10’, or give ‘Bars’ a time of its own "
        "under ‘timings: parts:’\n");
  CHECK(said("Easier lie down") ==
        "if it belongs to the drill above, indent it by two spaces and put a colon after ‘Easier’: "
        "`- Easier: lie down`\n");
}

TEST_CASE("a part in which something was not understood is not called empty") {
  plan::Session session = SessionMaker()
                              .part("Warm-up", plan::PartRole::kWarmUp)
                              .part("Cool-down", plan::PartRole::kCoolDown)
                              .session();
  plan::Part& warm_up = session.parts[0];
  warm_up.span = {session.source.get(), warm_up.title.span.begin, warm_up.title.span.end + 1};
  Diagnostics diagnostics;
  diagnostics.error("bad-value", {session.source.get(), warm_up.span.end, warm_up.span.end}, "x");
  check(session, timetable(session, {}), {}, {}, english_guard(), diagnostics);
  CHECK(report(diagnostics) ==
        "s.md:3:1: error: x [bad-value]\n"
        "s.md:3:1: warning: the cool-down ‘Cool-down’ has no drills [missing-cool-down]; list at "
        "least "
        "one drill below its heading, link a shared part there, or give it a time of its own under "
        "‘timings: parts:’\n");
}

TEST_CASE("a dose that was not readable is not also missing") {
  CHECK(checked(framed(SessionMaker().slot(s(3600)), s(60),
                       [](SessionMaker& m) {
                         m.part("Bars").drill("Tuck jump");
                         m.last_drill().dose_unreadable = true;
                       }),
                [] {
                  Diagnostics already;
                  already.error("unreadable-dose", {}, "x");
                  return already;
                }()) == "error: x [unreadable-dose]\n");
}

TEST_CASE("an interval must leave room for its set") {
  Dose dose = hold(3, s(30));
  dose.every = s(20);
  CHECK(with_dose(dose) ==
        "s.md:5:1: error: a set is to start every 20 s, but one set takes 30 s [bad-value]; write "
        "‘every 30 s’ or more, or make the set shorter\n");
  dose.every = s(30);
  CHECK(with_dose(dose).empty());
}

TEST_CASE("every substitute has an easier option") {
  SessionMaker maker = framed(SessionMaker(), s(60), [](SessionMaker& m) {
    m.part("Shapes").drill("Dish hold", hold(2, s(20)));
    plan::Substitute palms;
    palms.kit = {"towel", {}};
    palms.name = m.words("Dish hold, palms together");
    plan::Substitute good = palms;
    good.easier.push_back({"one foot on the floor", {}});
    m.last_drill().substitutes = {palms, good};
  });
  CHECK(checked(maker) ==
        "s.md:6:1: warning: ‘Dish hold, palms together’ stands in for who has no towel, but has no "
        "easier option [substitute-without-easier]; add a line such as ‘- easier: one foot on the "
        "floor’ below it\n");
}

TEST_CASE("a home plan says who is there and what to clear, anywhere in its safety notes") {
  const auto home = [](const std::string& of_session, const std::string& of_part) {
    SessionMaker maker(Place::kHome);
    if (!of_session.empty()) maker.safety(of_session);
    return checked(framed(maker, s(60), [&](SessionMaker& m) {
      if (!of_part.empty()) m.part("Shapes").safety(of_part).drill("Bear walk", hold(1, s(20)));
    }));
  };
  const std::string adult =
      "warning: nothing in this home plan says that an adult stays in the room, so the home sheet "
      "says it [no-adult-note]; make sure of it; in your own words: ‘> **Safety.** An adult stays "
      "in the room.’\n";
  const std::string space =
      "note: nothing in this home plan says what to clear away, so the home sheet says it "
      "[no-space-note]; in your own words: ‘> **Safety.** Clear two big steps of floor in every "
      "direction.’\n";
  CHECK(home("", "") == "s.md:1:1: " + adult + "s.md:1:1: " + space);
  CHECK(home("An adult stays in the room.", "") == "s.md:2:1: " + space);
  CHECK(home("An adult stays in the room.", "Clear the floor first.").empty());
}

TEST_CASE("after a part could not be read, checks that would only repeat it are quiet") {
  Diagnostics already;
  already.error("unknown-part", {}, "x");
  SessionMaker maker(Place::kHome);
  maker.slot(s(3600)).part("Warm-up", PartRole::kWarmUp);
  maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", hold(1, s(60)));
  CHECK(checked(maker, already) == "error: x [unknown-part]\n");
}
