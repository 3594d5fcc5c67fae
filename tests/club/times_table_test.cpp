// The timetable as text: whole tables.
#include "cli/times_table.h"

#include <catch2/catch.hpp>

#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;

namespace {

std::string table(const std::string& text) {
  Diagnostics found;
  const SourcePtr source = source::load_text("t.md", text, found);
  REQUIRE(source != nullptr);
  const plan::Session session =
      plan::read_session(source::read_document(source, found), plan::Club{}, found);
  CHECK(found.all().empty());
  return cli::times_table(session, reason::timetable(session));
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
