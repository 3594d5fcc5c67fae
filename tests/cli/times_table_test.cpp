// The timetable as text: whole tables.
#include "cli/times_table.h"

#include <catch2/catch.hpp>

#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;

namespace {

std::string table(const std::string& text, const plan::Club& club = {}) {
  Diagnostics found;
  const SourcePtr source = source::load_text("t.md", text, found);
  REQUIRE(source != nullptr);
  const plan::Session session =
      plan::read_session(source::read_document(source, found), club, found);
  CHECK(found.all().empty());
  return cli::times_table(session, reason::timetable(session, club));
}

}  // namespace

TEST_CASE("times: clock, drill, dose as written, exact time and how it came about") {
  CHECK(table("---\ntitle: Strong shapes\nplace: gym\nslot: 10 min\nstart: \"17:05\"\n"
              "timings:\n  parts: {Play: 2 min}\n---\n\n"
              "## Warm-up\n\n- Jog: 2 min\n- Reach: 2 x 8, rest 10 s\n\n"
              "## Play\n\n- Tag\n- Islands\n\n"
              "## Cool-down\n\n- Sway: 30 s each side\n") ==
        "Strong shapes\n"
        "\n"
        "17:05  Warm-up                       3:12\n"
        "17:05    Jog      2 min              2:15  2 min + 15 s change-over\n"
        "17:07    Reach    2 x 8, rest 10 s   0:57  2 sets × 8 reps × 2 s (a rep, default) + 1 × "
        "10 s rest + 15 s change-over\n"
        "\n"
        "17:08  Play                          2:00  of the part's own 2 min\n"
        "17:08    Tag      –                  1:00  1 of 2 equal shares of the 1 min 30 s left of "
        "the part's 2 min + 15 s change-over\n"
        "17:09    Islands  –                  1:00  1 of 2 equal shares of the 1 min 30 s left of "
        "the part's 2 min + 15 s change-over\n"
        "\n"
        "17:10  Cool-down                     1:00\n"
        "17:10    Sway     30 s each side     1:00  2 sides × 30 s\n"
        "\n"
        "17:11  Sum                           6:12  3:12 + 2:00 + 1:00\n"
        "       Slot                         10:00\n"
        "       Spare                         3:48  10:00 − 6:12\n");
}

TEST_CASE(
    "times: without a start elapsed time; fractions shown so that sums add up; over its slot") {
  CHECK(table("---\ntitle: Short\nplace: gym\nslot: 1 min\ntimings:\n  changeover: 0 s\n"
              "  parts: {Play: 50 s}\n---\n\n"
              "## Play\n\n- Tag\n- Islands\n- Statues\n\n## End\n\n- Walk: 20 steps\n") ==
        "Short\n"
        "\n"
        "    0:00  Play                     0:50  of the part's own 50 s\n"
        "    0:00    Tag      –         0:16.666  1 of 3 equal shares of the part's 50 s\n"
        "0:16.666    Islands  –         0:16.666  1 of 3 equal shares of the part's 50 s\n"
        "0:33.332    Statues  –         0:16.668  1 of 3 equal shares of the part's 50 s\n"
        "\n"
        "    0:50  End                      0:20\n"
        "    0:50    Walk     20 steps      0:20  20 steps × 1 s (a step, default)\n"
        "\n"
        "          Sum                      1:10  0:50 + 0:20\n"
        "          Slot                     1:00\n"
        "          Over                     0:10  1:10 − 1:00\n");
}

TEST_CASE("times: stations below their circuit, kit between the drills, waves in the sum") {
  plan::Club club;
  club.stations = {{{"beam", {}}, {3, {}}, {1, {}}}};
  // 2 × (80 s + 10 s) + 30 s + 15 s = 225 s; 2 × 3 × 8 s = 48 s.
  CHECK(table("---\ntitle: Kit\nplace: gym\ngymnasts: 8\n---\n\n## Play\n\n"
              "- Set out: hoops, two each\n"
              "- Ring: 2 rounds, 30 s work, 10 s rest, 30 s between rounds\n"
              "  - Hops\n  - Jumps: 25 reps\n"
              "- Put away: hoops: 1 min\n"
              "- Beam walk: 2 x 8 steps\n  - at: beam\n",
              club) ==
        "Kit\n"
        "\n"
        "0:00  Play                                                                             "
        "5:33\n"
        "0:00    Set out: hoops, two each  –                                                    "
        "0:00  kit is moved in the change-over\n"
        "0:00    Ring                      2 rounds, 30 s work, 10 s rest, 30 s between rounds  "
        "3:45  2 rounds × (1 min 20 s at 2 stations + 1 × 10 s rest) + 30 s between rounds + 15 s "
        "change-over\n"
        "          Hops                    –                                                       "
        "   each round: 30 s, then 10 s\n"
        "          Jumps                   25 reps                                                 "
        "   each round: 25 reps × 2 s (a rep, default)\n"
        "3:45    Put away: hoops: 1 min    –                                                    "
        "1:00  kit is moved\n"
        "4:45    Beam walk                 2 x 8 steps                                          "
        "0:48  2 sets × 3 waves of up to 3 gymnasts × 8 steps × 1 s (a step, default)\n"
        "\n"
        "      Sum                                                                              "
        "5:33  5:33\n");
}

TEST_CASE("times: every column stands in one place, however long a dose or a name is") {
  const std::string name = "Walk the whole line and come back on the other one, slowly as you can";
  const std::string dose =
      "12 steps each way: forwards, backwards, sideways, on tiptoe, with high knees";
  CHECK(table("---\ntitle: Long\nplace: gym\n---\n\n## Beam\n\n- " + name +
              ": 10\n- Line walk: " + dose + "\n- Séance d’équilibre: 30 s\n") ==
        "Long\n"
        "\n"
        "0:00  Beam                                                                                "
        "                                         2:20\n"
        "0:00    Walk the whole line and come back on the other one, slowly…  10                   "
        "                                         0:35  10 reps × 2 s (a rep, default) + 15 s "
        "change-over\n"
        "0:35    Line walk                                                    12 steps each way: "
        "forwards, backwards, sideways, on tiptoe…  1:15  5 ways × 12 steps × 1 s (a step, "
        "default) + 15 s change-over\n"
        "1:50    Séance d’équilibre                                           30 s                 "
        "                                         0:30  30 s\n"
        "\n"
        "      Sum                                                                                 "
        "                                         2:20  2:20\n");
}
