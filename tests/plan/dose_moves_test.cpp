// Rows of moves: what is kept of each, with its place. Which texts are rows is in dose_corpus.txt.
#include <catch2/catch.hpp>

#include "dose_meaning.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("each move keeps its name, its place, its amount and its sides") {
  const auto plan = read_plan(plan_with(
      "## P\n\n- Mix: 2 x (10 *star* jumps, 5 lunges each leg, 20–30 s plank), rest 30 s\n"));
  REQUIRE(messages(plan.diagnostics).empty());
  const Drill& drill = *drills_of(plan.session.parts.at(0)).at(0);
  CHECK(drill.name.text == "Mix");
  const Dose& dose = drill.dose.value();
  CHECK(dose.amount.kind == AmountKind::kMoves);
  CHECK(dose.sets == 2);
  CHECK(dose.rest == Duration::seconds(30));
  REQUIRE(dose.moves.size() == 3);
  CHECK(dose.moves[0].name.text == "star jumps");
  CHECK(dose.moves[0].name.span.text() == "star* jumps");
  CHECK(dose.moves[0].amount.count == 10);
  CHECK(dose.moves[1].name.span.text() == "lunges");
  CHECK(dose.moves[1].sides == Sides::kEachLeg);
  CHECK(dose.moves[2].amount.kind == AmountKind::kTime);
  CHECK(dose.moves[2].amount.time == Duration::seconds(20));
  CHECK(dose.moves[2].amount.time_to == Duration::seconds(30));
  CHECK(dose.span.text() == "2 x (10 *star* jumps, 5 lunges each leg, 20–30 s plank), rest 30 s");
}

TEST_CASE("a dose has two moves or none") {
  for (const char* text : {"10", "10, slow", "10 reps, 20 s rest", "10 star jumps, slow",
                           "2 x (10 star jumps)", "10 (both feet together)"}) {
    INFO(text);
    const auto source = std::make_shared<const Source>("dose", text);
    const auto dose = parse_dose(running_text(source));
    CHECK((!dose || (dose->moves.empty() && dose->amount.kind != AmountKind::kMoves)));
  }
}

// A number alone behind the name of a hold is for the checks to ask about.
TEST_CASE("whether repetitions were a number alone is kept") {
  const auto bare = [](const std::string& text) {
    const auto source = std::make_shared<const Source>("dose", text);
    return parse_dose(running_text(source)).value().amount.bare_number;
  };
  for (const char* text : {"30", "3 x 30", "3 sets of 30", "30 each side", "8–12", "30, rest 20 s"})
    CHECK(bare(text));
  for (const char* text : {"30 reps", "30 s", "x 30", "30x", "30 times", "twice", "3 goes",
                           "30 steps", "10 hops, 5 jumps"})
    CHECK_FALSE(bare(text));
}

TEST_CASE("the larger end of a range is what a sum counts with") {
  Amount amount;
  amount.count = 8;
  CHECK(amount.most_count() == 8);
  CHECK_FALSE(amount.most_time());
  amount.count_to = 12;
  CHECK(amount.most_count() == 12);
  amount.time = Duration::seconds(20);
  CHECK(amount.most_time() == Duration::seconds(20));
  amount.time_to = Duration::seconds(30);
  CHECK(amount.most_time() == Duration::seconds(30));
}

}  // namespace
}  // namespace chalkleaf::plan
