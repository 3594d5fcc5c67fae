// Whole timetables, and clock times against python3.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdio>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::PartRole;

namespace {

std::string written(const Timetable& table) {
  std::string out;
  for (const PartTime& part : table.parts) {
    out += fmt::format("{} {} for {}\n", stopwatch_text(part.start), part.part->title.text,
                       exact_text(part.length));
    for (const DrillTime& drill : part.drills) {
      out += fmt::format("  {} {}: {} + {} + {}{} = {}\n", stopwatch_text(drill.start),
                         drill.drill->name.text, exact_text(drill.work), exact_text(drill.rest),
                         exact_text(drill.changeover), drill.shared_time ? ", shared" : "",
                         drill.reasoning);
    }
  }
  return out + "total " + exact_text(table.total);
}

std::string python(const std::string& program) {
  FILE* pipe = ::popen(("python3 -c '" + program + "'").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) out += buffer;
  REQUIRE(::pclose(pipe) == 0);
  return out;
}

}  // namespace

TEST_CASE("a whole session: change-overs belong to the part they follow, none after the last") {
  SessionMaker maker;
  maker.slot(min(5)).start(min(17 * 60));
  maker.part("Warm-up", PartRole::kWarmUp).drill("Jog", hold(1, s(60))).drill("Reach", reps(1, 8));
  Dose dish = hold(2, s(20));
  dish.rest = s(20);
  maker.part("Shapes").drill("Dish hold", dish);
  maker.part("Cool-down", PartRole::kCoolDown).drill("Sway", hold(1, s(30)));
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  CHECK(written(table) ==
        "0:00 Warm-up for 1 min 46 s\n"
        "  0:00 Jog: 1 min + 0 s + 15 s = 1 min\n"
        "  1:15 Reach: 16 s + 0 s + 15 s = 8 reps × 2 s (a rep, default)\n"
        "1:46 Shapes for 1 min 15 s\n"
        "  1:46 Dish hold: 40 s + 20 s + 15 s = 2 sets × 20 s + 1 × 20 s rest\n"
        "3:01 Cool-down for 30 s\n"
        "  3:01 Sway: 30 s + 0 s + 0 s = 30 s\n"
        "total 3 min 31 s");
  CHECK(clock_text(*table.start) == "17:00");
  CHECK(clock_text(*table.end) == "17:03");
  CHECK(exact_text(*table.spare) == "1 min 29 s");
}

TEST_CASE("drills without a dose share what is left of their part's budget, to the millisecond") {
  SessionMaker maker;
  maker.part("Play").budget(s(100)).drill("Tag", hold(1, s(20)));
  maker.drill("Islands").drill("Statues").drill("Free play");
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  // 100 s − 20 s − 3 × 15 s = 35 s for three: 11.666 s, 11.666 s and 11.668 s.
  CHECK(written(table) ==
        "0:00 Play for 1 min 40 s\n"
        "  0:00 Tag: 20 s + 0 s + 15 s = 20 s\n"
        "  0:35 Islands: 11.666 s + 0 s + 15 s, shared = 1 of 3 equal shares of the 35 s left of "
        "the part's 1 min 40 s\n"
        "  1:02 Statues: 11.666 s + 0 s + 15 s, shared = 1 of 3 equal shares of the 35 s left of "
        "the part's 1 min 40 s\n"
        "  1:28 Free play: 11.668 s + 0 s + 0 s, shared = 1 of 3 equal shares of the 35 s left of "
        "the part's 1 min 40 s\n"
        "total 1 min 40 s");
}

TEST_CASE("a written time is the clock, and a part without drills takes all of it") {
  SessionMaker maker;
  maker.part("Talk").budget(s(30)).drill("Stretch", hold(1, s(40))).drill("Chat");
  maker.part("Water").budget(min(2));
  maker.part("Home").drill("Wave");
  const plan::Session session = maker.session();
  CHECK(written(timetable(session, {})) ==
        "0:00 Talk for 30 s\n"
        "  0:00 Stretch: 40 s + 0 s + 15 s = 40 s\n"
        "  0:30 Chat: 0 s + 0 s + 15 s, shared = the 0 s left of the part's 30 s\n"
        "0:30 Water for 2 min\n"
        "2:30 Home for 0 s\n"
        "  2:30 Wave: 0 s + 0 s + 0 s = no dose, so no time\n"
        "total 2 min 30 s");
  CHECK(timetable(session, {}).parts[0].planned == s(70));
}

TEST_CASE("kit is moved in the change-over, unless its line has a time") {
  using Way = plan::KitMove::Way;
  SessionMaker maker;
  maker.part("Play").kit_move(Way::kPickUp, "hoops", "two each");
  maker.drill("Tag", hold(1, s(60)));
  maker.kit_move(Way::kPutAway, "hoops", "").kit_move(Way::kPickUp, "mats", "", s(90));
  maker.kit_move(Way::kPickUp, "cones", "");
  maker.drill("Roll", hold(1, s(30)));
  maker.part("Tidy").kit_move(Way::kPutAway, "mats", "", min(2));
  maker.part("Water").budget(min(1)).kit_move(Way::kPickUp, "bottles", "", min(3));
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  // 60 s + 15 s, then 90 s of mats, then 30 s; nothing follows, so no change-over.
  CHECK(written(table) ==
        "0:00 Play for 3 min 15 s\n"
        "  0:00 Tag: 1 min + 0 s + 15 s = 1 min\n"
        "  2:45 Roll: 30 s + 0 s + 0 s = 30 s\n"
        "3:15 Tidy for 2 min\n"
        "5:15 Water for 1 min\n"
        "total 6 min 15 s");
  std::string moves;
  for (const PartTime& part : table.parts) {
    for (const KitMoveTime& move : part.kit_moves) {
      moves += stopwatch_text(move.start) + " " + move.move->kit[0].text + " " +
               exact_text(move.length) + "\n";
    }
  }
  CHECK(moves ==
        "0:00 hoops 0 s\n1:00 hoops 0 s\n1:15 mats 1 min 30 s\n2:45 cones 0 s\n"
        "3:15 mats 2 min\n5:15 bottles 3 min\n");
}

TEST_CASE("what moving kit takes of a part's budget is not shared out") {
  SessionMaker maker;
  maker.part("Play").budget(min(5)).drill("Tag");
  maker.kit_move(plan::KitMove::Way::kPutAway, "cones", "", min(1));
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  CHECK(table.parts[0].drills[0].work == min(4));
  CHECK(table.total == min(5));
}

TEST_CASE("the library's pace is for repetitions and steps that have none") {
  const auto summed = [](const Dose& dose) {
    SessionMaker maker;
    maker.part("Shapes").drill("Rocks", dose);
    plan::Session session = maker.session();
    plan::LibraryDrill rocks = known("Rocks", plan::DrillKind::kShape);
    rocks.pace = plan::Sourced<Duration>{s(1), {}};
    std::get<plan::Drill>(session.parts[0].steps[0]).known = &rocks;
    return timetable(session, {}).parts[0].drills[0].reasoning;
  };
  CHECK(summed(reps(2, 12)) == "2 sets × 12 reps × 1 s (its pace in the library)");
  CHECK(summed(a_dose(AmountKind::kSteps, 6)) == "6 steps × 1 s (its pace in the library)");
  CHECK(summed(a_dose(AmountKind::kLengths, 2)) == "2 lengths × 15 s (a length, default)");
  CHECK(summed(hold(1, s(20))) == "20 s");
  Dose own = reps(1, 4);
  own.pace = s(3);
  CHECK(summed(own) == "4 reps × 3 s (its pace)");
  own.pace.reset();
  own.tempo = plan::Tempo{{s(1), s(0), s(1), s(0)}};
  CHECK(summed(own) == "4 reps × 2 s (tempo 1-0-1-0)");
}

TEST_CASE("a session without parts takes no time") {
  SessionMaker maker;
  maker.slot(min(10));
  const plan::Session session = maker.session();
  const Timetable table = timetable(session, {});
  CHECK(written(table) == "total 0 s");
  CHECK_FALSE(table.end.has_value());
  CHECK(*table.spare == min(10));
}

TEST_CASE("parts add up to the total, drills to their parts, and starts follow one another") {
  for (std::int64_t seed = 1; seed <= 40; ++seed) {
    SessionMaker maker;
    for (std::int64_t p = 0; p < seed % 7; ++p) {
      maker.part("P" + std::to_string(p));
      if ((seed + p) % 3 == 0) maker.budget(Duration::milliseconds(seed * 7919 + p));
      for (std::int64_t d = 0; d < (seed * 5 + p) % 6; ++d) {
        maker.drill("D", (seed + d) % 4 == 0 ? std::nullopt : std::optional(reps(d + 1, seed)));
      }
    }
    const plan::Session session = maker.session();
    const Timetable table = timetable(session, {});
    Duration now;
    for (const PartTime& part : table.parts) {
      CHECK(part.start == now);
      Duration at = now;
      for (const DrillTime& drill : part.drills) {
        CHECK(drill.start == std::min(at, now + part.length));
        at += drill.length();
      }
      if (!part.drills.empty()) CHECK(at - now == part.planned);
      CHECK(part.length == (part.part->budget ? part.part->budget->value : part.planned));
      now += part.length;
    }
    CHECK(table.total == now);
  }
}

TEST_CASE("clock times agree with python3's datetime, past midnight too") {
  std::string ours;
  for (int i = 0; i < 60; ++i) {
    SessionMaker maker;
    maker.start(min((i * 97) % 1440)).part("P").drill("D", reps(1 + i % 5, 13 + 31 * i));
    maker.drill("E", hold(1 + i % 3, s(7 + 17 * i)));
    const plan::Session session = maker.session();
    const Timetable table = timetable(session, {});
    ours += clock_text(*table.start + table.parts[0].drills[1].start) + " " +
            clock_text(*table.end) + "\n";
  }
  CHECK(ours == python("from datetime import datetime, timedelta as T\n"
                       "for i in range(60):\n"
                       "  t = datetime(2026, 12, 2) + T(minutes=i * 97 % 1440)\n"
                       "  t += T(seconds=(1 + i % 5) * (13 + 31 * i) * 2 + 15)\n"
                       "  u = t + T(seconds=(1 + i % 3) * (7 + 17 * i))\n"
                       "  print(t.strftime(\"%H:%M\"), u.strftime(\"%H:%M\"))\n"));
}
