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

constexpr Duration s(std::int64_t n) { return Duration::seconds(n); }
constexpr Duration min(std::int64_t n) { return Duration::minutes(n); }

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
  const Timetable table = timetable(session);
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
  const Timetable table = timetable(session);
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

TEST_CASE("a budget with nothing left gives no time, and one without drills takes all of it") {
  SessionMaker maker;
  maker.part("Talk").budget(s(30)).drill("Stretch", hold(1, s(40))).drill("Chat");
  maker.part("Water").budget(min(2));
  maker.part("Home").drill("Wave");
  const plan::Session session = maker.session();
  CHECK(written(timetable(session)) ==
        "0:00 Talk for 1 min 10 s\n"
        "  0:00 Stretch: 40 s + 0 s + 15 s = 40 s\n"
        "  0:55 Chat: 0 s + 0 s + 15 s, shared = the 0 s left of the part's 30 s\n"
        "1:10 Water for 2 min\n"
        "3:10 Home for 0 s\n"
        "  3:10 Wave: 0 s + 0 s + 0 s = no dose, so no time\n"
        "total 3 min 10 s");
}

TEST_CASE("a session without parts takes no time") {
  SessionMaker maker;
  maker.slot(min(10));
  const plan::Session session = maker.session();
  const Timetable table = timetable(session);
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
    const Timetable table = timetable(session);
    Duration now;
    for (const PartTime& part : table.parts) {
      CHECK(part.start == now);
      Duration at = now;
      for (const DrillTime& drill : part.drills) {
        CHECK(drill.start == at);
        at += drill.length();
      }
      if (!part.drills.empty()) CHECK(at - now == part.length);
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
    const Timetable table = timetable(session);
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
