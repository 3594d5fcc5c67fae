#include "base/date.h"

#include <catch2/catch.hpp>

#include "support/shell.h"

using namespace chalkleaf;

TEST_CASE("dates are read in ISO 8601's form only, and must exist") {
  CHECK(parse_date("2026-12-02") == Date{2026, 12, 2});
  CHECK(parse_date("2024-02-29").has_value());
  CHECK_FALSE(parse_date("2026-02-29").has_value());
  CHECK_FALSE(parse_date("2026-13-01").has_value());
  CHECK_FALSE(parse_date("2.12.2026").has_value());
  CHECK_FALSE(parse_date("2026-1-2").has_value());
  CHECK(iso_text({2026, 3, 4}) == "2026-03-04");
}

TEST_CASE("weekdays and day numbers agree with python3's datetime over two centuries") {
  std::string ours;
  for (std::int64_t day = -30000; day < 40000; day += 137) {
    const Date date = date_from_days(day);
    CHECK(days_since_epoch(date) == day);
    ours += iso_text(date) + " " + std::to_string(static_cast<int>(weekday(date))) + "\n";
  }
  const auto ran = support::run(
      "python3 -c '\nfrom datetime import date, timedelta\n"
      "for d in range(-30000, 40000, 137):\n x = date(1970,1,1)+timedelta(days=d); "
      "print(x.isoformat(), x.weekday())'");
  REQUIRE(ran.status == 0);
  CHECK(ran.output == ours);
}
