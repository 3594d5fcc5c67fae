// Time that does not fit, as whole messages with labels and hints.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

// Warm-up and cool-down of 5 min each (a change-over after the first), ‘Bar shapes’ of 18 min,
// ‘Beam’ of 12 min and ‘Talk’ of 2 min: 42 min 15 s.
std::string session_with_slot(Duration slot) {
  return checked(framed(SessionMaker().slot(slot), min(5), [](SessionMaker& m) {
    m.part("Talk").drill("News", hold(1, min(2) - s(15)));
    m.part("Bar shapes").drill("Dish", hold(1, min(18) - s(15)));
    m.part("Beam").drill("Walk", hold(1, min(12) - s(15)));
  }));
}

}  // namespace

TEST_CASE("over the slot: by how much, and which parts could give it") {
  CHECK(session_with_slot(min(35)) ==
        "s.md:2:1: warning: the session takes 42 min 15 s, 7 min 15 s over its slot of 35 min "
        "[over-slot]; take 7 min 15 s out of ‘Bar shapes’ (18 min) or ‘Beam’ (12 min), or make the "
        "slot longer\n"
        "  Bar shapes: takes 18 min\n"
        "  Beam: takes 12 min\n");
}

TEST_CASE("over the slot by more than any part: several have to give") {
  CHECK(session_with_slot(min(20)) ==
        "s.md:2:1: warning: the session takes 42 min 15 s, 22 min 15 s over its slot of 20 min "
        "[over-slot]; take 22 min 15 s out of ‘Bar shapes’ (18 min), ‘Beam’ (12 min) and ‘Talk’ (2 "
        "min), or make the slot longer\n"
        "  Bar shapes: takes 18 min\n"
        "  Beam: takes 12 min\n"
        "  Talk: takes 2 min\n");
}

TEST_CASE("a session of exactly its slot, or a tenth under it, fits") {
  CHECK(session_with_slot(min(42) + s(15)).empty());
  // 42:15 is exactly nine tenths of 46:56.666…: a millisecond under is fine, one over is not.
  CHECK(session_with_slot(Duration::milliseconds(2'816'666)).empty());
  CHECK_FALSE(session_with_slot(Duration::milliseconds(2'816'667)).empty());
}

TEST_CASE("a part that leaves more than a tenth of its own time says so") {
  const auto games = [](Duration drill, Duration time) {
    return checked(framed(SessionMaker(), min(5), [&](SessionMaker& m) {
      m.part("Games").budget(time).drill("Tag", hold(1, drill - s(15)));
    }));
  };
  CHECK(games(min(9), min(10)).empty());
  CHECK(games(min(9) - s(1), min(10)) ==
        "s.md:5:1: warning: the drills of ‘Games’ take 8 min 59 s with their change-overs, 1 min 1 "
        "s less than the 10 min it has [under-budget]; add 1 min 1 s, list a drill without a dose "
        "to take it, or give the part 8 min 59 s\n"
        "  Games: takes 8 min 59 s\n");
  CHECK(checked(framed(SessionMaker(), min(5), [&](SessionMaker& m) {
          m.part("Games").budget(min(10)).drill("Tag", hold(1, min(2))).drill("Islands");
        })).empty());
}

TEST_CASE("a second over the slot is over it") {
  CHECK(session_with_slot(min(42) + s(14)) ==
        "s.md:2:1: note: the session takes 42 min 15 s, 1 s over its slot of 42 min 14 s "
        "[over-slot]; take 1 s out of ‘Bar shapes’ (18 min), ‘Beam’ (12 min) or ‘Talk’ (2 min), or "
        "make the slot longer\n"
        "  Bar shapes: takes 18 min\n"
        "  Beam: takes 12 min\n"
        "  Talk: takes 2 min\n");
}

TEST_CASE("under the slot: the shortest parts are named first") {
  CHECK(session_with_slot(min(60)) ==
        "s.md:2:1: warning: the session takes 42 min 15 s, 17 min 45 s less than its slot of 1 h "
        "[under-slot]; add up to 17 min 45 s to ‘Talk’ (2 min), ‘Beam’ (12 min) or ‘Bar shapes’ "
        "(18 min), or make the slot shorter\n"
        "  Talk: takes 2 min\n"
        "  Beam: takes 12 min\n"
        "  Bar shapes: takes 18 min\n");
}

TEST_CASE("with only a warm-up and a cool-down, those are what can give") {
  CHECK(checked(framed(SessionMaker().slot(min(9)), min(5), [](SessionMaker&) {})) ==
        "s.md:2:1: warning: the session takes 10 min 15 s, 1 min 15 s over its slot of 9 min "
        "[over-slot]; take 1 min 15 s out of ‘Warm-up’ (5 min 15 s) or ‘Cool-down’ (5 min), or "
        "make the slot longer\n"
        "  Warm-up: takes 5 min 15 s\n"
        "  Cool-down: takes 5 min\n");
}

TEST_CASE("a part that takes longer than its own time") {
  CHECK(checked(framed(SessionMaker(), min(5),
                       [](SessionMaker& m) {
                         m.part("Bars").budget(min(8)).drill("Dish", hold(1, min(8)));
                         m.part("Beam").budget(min(8)).drill("Walk", hold(1, min(7)));
                       })) ==
        "s.md:5:1: note: the drills of ‘Bars’ take 8 min 15 s with their change-overs, 15 s "
        "over the 8 min it has [over-budget]; take 15 s out of it, or give it 8 min 15 s\n"
        "  Bars: takes 8 min 15 s\n");
}
