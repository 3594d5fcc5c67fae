#include "sheet_fixture.h"

using namespace chalkleaf;
using page::Role;
using sheet::Kind;
using support::make_sheet;

namespace {

plan::Session gym_session(int drills, int gymnasts) {
  plan::Session session = support::session(drills, plan::Place::kGym);
  session.start = plan::Sourced<TimeOfDay>{TimeOfDay{Duration::minutes(17 * 60)}, {}};
  session.slot = plan::Sourced<Duration>{Duration::minutes(30), {}};
  session.group_name = support::words("Kestrels");
  session.group = plan::Group{support::words("Kestrels"), plan::Sourced<int>{9, {}},
                              plan::Sourced<int>{11, {}}, plan::Sourced<int>{gymnasts, {}}};
  return session;
}

}  // namespace

TEST_CASE("a card says when, what, how much, how, and when it ends") {
  const auto made = make_sheet(Kind::kCoachCard, gym_session(3, 8), Paper::kA5);
  CHECK(made.diagnostics.all().empty());
  const std::string text = made.text();
  for (const char* said :
       {"Strong shapes", "Kestrels", "9–11 y · 8 gymnasts", "17:00–17:30", "Before you start",
        "Clear the floor. An adult stays.", "Kit", "towel – a bath towel", "Bar shapes",
        "Shape number 1!", "2 × 20 s", "long legs, proud chest", "Easier", "knees bent"}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
  // 3 × 40 s and two change-overs of 15 s: 2 min 30 s. The end is rounded up, the spare time down.
  CHECK_THAT(text, Catch::Contains("Ends 17:03, 27 min spare"));
  CHECK_THAT(text, Catch::Contains(", to 17:03"));  // the last part, with the session
  plan::Session unclocked = gym_session(3, 8);
  unclocked.start.reset();
  CHECK_THAT(make_sheet(Kind::kCoachCard, unclocked, Paper::kA5).text(),
             Catch::Contains(", to 2:30"));
  CHECK_THAT(text, Catch::Contains("17:01"));  // the third drill begins at 110 s
  CHECK_THAT(text, Catch::Contains(
                       "Alder Quay Gymnastics · Coach card · plan 4f2a91c · 26 November 2026"));
  CHECK_THAT(text, Catch::Contains("does not replace a qualified coach"));
}

TEST_CASE("what several parts say is printed once, and each part's own in one paragraph") {
  plan::Session session = gym_session(1, 8);
  session.parts.resize(1);
  session.parts.push_back(session.parts[0]);
  session.parts.push_back(session.parts[0]);
  session.parts[1].title = support::words("Vault");
  session.parts[2].title = support::words("Floor");
  const auto say = [](plan::Part& part, const std::string& sentence) {
    part.safety.push_back({support::words(sentence), {support::words(sentence)}});
  };
  say(session.parts[0], "Chalk off the hands.");
  say(session.parts[1], "Mats stay empty.");
  say(session.parts[1], "Coach at the side.");
  say(session.parts[2], "Coach at the side.");
  say(session.parts[1], "Call every turn.");
  const std::string text = make_sheet(Kind::kCoachCard, session, Paper::kA5).text();
  CHECK_THAT(text, Catch::Contains("Bar shapes: Chalk off the hands. Vault: Mats stay empty. Call "
                                   "every turn. Vault, Floor: Coach at the side."));
  CHECK(text.find("Coach at the side.") == text.rfind("Coach at the side."));
}

TEST_CASE("every gymnast has a number and every drill a box for each") {
  for (const int gymnasts : {1, 4, 8, 13, 24}) {
    const auto made = make_sheet(Kind::kCoachCard, gym_session(5, gymnasts), Paper::kA5);
    // One box a gymnast and drill, and one for the towel.
    CHECK(made.count(Role::kForm) == static_cast<std::size_t>(5 * gymnasts + 1));
    CHECK(made.count(Role::kTable) == 1);
    CHECK(made.count(Role::kTableRow) == 6);
    support::check_inside_paper(made.list);
    support::check_tree(made.list);
  }
}

TEST_CASE("only what a coach ticks off has boxes where the plan does not ask for more") {
  plan::Session session = gym_session(4, 8);
  session.equipment.clear();
  session.ticks_card.reset();
  const auto boxes = [&] {
    return make_sheet(Kind::kCoachCard, session, Paper::kA5).count(Role::kForm);
  };
  CHECK(boxes() == 0);
  const auto drill = [&](std::size_t i) -> plan::Drill& {
    return std::get<plan::Drill>(session.parts[0].steps[i]);
  };
  drill(0).name = support::words("Register and hall check");
  CHECK(boxes() == 8);
  drill(1).at = support::words("beam");
  CHECK(boxes() == 16);
  drill(2).record = support::words("seconds");
  CHECK(boxes() == 24);
  session.parts[0].role = plan::PartRole::kWarmUp;  // a beam to warm up on is not ticked off
  CHECK(boxes() == 16);
}

TEST_CASE("rows without boxes stand in columns, and no word of them is lost") {
  plan::Session session = gym_session(12, 8);
  session.ticks_card.reset();
  const auto made = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK(made.diagnostics.all().empty());
  CHECK(made.list.pages.size() == 1);  // twelve lines, one side
  CHECK(made.smallest() >= Length::pt(9));
  CHECK(made.count(Role::kTableRow) == 13);
  for (int i = 1; i <= 12; ++i)
    CHECK_THAT(made.text(), Catch::Contains("Shape number " + std::to_string(i) + "!"));
  support::check_inside_paper(made.list);
  support::check_tree(made.list);
}

TEST_CASE("each part is a table whose rows have as many columns as its head") {
  const auto made = make_sheet(Kind::kCoachCard, gym_session(4, 6), Paper::kA4);
  std::vector<int> width(made.list.tree.size());
  for (const page::Node& node : made.list.tree) {
    if (node.role == Role::kHeaderCell || node.role == Role::kDataCell)
      width[node.parent] += node.column_span;
  }
  for (std::size_t i = 0; i < made.list.tree.size(); ++i) {
    if (made.list.tree[i].role == Role::kTableRow) CHECK(width[i] == 3 + 6);
  }
}

TEST_CASE(
    "long plans flow on: no drill is lost, heads are repeated as artifacts, pages are numbered") {
  const auto made = make_sheet(Kind::kCoachCard, gym_session(80, 8), Paper::kA5);
  CHECK(made.diagnostics.all().empty());
  REQUIRE(made.list.pages.size() >= 3);
  const std::string text = made.text();
  for (int i = 1; i <= 80; ++i)
    CHECK_THAT(text, Catch::Contains("Shape number " + std::to_string(i) + "!"));
  CHECK_THAT(text, Catch::Contains("Bar shapes, continued"));
  CHECK_THAT(text, Catch::Contains("2 of " + std::to_string(made.list.pages.size())));
  CHECK(made.count(Role::kTable) == 1);
  CHECK(made.count(Role::kH2) == 3);  // the safety box, the kit, the part; not its repetitions
  support::check_inside_paper(made.list);
}

TEST_CASE("type is never smaller than 9 pt") {
  for (const Paper paper : {Paper::kA4, Paper::kA5}) {
    for (const int drills : {1, 12, 40}) {
      CHECK(make_sheet(Kind::kCoachCard, gym_session(drills, 8), paper).smallest() >=
            Length::pt(9));
    }
  }
}

TEST_CASE("a short card is set larger than a long one") {
  const auto title_size = [](const support::Made& made) {
    return std::get<page::TextItem>(made.list.pages.front().items.front()).size;
  };
  CHECK(title_size(make_sheet(Kind::kCoachCard, gym_session(2, 8), Paper::kA5)) >
        title_size(make_sheet(Kind::kCoachCard, gym_session(30, 8), Paper::kA5)));
}

TEST_CASE("everything the coach wrote about a drill is printed") {
  plan::Session session = gym_session(1, 8);
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[0]);
  drill.harder.push_back(support::words("arms by the ears"));
  drill.uses.push_back({support::words("towel"), support::words("held tight")});
  drill.notes.push_back({plan::Note::Kind::kListItem, support::words("watch the wrists")});
  plan::Substitute substitute;
  substitute.kit = support::words("towel");
  substitute.name = support::words("Palms pressed together");
  substitute.dose = support::hold(3, 10);
  substitute.cues.push_back(support::words("press hard"));
  substitute.easier.push_back(support::words("one foot down"));
  drill.substitutes.push_back(substitute);
  session.parts[0].steps.emplace_back(
      plan::Note{plan::Note::Kind::kParagraph, support::words("Water here.")});
  session.parts[0].safety.push_back(
      {support::words("Mats under the beam."), {support::words("Mats under the beam.")}});
  session.introduction.push_back(
      {plan::Note::Kind::kParagraph, support::words("Shapes become swings.")});
  const auto made = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  const std::string text = made.text();
  for (const char* said :
       {"arms by the ears", "With", "held tight", "watch the wrists", "No towel?",
        "Palms pressed together", "3 × 10 s", "press hard", "one foot down", "Water here.",
        "Mats under the beam.", "Shapes become swings."}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
  support::check_tree(made.list);
}

TEST_CASE("a character no font has is reported, not printed as nothing") {
  plan::Session session = gym_session(1, 8);
  const Source source("p.md", "Dish \xF0\x9F\xA4\xB8");
  session.title = {"Dish \xF0\x9F\xA4\xB8", {&source, 0, 9}};
  const auto made = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  REQUIRE_FALSE(made.diagnostics.all().empty());
  CHECK(made.diagnostics.all()[0].name == "missing-glyph");
  CHECK_THAT(made.diagnostics.all()[0].message, Catch::Contains("U+1F938"));
  for (const page::Page& page : made.list.pages) {
    for (const page::Item& item : page.items) {
      if (const auto* run = std::get_if<page::TextItem>(&item)) {
        for (const type::Glyph& glyph : run->glyphs) CHECK(glyph.id != 0);
      }
    }
  }
}

TEST_CASE("a title of one long word is set smaller, not cut") {
  plan::Session session = gym_session(8, 8);
  session.title = support::words("Gleichgewichtsübungsvorbereitungsstundenplan");
  for (const Paper paper : {Paper::kA4, Paper::kA5}) {
    const auto made = make_sheet(Kind::kCoachCard, session, paper);
    CHECK(made.diagnostics.all().empty());
    CHECK_THAT(made.text(), Catch::Contains(session.title.text));
  }
}

TEST_CASE("the plan's own numbers of gymnasts and adults go before the group's") {
  plan::Session session = gym_session(2, 8);
  session.group->adults = plan::Sourced<int>{1, {}};
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA5).text(),
             Catch::Contains("9–11 y · 8 gymnasts · 1 adult "));
  session.gymnasts = plan::Sourced<int>{6, {}};
  session.adults = plan::Sourced<int>{2, {}};
  const auto made = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK_THAT(made.text(), Catch::Contains("9–11 y · 6 gymnasts · 2 adults"));
  CHECK(made.count(Role::kForm) == 2 * 6 + 1);
  // Without a group as well.
  session.group.reset();
  session.group_name = {};
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA5).text(),
             Catch::Contains("Strong shapes 6 gymnasts · 2 adults"));
}

TEST_CASE("a foot that takes more lines with more pages stays on the paper") {
  plan::Session session = gym_session(300, 8);
  session.title = support::words("A long title that fills its line of the foot to the very end");
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    const auto made = make_sheet(kind, session, Paper::kA5);
    REQUIRE(made.list.pages.size() >= 10);
    support::check_inside_paper(made.list);
  }
}

TEST_CASE("where paper is dear a heading says what all its drills have in common, once") {
  plan::Session session = gym_session(40, 8);
  for (plan::Step& step : session.parts[0].steps)
    std::get<plan::Drill>(step).dose->rest = Duration::seconds(25);
  const std::string text = make_sheet(Kind::kCoachCard, session, Paper::kA5).text();
  const auto count = [](const std::string& all, const std::string& part) {
    std::size_t out = 0;
    for (std::size_t at = all.find(part); at != std::string::npos; at = all.find(part, at + 1))
      ++out;
    return out;
  };
  CHECK(count(text, "rest 25 s") == 1);
  std::get<plan::Drill>(session.parts[0].steps[7]).dose->rest = Duration::seconds(30);
  CHECK(count(make_sheet(Kind::kCoachCard, session, Paper::kA5).text(), "rest 25 s") == 39);
}

TEST_CASE("thirty drills stand on one leaf, both sides, never below 9 pt") {
  const auto made = make_sheet(Kind::kCoachCard, gym_session(30, 8), Paper::kA5);
  CHECK(made.diagnostics.all().empty());
  CHECK(made.list.pages.size() == 2);
  CHECK(made.smallest() >= Length::pt(9));
  support::check_inside_paper(made.list);
  support::check_tree(made.list);
}
