// Sums that are a lot: from where on, and what is said.
#include <catch2/catch.hpp>

#include "reason/load_limits.h"
#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::DrillKind;
using plan::LibraryDrill;

namespace {

LibraryDrill jumping(const std::string& name) {
  LibraryDrill out = known(name, DrillKind::kLanding);
  out.each.landings = plan::Sourced<int>{1, {}};
  return out;
}

std::string jumped(std::optional<int> age, std::int64_t first, std::int64_t second) {
  SessionMaker maker;
  if (age) maker.group(group("Wrens", *age, 6)).adults(2);
  return checked(framed(maker, s(60),
                        [&](SessionMaker& m) {
                          m.part("Jumps").drill("Frog hop", reps(1, first));
                          m.drill("Line hop", reps(1, second));
                        }),
                 {},
                 {known("Jog", DrillKind::kRaise), known("Sway", DrillKind::kMobilise),
                  jumping("Frog hop"), jumping("Line hop")});
}

}  // namespace

TEST_CASE("too much of a load: the lines that add most, and what to take out") {
  CHECK(jumped(6, 60, 60).empty());
  CHECK(jumped(6, 40, 81) ==
        "s.md:8:1: warning: 121 landings in the session of Wrens, and from 120 on it is a lot for "
        "the youngest [too-much-load]; do 1 less of ‘Line hop’ (81 now), or spread it over more "
        "days\n"
        "  Line hop: 81\n"
        "  Frog hop: 40\n");
  CHECK(jumped(6, 150, 160).find("take out ‘Line hop’ (160), and do less of ‘Frog hop’ (150)") !=
        std::string::npos);
}

TEST_CASE("too much of a load: older gymnasts bear more, and who is not known is not accused") {
  CHECK(jumped(9, 90, 90).empty());
  CHECK_FALSE(jumped(9, 90, 91).empty());
  CHECK(jumped(12, 150, 150).empty());
  CHECK_FALSE(jumped(12, 150, 151).empty());
  CHECK(jumped({}, 150, 150).empty());
  CHECK(jumped({}, 150, 151).find("of one gymnast") != std::string::npos);
}

TEST_CASE("limits: they grow with age and level, and a week allows more than a session") {
  for (const LoadLimit& row : load_limits()) {
    INFO(load_key(row.load) << " from " << row.from_age);
    CHECK(row.session > 0);
    CHECK(row.week >= row.session * 2);
    CHECK(row.week <= row.session * 5);
  }
  const auto of = [](int age, int level) {
    plan::Group out = group("Wrens", age, 6);
    out.level = plan::Sourced<int>{level, {}};
    return out;
  };
  for (const Load load : all_loads()) {
    const auto young = load_limit(load, of(6, 1));
    if (!young) {
      CHECK(load == Load::kEffort);  // Foster 1998 gives no cut-off that fits all
      continue;
    }
    CHECK(young->session < load_limit(load, of(9, 1))->session);
    CHECK(load_limit(load, of(9, 1))->session <= load_limit(load, of(9, 5))->session);
    CHECK(load_limit(load, of(9, 5))->session <= load_limit(load, of(13, 1))->session);
    CHECK(load_limit(load, of(13, 1))->session == load_limit(load, std::nullopt)->session);
  }
}
