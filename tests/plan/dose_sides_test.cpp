// Sides of a dose, and the other short forms a coach writes; common practice, no source.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

struct SidesCase {
  const char* written;
  const char* meaning;
};
void check_sides(const std::vector<SidesCase>& cases) {
  for (const SidesCase& c : cases) {
    INFO(c.written);
    CHECK(dose_of(c.written) == c.meaning);
  }
}

TEST_CASE("each side, however it is said") {
  check_sides({{"10 each", "10 reps each side"},
               {"3x10 each", "3 sets of 10 reps each side"},
               {"3 x 10 each, rest 20 s", "3 sets of 10 reps each side, rest 20 s"},
               {"10 each rest 20 s", "10 reps each side, rest 20 s"},
               {"10, each", "10 reps each side"},
               {"10 on each side", "10 reps each side"},
               {"10 to both sides", "10 reps each side"},
               {"5 on each leg", "5 reps each leg"},
               {"5, on each leg", "5 reps each leg"},
               {"5 with each hand", "5 reps each arm"},
               {"10 per leg", "10 reps each leg"},
               {"10 each foot", "10 reps each leg"},
               {"10, each foot", "10 reps each leg"},
               {"10 both feet", "10 reps each leg"},
               {"10 each hand", "10 reps each arm"},
               {"5 L/R", "5 reps each side"},
               {"5 R/L", "5 reps each side"},
               {"5 L & R", "5 reps each side"},
               {"20 s left and right", "20 s each side"},
               {"5 left/right", "5 reps each side"},
               {"5, left and right", "5 reps each side"},
               {"5 on the right and left leg", "5 reps each leg"},
               {"12 steps each way: forwards, left and right",
                "12 steps each way [forwards] [left and right]"},
               {"10 (both feet together)", "10 reps, ‘both feet together’"}});
}

TEST_CASE("near misses of sides are never offered as remarks") {
  const std::string hint =
      "[unreadable-dose]; write `each side`, `each leg`, `each arm` or `each way` behind the "
      "amount\n";
  for (const char* dose : {"10 each straight leg", "10 left", "10 both", "10 right leg",
                           "10 each leg and arm", "10 of both legs"}) {
    INFO(dose);
    CHECK(dose_of(dose) ==
          fmt::format("dose:1:1: error: ‘{}’ cannot be read as a dose {}", dose, hint));
  }
  CHECK(
      dose_of("10, each side of the beam") ==
      "dose:1:5: error: ‘each side of the beam’ is not known here [unreadable-dose]; write `each "
      "side`, `each leg`, `each arm` or `each way` alone between commas; say the rest in a `note:` "
      "below the drill\n");
}

TEST_CASE("sets behind the amount") {
  check_sides({{"10 x 3", "10 sets of 3 reps"},
               {"10 reps x 3", "3 sets of 10 reps"},
               {"10 reps x 3 sets", "3 sets of 10 reps"},
               {"10 x 3 sets", "3 sets of 10 reps"},
               {"20 s x 3 sets", "3 sets of 20 s"},
               {"20 s × 3 rounds", "3 sets of 20 s"},
               {"3 sets of 10 reps", "3 sets of 10 reps"}});
}

// The time before `rest` was once taken for the rest, the other for the amount.
TEST_CASE("a rest without a comma before it") {
  check_sides({{"2 x 20 s rest 10 s", "2 sets of 20 s, rest 10 s"},
               {"20 s rest 10 s", "20 s, rest 10 s"},
               {"20 s rest, 2 x 30 s", "2 sets of 30 s, rest 20 s"},
               {"2 x 30 s 20 s rest", "2 sets of 30 s, rest 20 s"}});
}

TEST_CASE("a tempo or a pace, where there is something to count") {
  check_sides(
      {{"10, tempo 3-0-1-0, pace 2 s",
        "dose:1:20: error: this dose has a tempo and a pace [unreadable-dose]; keep one of the "
        "two: "
        "both say how long one repetition takes\n"},
       {"30 s, tempo 3-0-1-0",
        "dose:1:7: error: a tempo is the time of one repetition [unreadable-dose]; leave it out, "
        "or "
        "write the amount in repetitions: `10 reps, tempo 3-0-1-0`\n"},
       {"10 steps, tempo 3-0-1-0",
        "dose:1:11: error: a tempo is the time of one repetition [unreadable-dose]; write `pace` "
        "and the time of one step or length: `20 steps, pace 2 s`\n"},
       {"max hold, pace 2 s",
        "dose:1:11: error: a pace is the time of one repetition, step or length [unreadable-dose]; "
        "leave it out, or write the amount as a number: `10 reps, pace 3 s`\n"},
       {"pace 2 s, 4 lengths", "4 lengths, pace 2 s"}});
}

}  // namespace
}  // namespace chalkleaf::plan
