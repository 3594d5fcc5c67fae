// Doses that can be read, and what they mean. The forms are those of the language's design (written
// into dose.h); which spellings coaches use is common practice, no source.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

struct DoseCase {
  const char* written;
  const char* meaning;
};

void check_doses(const std::vector<DoseCase>& cases) {
  for (const DoseCase& c : cases) {
    INFO(c.written);
    CHECK(dose_of(c.written) == c.meaning);
  }
}

TEST_CASE("repetitions") {
  check_doses({{"10", "10 reps"},
               {"10.", "10 reps"},
               {"10 reps", "10 reps"},
               {"1 rep", "1 reps"},
               {"10 repetitions", "10 reps"},
               {"10 times", "10 reps"},
               {"ten reps", "10 reps"},
               {"Twenty", "20 reps"},
               {"twelve times", "12 reps"},
               {"once", "1 reps"},
               {"twice", "2 reps"}});
}

TEST_CASE("sets") {
  check_doses({{"3x10", "3 sets of 10 reps"},
               {"3 x 10", "3 sets of 10 reps"},
               {"3 X 10", "3 sets of 10 reps"},
               {"3 × 10", "3 sets of 10 reps"},
               {"3×10 reps", "3 sets of 10 reps"},
               {"3 * 10", "3 sets of 10 reps"},
               {"3 sets of 10", "3 sets of 10 reps"},
               {"3 sets x 10", "3 sets of 10 reps"},
               {"2 sets × 10", "2 sets of 10 reps"},
               {"three sets of ten", "3 sets of 10 reps"},
               {"1 set of 10 reps", "10 reps"},
               {"2 rounds of 20 s", "2 sets of 20 s"},
               {"10 reps, 3 sets", "3 sets of 10 reps"},
               {"3 sets, 10 reps", "3 sets of 10 reps"},
               {"20 s x 3", "3 sets of 20 s"},
               {"20 s twice", "2 sets of 20 s"},
               {"20 s, twice", "2 sets of 20 s"},
               {"2 times 20 s", "2 sets of 20 s"}});
}

TEST_CASE("time") {
  check_doses({{"30 s", "30 s"},
               {"30s", "30 s"},
               {"30 sec", "30 s"},
               {"30 secs.", "30 s"},
               {"30 seconds", "30 s"},
               {"thirty seconds", "30 s"},
               {"1:30", "1 min 30 s"},
               {"90 s", "1 min 30 s"},
               {"1 min 30 s", "1 min 30 s"},
               {"1min30s", "1 min 30 s"},
               {"1.5 min", "1 min 30 s"},
               {"1,5 min", "1 min 30 s"},
               {"½ min", "30 s"},
               {"1/2 min", "30 s"},
               {"2½ min", "2 min 30 s"},
               {"1⅓ min", "1 min 20 s"},
               {"0:20", "20 s"},
               {"1:05:00", "1 h 5 min"},
               {"2 minutes", "2 min"},
               {"0.5 s", "0.5 s"},
               {"for 30 s", "30 s"},
               {"2 x 20 s", "2 sets of 20 s"},
               {"2x20s", "2 sets of 20 s"},
               {"2 × 20 sec", "2 sets of 20 s"},
               {"2 x 1:30", "2 sets of 1 min 30 s"},
               {"2\xC2\xA0×\xC2\xA0"
                "20\xC2\xA0s",
                "2 sets of 20 s"}});
}

TEST_CASE("holds") {
  check_doses({{"hold 20 s", "20 s held"},
               {"20 s hold", "20 s held"},
               {"3 x 20 s hold", "3 sets of 20 s held"},
               {"3 x hold 20 s", "3 sets of 20 s held"},
               {"hold for 20 s", "20 s held"},
               {"max hold", "max hold"},
               {"Max hold", "max hold"},
               {"hold max", "max hold"},
               {"max hold, up to 15 s", "max hold up to 15 s"},
               {"max hold (up to 15 s)", "max hold up to 15 s"},
               {"max hold up to 15 s", "max hold up to 15 s"},
               {"max hold, up to 15 s, 3 goes", "3 goes of max hold up to 15 s"},
               {"3 x max hold", "3 sets of max hold"}});
}

TEST_CASE("steps, lengths and goes") {
  check_doses({{"20 steps", "20 steps"},
               {"2 x 20 steps", "2 sets of 20 steps"},
               {"4 lengths", "4 lengths"},
               {"1 length", "1 lengths"},
               {"3 goes", "3 goes of 1 reps"},
               {"20 s, 3 goes", "3 goes of 20 s"},
               {"3 goes of 20 s", "3 goes of 20 s"}});
}

TEST_CASE("sides and ways") {
  check_doses(
      {{"10 each side", "10 reps each side"},
       {"3 x 10 each leg", "3 sets of 10 reps each leg"},
       {"20 s each side", "20 s each side"},
       {"20 s per side", "20 s each side"},
       {"20 s, both sides", "20 s each side"},
       {"10 reps (each arm)", "10 reps each arm"},
       {"10 both arms", "10 reps each arm"},
       {"10 each direction", "10 reps each way"},
       {"both directions, 10", "10 reps each way"},
       {"12 steps each way: forwards, backwards", "12 steps each way [forwards] [backwards]"},
       {"12 steps each way: forwards, backwards, sideways",
        "12 steps each way [forwards] [backwards] [sideways]"},
       {"12 steps each way: forwards and backwards", "12 steps each way [forwards] [backwards]"},
       {"12 steps each way: forwards, backwards, rest 20 s, slow",
        "12 steps each way [forwards] [backwards], rest 20 s, ‘slow’"}});
}

TEST_CASE("rests, tempo, pace, effort and intervals") {
  check_doses({{"2 x 20 s, rest 20 s", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s, 20 s rest", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s; rest 1 min", "2 sets of 20 s, rest 1 min"},
               {"2 x 20 s rest 20 s", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s with 20 s rest", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s, rest 20 s between sets", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s, 20 s between goes", "2 sets of 20 s, rest 20 s"},
               {"2 x 20 s, no rest", "2 sets of 20 s, rest 0 s"},
               {"2x20 s,rest 20 s", "2 sets of 20 s, rest 20 s"},
               {"10, tempo 3-0-1-0", "10 reps, tempo 4 s"},
               {"10, tempo 3–0–1–0", "10 reps, tempo 4 s"},
               {"10, tempo 3 — 1 — 3 — 1", "10 reps, tempo 8 s"},
               {"20 steps, pace 3 s", "20 steps, pace 3 s"},
               {"10, effort 6", "10 reps, effort 6"},
               {"10, effort 6/10", "10 reps, effort 6"},
               {"10, effort 6 out of 10", "10 reps, effort 6"},
               {"6 x 10, every 30 s", "6 sets of 10 reps, every 30 s"}});
}

TEST_CASE("words without numbers are remarks") {
  check_doses({{"10, slow", "10 reps, ‘slow’"},
               {"10 reps, slow and tall; eyes up", "10 reps, ‘slow and tall’, ‘eyes up’"},
               {"10, one leg at a time", "10 reps, ‘one leg at a time’"},
               {"10, coach’s clap", "10 reps, ‘coach’s clap’"},
               {"10 (both feet together)", "10 reps, ‘both feet together’"}});
}

// Each phase of a tempo and each way must be traceable to its bytes.
TEST_CASE("the places of a dose's words are exact") {
  const auto plan = read_plan(plan_with(
      "## P\n\n- Beam **walk** &amp; turn: 12 steps each way: *forwards*, back\\*wards, slow 1\n"));
  CHECK(messages(plan.diagnostics) ==
        "plan.md:7:73: error: ‘slow 1’ cannot be read as a dose [unreadable-dose]; write the dose "
        "as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to 15 s, 3 "
        "goes`\n");
  const auto good = read_plan(
      plan_with("## P\n\n- Walk: 12 steps each way: *forwards*, b&auml;ck, rest 20 s, slow. \n"));
  REQUIRE(messages(good.diagnostics).empty());
  const Drill& drill = *drills_of(good.session.parts.at(0)).at(0);
  const Dose& dose = drill.dose.value();
  CHECK(drill.name.span.text() == "Walk");
  CHECK(dose.span.text() == "12 steps each way: *forwards*, b&auml;ck, rest 20 s, slow");
  CHECK(dose.ways.at(0).span.text() == "forwards");
  CHECK(dose.ways.at(1).text == "bäck");
  CHECK(dose.ways.at(1).span.text() == "b&auml;ck");
  CHECK(dose.remarks.at(0).span.text() == "slow");
}

TEST_CASE("how often the amount is done in one set") {
  Dose dose;
  CHECK(dose.repeats_per_set() == 1);
  dose.sides = Sides::kEachSide;
  CHECK(dose.repeats_per_set() == 2);
  dose.ways = {{"a", {}}, {"b", {}}, {"c", {}}};
  CHECK(dose.repeats_per_set() == 3);
}

}  // namespace
}  // namespace chalkleaf::plan
