// A group's week over all its plans.
#include "reason/group_week.h"

#include <catch2/catch.hpp>
#include <deque>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Place;

namespace {

/// Plans of one group, kept where their weeks can point at them.
class Plans {
 public:
  explicit Plans(int youngest) : group_(group("Kestrels", youngest, 8)) {}

  plan::Session& add(Place place, const std::string& date, Duration slot) {
    SessionMaker maker(place);
    maker.group(group_).slot(slot);
    maker.part("All").drill("Tag", hold(1, slot));
    Kept& kept = kept_.emplace_back();
    kept.session = maker.session();
    kept.session.title = {date.empty() ? "Every week" : date, {}};
    if (!date.empty()) kept.session.date = plan::Sourced<Date>{*parse_date(date), {}};
    return kept.session;
  }
  void repeat(plan::Session& session, std::initializer_list<Weekday> days) {
    for (const Weekday day : days) session.repeat.push_back({day, {}});
  }
  std::vector<GroupWeek> weeks(int effort = 5) {
    std::vector<WeekSession> all;
    for (Kept& kept : kept_) {
      kept.times = timetable(kept.session, {});
      LoadSums sum;
      sum.add(Load::kLandings, landings_);
      sum.add(Load::kEffort, kept.times.total.in_milliseconds() * effort);
      all.push_back(week_session(kept.session, kept.times, sum));
    }
    return group_weeks(all);
  }
  std::string said(int effort = 5) {
    Diagnostics found;
    const auto all = weeks(effort);
    for (const GroupWeek& week : all) check_week(week, found);
    std::string out;
    for (const Diagnostic& one : found.all())
      out += one.name + ": " + one.message + "; " + one.hint + "\n";
    return out;
  }
  void landings(std::int64_t n) { landings_ = n; }

 private:
  struct Kept {
    plan::Session session;
    Timetable times;
  };
  plan::Group group_;
  std::deque<Kept> kept_;
  std::int64_t landings_ = 0;
};

}  // namespace

TEST_CASE("a week begins on Monday, and has every plan on its days") {
  Plans plans(9);
  plans.add(Place::kGym, "2026-12-02", min(90));  // a Wednesday
  plans.add(Place::kGym, "2026-12-06", min(60));  // the Sunday
  plans.add(Place::kGym, "2026-12-07", min(60));  // the next Monday
  plans.landings(10);
  const auto weeks = plans.weeks();
  REQUIRE(weeks.size() == 2);
  CHECK(iso_text(weeks[0].first) == "2026-11-30");
  CHECK(weeks[0].gym_days.size() == 2);
  CHECK(weeks[0].gym_hours == min(150));
  CHECK(weeks[0].sum.of(Load::kLandings) == 20);
  CHECK(weeks[1].gym_days.size() == 1);
}

TEST_CASE("what repeats without a date is in each week of its group, and alone in none") {
  Plans plans(9);
  plans.repeat(plans.add(Place::kHome, "", min(20)), {Weekday::kTuesday, Weekday::kThursday});
  CHECK(plans.weeks().empty());
  plans.add(Place::kGym, "2026-12-02", min(60));
  const auto weeks = plans.weeks();
  REQUIRE(weeks.size() == 1);
  CHECK(weeks[0].gym_days.size() == 1);
  CHECK(weeks[0].days.size() == 3);
  CHECK(weeks[0].home_hours == min(40));
}

// Jayanthi et al. 2015, Am J Sports Med 43(4):794-801: more organised hours a week than years of
// age, odds ratio 2.07. National Athletic Trainers' Association 2019: the same number (value from
// memory).
TEST_CASE("no more hours in the gym than the youngest has years") {
  Plans plans(6);
  for (const char* day : {"2026-11-30", "2026-12-02", "2026-12-04"})
    plans.add(Place::kGym, day, min(120));
  CHECK(plans.said().empty());
  plans.add(Place::kGym, "2026-12-05", min(5));
  CHECK(plans.said() ==
        "too-many-hours: Kestrels are 6 h 5 min in the gym in the week from 2026-11-30, more hours "
        "than the youngest has years (6); take 5 min out of the week\n");
}

// National Athletic Trainers' Association 2019: two days a week off organised training (value from
// memory).
TEST_CASE("two days of the week are free of the gym") {
  Plans plans(13);
  plans.repeat(plans.add(Place::kGym, "2026-11-30", min(60)),
               {Weekday::kTuesday, Weekday::kWednesday, Weekday::kThursday, Weekday::kFriday});
  CHECK(plans.said().empty());
  plans.add(Place::kGym, "2026-12-05", min(60));
  CHECK(plans.said() ==
        "too-few-rest-days: Kestrels are in the gym on 6 days of the week from 2026-11-30; leave "
        "two days of the week free of the gym\n");
}

// AMSSM, AAP: one day off a week at least.
TEST_CASE("one day of the week is off; a light practice at home leaves it so") {
  Plans plans(13);
  plans.add(Place::kGym, "2026-11-30", min(60));
  plans.repeat(plans.add(Place::kHome, "", min(30)),
               {Weekday::kTuesday, Weekday::kWednesday, Weekday::kThursday, Weekday::kFriday,
                Weekday::kSaturday, Weekday::kSunday});
  CHECK(plans.said(5).find("have no day off in the week from 2026-11-30") != std::string::npos);
  CHECK(plans.said(2).empty());  // 60 effort-minutes
}

TEST_CASE("a week's loads add up over its days") {
  Plans plans(9);
  for (const char* day : {"2026-11-30", "2026-12-02", "2026-12-04"})
    plans.add(Place::kGym, day, min(60));
  plans.landings(166);
  CHECK(plans.said().empty());
  plans.landings(170);
  CHECK(
      plans.said().find("too-much-load: 510 landings in a week of Kestrels (from 2026-11-30), and "
                        "from 500 on it is a lot for 8 years and up; do 10 less of ‘2026-11-30’ "
                        "(170 now), or spread it over more days") != std::string::npos);
}
