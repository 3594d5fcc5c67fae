#include <fmt/format.h>

#include "plan/library.h"
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

TEST_CASE("what a home plan leaves unsaid, its sheet says, each with a box to tick") {
  plan::Session session = support::session(3);
  const auto before = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  session.unsaid = {true, true};
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  for (const char* said : {"A grown-up stays in the room the whole time.",
                           "Clear two big steps of floor in every direction."}) {
    CHECK_THAT(before.text(), !Catch::Contains(said));
    CHECK_THAT(made.text(), Catch::Contains(said));
  }
  CHECK(made.count(Role::kForm) == before.count(Role::kForm) + 2);
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

TEST_CASE("the library says in one sentence what a drill is, unless the plan does") {
  plan::LibraryDrill known;
  known.plain = support::words("Lie on your back like a shallow dish.");
  known.at = support::words("beam");
  plan::Session session = support::session(1);
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[0]);
  drill.known = &known;
  drill.at = known.at;
  const std::string text = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(text, Catch::Contains("Do it twice. Lie on your back like a shallow dish. “long"));
  // The station of the hall is inherited from the library: none of the family's.
  CHECK_THAT(text, !Catch::Contains("beam"));
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA5).text(),
             !Catch::Contains("shallow dish"));

  plan::Note same;
  same.words = known.plain;
  drill.notes.push_back(same);
  drill.at = support::words("doorway");
  const std::string again = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(again, Catch::Contains("At doorway"));
  const std::size_t first = again.find("shallow dish");
  CHECK(again.find("shallow dish", first + 1) == std::string::npos);
}

TEST_CASE("the club's words are explained, and its contacts named") {
  plan::Session session = support::session(1);
  std::get<plan::Drill>(session.parts[0].steps[0]).name = support::words("Dish hold");
  plan::Club club;
  club.words.push_back({support::words("dish"), support::words("a shallow curve")});
  club.words.push_back({support::words("salto"), support::words("a turn in the air")});
  club.contact = support::words("Ask your coach after class.");
  club.contacts.push_back({support::words("safeguarding"), support::words("Ask at the desk.")});
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4, club);
  CHECK_THAT(made.text(), Catch::Contains("Words on this sheet dish a shallow curve When to stop"));
  CHECK_THAT(made.text(), !Catch::Contains("salto"));
  CHECK_THAT(made.text(), Catch::Contains("Who to ask Ask your coach after class. Safeguarding: "
                                          "Ask at the desk."));
  support::check_tree(made.list);
  const std::string none = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(none, !Catch::Contains("Words on this sheet"));
}

TEST_CASE("a drill that no other stands beside has the whole row, and no page ends half empty") {
  const auto made = make_sheet(Kind::kHomeSheet, support::session(41), Paper::kA4);
  const std::string text = made.text();
  std::size_t at = 0;
  for (int i = 1; i <= 41; ++i) {  // each once, in order
    const std::string name = std::to_string(i) + " Shape number " + std::to_string(i) + "!";
    const std::size_t found = text.find(name, at);
    REQUIRE(found != std::string::npos);
    at = found + 1;
  }
  CHECK(made.count(Role::kH3) == 41);
  CHECK(made.count(Role::kForm) == 41 * 2 + 3 + 1);
  support::check_tree(made.list);
  for (std::size_t p = 0; p + 1 < made.list.pages.size(); ++p) {
    Length lowest;
    for (const page::Item& item : made.list.pages[p].items) {
      const auto* text_item = std::get_if<page::TextItem>(&item);
      if (text_item != nullptr && text_item->owner.node)
        lowest = std::max(lowest, text_item->baseline.y);
    }
    CHECK(lowest > paper_size(Paper::kA4).height * 3 / 4);
  }
}

TEST_CASE("a drill of more words than a page holds goes on in a second frame") {
  for (const std::size_t where : {0U, 3U, 6U}) {
    plan::Session session = support::session(7);
    auto& drill = std::get<plan::Drill>(session.parts[0].steps[where]);
    constexpr int kNotes = 60;
    for (int i = 1; i <= kNotes; ++i) {
      plan::Note note;
      note.words = support::words("note " + std::to_string(i) + " of many");
      drill.notes.push_back(note);
    }
    for (const Paper paper : {Paper::kA4, Paper::kA5}) {
      INFO("drill " << where + 1 << (paper == Paper::kA4 ? " on A4" : " on A5"));
      const auto made = make_sheet(Kind::kHomeSheet, session, paper);
      CHECK(made.diagnostics.all().empty());
      support::check_tree(made.list);
      support::check_inside_paper(made.list);
      const std::string text = made.text();
      std::size_t at = 0;
      const auto comes_next = [&](const std::string& words) {
        const std::size_t found = text.find(words, at);
        REQUIRE(found != std::string::npos);
        const std::size_t again = text.find(words, found + 1);
        if (again != std::string::npos)
          CHECK(text.substr(again + words.size(), 11) == ", continued");
        at = found + 1;
      };
      for (std::size_t i = 0; i < 7; ++i) {
        comes_next(fmt::format("{0} Shape number {0}!", i + 1));
        for (int n = 1; i == where && n <= kNotes; ++n) comes_next(fmt::format("note {} of", n));
      }
      CHECK(made.count(Role::kH3) == 7);
    }
  }
}
