// Published energy of activities at four ages.
#include "reason/mety.h"

#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

// Butte et al. 2018, Med Sci Sports Exerc 50(2):246-256, smoothed; secondary copy.
TEST_CASE("METy: the published values at 6-9, 10-12, 13-15 and 16-18 years") {
  const auto all = [](std::string_view code) {
    return std::vector<double>{mety(code, 9).value(), mety(code, 10).value(),
                               mety(code, 15).value(), mety(code, 16).value()};
  };
  CHECK(all("10260X") == std::vector<double>{6.9, 7.1, 7.2, 7.4});
  CHECK(all("60140X") == std::vector<double>{6.8, 7.4, 7.9, 8.4});
  CHECK(all("85100X") == std::vector<double>{3.0, 3.0, 2.9, 2.9});
  CHECK(all("30200X") == std::vector<double>{4.0, 4.1, 4.1, 4.2});
  CHECK(all("30300X") == std::vector<double>{3.9, 4.0, 4.0, 4.1});
  CHECK(all("40100X") == std::vector<double>{3.6, 4.1, 4.5, 4.8});
  CHECK(all("80180X") == std::vector<double>{3.3, 3.5, 3.6, 3.7});
  CHECK(all("60240X") == std::vector<double>{7.2, 8.0, 8.6, 9.3});
}

TEST_CASE("METy: the ages of the bands, and codes nobody listed") {
  CHECK_FALSE(mety("60140X", 5));
  CHECK(mety("60140X", 6) == 6.8);
  CHECK(mety("60140X", 12) == 7.4);
  CHECK(mety("60140X", 13) == 7.9);
  CHECK(mety("60140X", 18) == 8.4);
  CHECK_FALSE(mety("60140X", 19));
  CHECK(mety("12025", 9) == mety("60140X", 9));
  CHECK_FALSE(mety("02101", 9));  // stretching has no youth code
}

// The worked sum: age 9, jog 5 min + rope 3 min + walk 2.5 mph 4 min = 67.9 METy-min, mean 5.6583.
TEST_CASE("METy: a plan's sum, of drills that have a code") {
  const auto coded = [](const std::string& name, const std::string& code) {
    plan::LibraryDrill out = known(name, plan::DrillKind::kRaise);
    out.mets = {code, {}};
    return out;
  };
  const auto activity = [&](std::optional<int> age) {
    SessionMaker maker;
    if (age) maker.group(group("Kestrels", *age, 8));
    maker.part("All").drill("Jog", hold(1, min(5))).drill("Rope", hold(1, min(3)));
    maker.drill("Walk", hold(1, min(4))).drill("Talk", hold(1, min(9)));
    Diagnostics diagnostics;
    plan::Session session = maker.session();
    const plan::DrillBook book(
        {coded("Jog", "60140X"), coded("Rope", "10260X"), coded("Walk", "80180X")}, diagnostics);
    plan::inherit(session, book, diagnostics);
    return activity_of(session, timetable(session, {}));
  };
  REQUIRE(activity(9));
  CHECK(activity(9)->mety_minutes == Approx(67.9));
  CHECK(activity(9)->counted == min(12));
  CHECK(activity(9)->moderate == min(12));
  CHECK(activity(9)->mety_minutes / 12 == Approx(5.6583).margin(0.0001));
  CHECK_FALSE(activity({}));
}
