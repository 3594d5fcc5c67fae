#include "base/duration.h"

#include <catch2/catch.hpp>

#include "support/shell.h"

using namespace chalkleaf;

TEST_CASE("durations are written as people write them") {
  CHECK(exact_text(Duration::seconds(20)) == "20 s");
  CHECK(exact_text(Duration::seconds(90)) == "1 min 30 s");
  CHECK(exact_text(Duration::minutes(65)) == "1 h 5 min");
  CHECK(exact_text(Duration::milliseconds(500)) == "0.5 s");
  CHECK(exact_text(Duration()) == "0 s");
  CHECK(exact_text(-Duration::seconds(75)) == "-1 min 15 s");
  CHECK(stopwatch_text(Duration::seconds(20)) == "0:20");
  CHECK(stopwatch_text(Duration::seconds(3725)) == "1:02:05");
}

TEST_CASE("rounding: halves up, also below zero") {
  CHECK(Duration::seconds(90).rounded_minutes() == 2);
  CHECK(Duration::seconds(89).rounded_minutes() == 1);
  CHECK((-Duration::seconds(30)).rounded_minutes() == 0);
  CHECK(Duration::milliseconds(1500).rounded_seconds() == 2);
}

TEST_CASE("clock times wrap at midnight and never announce too late") {
  const TimeOfDay late{Duration::minutes(23 * 60 + 50)};
  CHECK(clock_text(late + Duration::minutes(15)) == "00:05");
  CHECK(clock_text({Duration::seconds(17 * 3600 + 59)}) == "17:00");
}

TEST_CASE("clock arithmetic agrees with python3's datetime") {
  std::string ours;
  for (int i = 0; i < 200; ++i) ours += clock_text({Duration::seconds(61200 + i * 437)}) + "\n";
  const auto ran = support::run(
      "python3 -c '\nfrom datetime import datetime, timedelta\n"
      "for i in range(200): "
      "print((datetime(2026,1,1,17)+timedelta(seconds=i*437)).strftime(\"%H:%M\"))'");
  REQUIRE(ran.status == 0);
  CHECK(ran.output == ours);
}
