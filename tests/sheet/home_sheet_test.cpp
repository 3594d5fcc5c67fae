#include "sheet_fixture.h"

using namespace chalkleaf;
using page::Role;
using sheet::Kind;
using support::make_sheet;

TEST_CASE("a home sheet says what to clear, what to do, how much, and when to stop") {
  const auto made = make_sheet(Kind::kHomeSheet, support::session(3), Paper::kA4);
  CHECK(made.diagnostics.all().empty());
  const std::string text = made.text();
  for (const char* said : {"Strong shapes",
                           "Monday, Friday",
                           "Grown-ups, before you start",
                           "Clear the floor.",
                           "An adult stays.",
                           "Stop if anything hurts",
                           "You need",
                           "a bath towel",
                           "Bar shapes",
                           "Shape number 1!",
                           "Hold for 20 seconds. Do it twice.",
                           "“long legs, proud chest”",
                           "Easier",
                           "knees bent",
                           "Mon",
                           "Fri",
                           "How hard was it?",
                           "When to stop",
                           "Who to ask",
                           "Ask your coach",
                           "does not replace your coach"}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
  support::check_tree(made.list);
  support::check_inside_paper(made.list);
}

TEST_CASE("a box for every drill and day, one for each thing to prepare") {
  const auto made = make_sheet(Kind::kHomeSheet, support::session(5), Paper::kA4);
  // 5 drills × 2 days; two safety sentences and the line about stopping; one piece of kit.
  CHECK(made.count(Role::kForm) == 5 * 2 + 3 + 1);
}

TEST_CASE("without practice days there are three boxes to tick; without kit it says so") {
  plan::Session session = support::session(1);
  session.repeat.clear();
  session.equipment.clear();
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK_THAT(made.text(), Catch::Contains("Day 3"));
  CHECK_THAT(made.text(), Catch::Contains("Only you and a clear floor."));
  CHECK(made.count(Role::kForm) == 3 + 3);
}

TEST_CASE("type is never smaller than 12 pt, on either paper") {
  for (const Paper paper : {Paper::kA4, Paper::kA5}) {
    for (const int drills : {1, 9, 40}) {
      const auto made = make_sheet(Kind::kHomeSheet, support::session(drills), paper);
      CHECK(made.smallest() >= Length::pt(12));  // UKAAF G003 (2019): clear print
      support::check_inside_paper(made.list);
    }
  }
}

TEST_CASE("headings go down one level at a time") {
  const auto made = make_sheet(Kind::kHomeSheet, support::session(4), Paper::kA4);
  int last = 0;
  for (const page::Node& node : made.list.tree) {
    const int level = node.role == Role::kH1   ? 1
                      : node.role == Role::kH2 ? 2
                      : node.role == Role::kH3 ? 3
                                               : 0;
    if (level == 0) continue;
    CHECK(level <= last + 1);
    last = level;
  }
  CHECK(made.count(Role::kH3) == 4);
}

TEST_CASE("a substitute is printed with its dose in plain words and its own easier choice") {
  plan::Session session = support::session(1);
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[0]);
  plan::Substitute substitute;
  substitute.kit = support::words("towel");
  substitute.name = support::words("Dish hold, palms pressed together");
  substitute.dose = support::hold(3, 10);
  substitute.easier.push_back(support::words("one foot down"));
  drill.substitutes.push_back(substitute);
  const std::string text = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(text, Catch::Contains("No towel?"));
  CHECK_THAT(text, Catch::Contains("Dish hold, palms pressed together."));
  CHECK_THAT(text, Catch::Contains("Hold for 10 seconds. Do it 3 times."));
  CHECK_THAT(text, Catch::Contains("one foot down"));
}
