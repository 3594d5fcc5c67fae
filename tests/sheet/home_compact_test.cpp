// The usual home sheet: one sheet of paper, nothing dropped, marks that are read out as words.
#include "sheet_fixture.h"

using namespace chalkleaf;
using page::Role;
using sheet::Kind;
using support::make_sheet;
using support::words;

namespace {

plan::Session compact(int drills) {
  plan::Session out = support::session(drills);
  out.printing.layout = plan::SheetLayout::kCompact;
  return out;
}

plan::Drill& drill_of(plan::Session& session, std::size_t number) {
  return std::get<plan::Drill>(session.parts[0].steps[number]);
}

}  // namespace

TEST_CASE("twenty drills stand on one sheet of paper, both sides, never below 12 pt") {
  for (const int drills : {1, 8, 20}) {
    INFO(drills);
    const auto made = make_sheet(Kind::kHomeSheet, compact(drills), Paper::kA4);
    CHECK(made.diagnostics.all().empty());
    CHECK(made.list.pages.size() <= 2);
    CHECK(made.smallest() >= Length::pt(12));
    support::check_inside_paper(made.list);
    support::check_tree(made.list);
  }
  plan::Session roomy = compact(20);
  roomy.printing.layout = plan::SheetLayout::kRoomy;
  CHECK(make_sheet(Kind::kHomeSheet, roomy, Paper::kA4).list.pages.size() > 2);
}

TEST_CASE("the compact sheet drops nothing that the coach wrote, on any number of pages") {
  plan::Session session = compact(60);
  plan::Drill& drill = drill_of(session, 30);
  drill.harder.push_back(words("arms by the ears"));
  drill.uses.push_back({words("towel"), words("held tight")});
  drill.notes.push_back({plan::Note::Kind::kParagraph, words("watch the wrists")});
  drill.notes.push_back({plan::Note::Kind::kTableRow,
                         words("a b"),
                         plan::Note::For::kAll,
                         {words("cell one"), words("cell two")}});
  plan::Substitute substitute;
  substitute.kit = words("towel");
  substitute.name = words("Palms pressed together");
  substitute.dose = support::hold(3, 10);
  substitute.cues.push_back(words("press hard"));
  substitute.easier.push_back(words("one foot down"));
  drill.substitutes.push_back(substitute);
  session.introduction.push_back({plan::Note::Kind::kParagraph, words("Shapes become swings.")});
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK(made.diagnostics.all().empty());
  const std::string text = made.text();
  for (int i = 1; i <= 60; ++i)
    CHECK_THAT(text, Catch::Contains("Shape number " + std::to_string(i) + "!"));
  for (const char* said :
       {"Clear the floor.", "An adult stays.", "towel", "a bath towel", "Shapes become swings.",
        "Harder: arms by the ears", "With towel, held tight.", "watch the wrists", "cell one",
        "cell two", "No towel? Palms pressed together.", "press hard.", "Easier: one foot down",
        "How hard was it?", "Stop at once", "Who to ask", "does not replace your coach"}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
}

TEST_CASE("how much is said in few words, and a mark is read out as its word") {
  plan::Session session = compact(1);
  drill_of(session, 0).dose = support::hold(3, 20);
  drill_of(session, 0).dose->rest = Duration::seconds(20);
  drill_of(session, 0).dose->amount.held = true;
  const std::string text = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(text, Catch::Contains("Hold 20 seconds, 3 times. Rest 20."));
  CHECK_THAT(text, Catch::Contains("Easier: knees bent."));
}

TEST_CASE("warm-up and cool-down are ticked once, other drills each") {
  plan::Session session = compact(3);
  session.equipment.clear();
  const auto boxes = [&] {
    return make_sheet(Kind::kHomeSheet, session, Paper::kA4).count(Role::kForm);
  };
  // Two days: a box for each of three drills, two sentences to tick, two fields for the effort.
  CHECK(boxes() == 3 * 2 + 2 + 2);
  session.parts[0].role = plan::PartRole::kWarmUp;
  CHECK(boxes() == 2 + 2 + 2);
}

TEST_CASE("the compact sheet has its days' letters in the boxes, as few as tell them apart") {
  plan::Session session = compact(1);
  session.repeat = {{Weekday::kTuesday, {}}, {Weekday::kThursday, {}}, {Weekday::kSaturday, {}}};
  const std::string text = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  CHECK_THAT(text, Catch::Contains("Tu Th S"));
}

TEST_CASE("the compact sheet stands on every paper") {
  for (const Paper paper : {Paper::kA4, Paper::kA5, Paper::kA4Landscape, Paper::kLetter}) {
    const auto made = make_sheet(Kind::kHomeSheet, compact(12), paper);
    CHECK(made.diagnostics.all().empty());
    CHECK(made.smallest() >= Length::pt(12));
    support::check_inside_paper(made.list);
    support::check_tree(made.list);
  }
}
