// The week of a group and the cover of a booklet.
#include "sheet/week_sheet.h"

#include <catch2/catch.hpp>

#include "sheet/booklet_cover.h"
#include "sheet_fixture.h"

namespace chalkleaf::sheet {
namespace {

constexpr Date kMonday{2026, 11, 30};

struct Fixture {
  plan::Club club;
  std::vector<plan::Session> sessions;
  std::vector<reason::Timetable> timetables;

  Fixture() {
    club.name = support::words("Alder Quay Gymnastics");
    plan::Group group;
    group.name = support::words("Kestrels");
    group.youngest = plan::Sourced<int>{9, {}};
    group.oldest = plan::Sourced<int>{11, {}};
    group.size = plan::Sourced<int>{8, {}};
    club.groups.push_back(group);
    sessions.push_back(in_gym("Bar shapes", 17, {"hoops", "mats"}));
    sessions.push_back(in_gym("Landings", 11, {"Hoops", "cones"}));
    plan::Session home = support::session(3);
    home.title = support::words("Strong at home");
    home.slot = plan::Sourced<Duration>{Duration::minutes(35), {}};
    sessions.push_back(std::move(home));
    for (const plan::Session& session : sessions)
      timetables.push_back(reason::timetable(session, club));
  }

  static plan::Session in_gym(const std::string& title, int hour,
                              const std::vector<std::string>& kit) {
    plan::Session out = support::session(3, plan::Place::kGym);
    out.title = support::words(title);
    out.slot = plan::Sourced<Duration>{Duration::minutes(75), {}};
    out.start = plan::Sourced<TimeOfDay>{{Duration::minutes(hour * 60)}, {}};
    out.equipment.clear();
    for (const std::string& name : kit) out.equipment.push_back({support::words(name), {}});
    return out;
  }

  Context context(Paper paper) const {
    static const auto theme = support::classic_theme();
    static const auto labels = support::english();
    Context out{*theme, *labels, club, paper, {}, {}, {}, "Chalkleaf", nullptr};
    return out;
  }

  support::Made week(Paper paper = Paper::kA4Landscape) const {
    GroupWeek group;
    group.name = "Kestrels";
    group.group = &club.groups.front();
    // The later day first: the sheet sorts them.
    group.plans.push_back({&sessions[1], &timetables[1], {Date{2026, 12, 5}}});
    group.plans.push_back({&sessions[0], &timetables[0], {Date{2026, 12, 1}}});
    group.plans.push_back({&sessions[2], &timetables[2], {kMonday, Date{2026, 12, 4}}});
    type::Typesetter typesetter(support::test_fonts());
    support::Made made;
    made.list = week_sheet({group}, kMonday, context(paper), typesetter, made.diagnostics);
    return made;
  }
};

TEST_CASE("a week says who, when, what and with what, by day") {
  const Fixture fixture;
  const auto made = fixture.week();
  CHECK(made.diagnostics.all().empty());
  REQUIRE(made.list.pages.size() == 1);
  const std::string text = made.text();
  CHECK_THAT(text,
             Catch::Contains(
                 "Kestrels Mon 30 November 2026 to Sun 6 December 2026 · 9–11 y · 8 gymnasts"));
  CHECK_THAT(text, Catch::Contains("Tue 1 December 17:00–18:15 75 min Bar shapes"));
  CHECK_THAT(text, Catch::Contains("Sat 5 December 11:00–12:15 75 min Landings"));
  CHECK(text.find("Tue 1 Dec") < text.find("Sat 5 Dec"));
  CHECK_THAT(text, Catch::Contains("Strong at home 35 min 35 min"));
}

TEST_CASE("the kit of a week is every thing once, with its days") {
  const Fixture fixture;
  CHECK_THAT(fixture.week().text(),
             Catch::Contains("Kit for the week cones Sat hoops Tue, Sat mats Tue"));
}

TEST_CASE("a week is two tables with heads, and boxes to tick") {
  const Fixture fixture;
  const auto made = fixture.week();
  CHECK(made.count(page::Role::kTable) == 2);
  // Four columns and seven days and their corner; a row's head for each session and home plan.
  CHECK(made.count(page::Role::kHeaderCell) == 4 + 8 + 2 + 1);
  CHECK(made.count(page::Role::kDataCell) == 2 * 3 + 7);
  CHECK(made.count(page::Role::kForm) == 3);
  support::check_tree(made.list);
}

TEST_CASE("a week fits its page on every larger paper") {
  const Fixture fixture;
  for (const Paper paper : {Paper::kA4, Paper::kA4Landscape, Paper::kLetter,
                            Paper::kLetterLandscape, Paper::kA5Landscape}) {
    INFO(paper_key(paper));
    const auto made = fixture.week(paper);
    if (paper != Paper::kA5Landscape) CHECK(made.list.pages.size() == 1);
    CHECK(made.list.pages.front().size == paper_size(paper));
    CHECK(made.diagnostics.all().empty());
    support::check_inside_paper(made.list);
  }
}

TEST_CASE("a cover lists the sessions with their pages, and numbers do not move it") {
  const Fixture fixture;
  std::vector<BookletSession> sessions;
  for (std::size_t i = 0; i < 3; ++i) sessions.push_back({&fixture.sessions[i], 2 + i * 2});
  type::Typesetter typesetter(support::test_fonts());
  support::Made made;
  Context context = fixture.context(Paper::kA5);
  context.numbering = Numbering{1, 7};
  made.list = booklet_cover("Alder Quay Gymnastics", "Kestrels", sessions, context, typesetter,
                            made.diagnostics);
  CHECK(made.diagnostics.all().empty());
  REQUIRE(made.list.pages.size() == 1);
  const std::string text = made.text();
  CHECK_THAT(text, Catch::Contains("In this booklet Bar shapes 17:00 · in the gym 2 Landings"));
  CHECK_THAT(text, Catch::Contains("Strong at home at home 6"));
  CHECK_THAT(text, Catch::Contains("1 of 7"));
  support::check_tree(made.list);
  support::check_inside_paper(made.list);
}

}  // namespace
}  // namespace chalkleaf::sheet
