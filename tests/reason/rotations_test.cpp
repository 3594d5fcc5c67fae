// A rotation's place in the session's time: stations beside each other, the clock the grid's.
#include "reason/rotations.h"

#include <catch2/catch.hpp>
#include <string>

#include "base/files.h"
#include "plan/read.h"
#include "rota/read.h"
#include "source/read.h"
#include "support/places.h"

using namespace chalkleaf;

namespace {

const char* const kPlan =
    "---\ntitle: T\nplace: gym\nstart: \"9:00\"\n---\n\n## Warm-up (25 min)\n\n- Jog: 2 min\n\n"
    "## Rotations (2 x 28 min, 2 min to move)\n\n- groups: A 4, B 5\n\n| | vault | bars "
    "|\n|-|-|-|\n"
    "| 9.25 | A | B |\n| 9.53 | WATER – 10 min | |\n| 10.05 | B | A |\n\n### Vault\n\n- Squat on: "
    "5 goes\n- Talk\n\n"
    "### Bars (20 min)\n\n- Casts: 3 x 5\n\n## Cool-down (5 min)\n\n- Walk: 2 min\n";

struct Read {
  SourcePtr source;
  plan::Session session;
  std::vector<rota::Rotation> rotations;
};

Read read_plan(const std::string& text = kPlan) {
  Read out;
  const RealFileSystem files;
  static Diagnostics found;
  out.source = source::load_text("plan.md", text, found);
  out.session = plan::read_session(source::read_document(out.source, found), {}, found);
  const std::string path = support::repository() + "/themes/words/en/rota.yaml";
  const auto words = rota::read_words(source::load(files, path, "rota.yaml", found), found);
  REQUIRE(words);
  out.rotations = rota::read(*out.source, *words);
  return out;
}

}  // namespace

TEST_CASE("rotations in time: the grid's clock, the stations beside each other") {
  Read read = read_plan();
  REQUIRE(read.rotations.size() == 1);
  const std::vector<reason::Seat> seats = reason::seat_rotations(read.session, read.rotations);
  REQUIRE(seats.size() == 3);
  CHECK_FALSE(seats[0].station);
  CHECK(seats[1].station == 0);
  CHECK(seats[2].station == 1);
  CHECK(read.session.parts[2].gymnasts == 5);  // the largest group
  const reason::Timetable times = reason::timetable(read.session, {});
  REQUIRE(times.parts.size() == 5);
  CHECK(times.parts[1].length == Duration::minutes(70));
  CHECK(times.parts[2].start == Duration::minutes(25));
  CHECK(times.parts[2].length == Duration::minutes(28));
  CHECK(times.parts[3].start == Duration::minutes(25));
  CHECK(times.parts[3].length == Duration::minutes(20));  // a written time stays
  CHECK(times.parts[4].start == Duration::minutes(95));
  CHECK(times.total == Duration::minutes(100));
  // A line without a dose does not fill a turn.
  CHECK_FALSE(times.parts[2].drills[1].shared_time);
}

TEST_CASE("one part alone further down is no station, whatever it is called") {
  std::string text = kPlan;
  const std::size_t vault = text.find("### Vault");
  text.replace(vault, text.find("## Cool-down") - vault,
               "## Open shoulders\n\n- Bridge: 3 x 5 s\n\n## Vault walks\n\n- March: 1 min\n\n");
  Read read = read_plan(text);
  const std::vector<reason::Seat> seats = reason::seat_rotations(read.session, read.rotations);
  REQUIRE(seats.size() == 1);
  CHECK_FALSE(read.session.parts[3].station_of);
}

TEST_CASE("stations may stand behind lunch") {
  std::string text = kPlan;
  text.insert(text.find("### Vault"), "## Lunch\n\n- Eat and rest: 30 min\n\n");
  text.replace(text.find("### Vault"), 9, "## Vault");
  text.replace(text.find("### Bars"), 8, "## Bars");
  Read read = read_plan(text);
  const std::vector<reason::Seat> seats = reason::seat_rotations(read.session, read.rotations);
  REQUIRE(seats.size() == 3);
  CHECK(seats[1].part == 3);
  CHECK(seats[2].part == 4);
}
