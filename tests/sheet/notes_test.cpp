// Text of the coach's that is no drill: who it is for, tables, emphasis.
#include <set>

#include "sheet/typography.h"
#include "sheet_fixture.h"

using namespace chalkleaf;
using page::Role;
using plan::Note;
using sheet::Kind;
using support::make_sheet;
using support::words;

namespace {

Note note(const std::string& text, Note::For reader = Note::For::kAll) {
  Note out;
  out.words = words(text);
  out.reader = reader;
  return out;
}

Note row(const std::vector<std::string>& cells, bool head = false) {
  Note out;
  out.kind = Note::Kind::kTableRow;
  out.table_head = head;
  for (const std::string& cell : cells) {
    out.cells.push_back(words(cell));
    out.words.text += (out.words.text.empty() ? "" : " | ") + cell;
  }
  return out;
}

plan::Session with_steps(std::vector<Note> notes) {
  plan::Session session = support::session(1);
  for (Note& one : notes) session.parts[0].steps.emplace_back(std::move(one));
  return session;
}

/// The styles (faces) in which the words of a sheet stand.
std::vector<type::FaceId> faces_of(const support::Made& made, const std::string& text) {
  std::vector<type::FaceId> out;
  for (const page::Page& page : made.list.pages) {
    for (const page::Item& item : page.items) {
      const auto* run = std::get_if<page::TextItem>(&item);
      if (run != nullptr && run->text.find(text) != std::string::npos) out.push_back(run->face);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a note for the coach is on the card alone, one for the family on the home sheet alone") {
  plan::Session session = with_steps({note("Water."), note("Watch wrists.", Note::For::kCoach),
                                      note("Count aloud.", Note::For::kFamily)});
  session.introduction = {note("Hall keys.", Note::For::kCoach),
                          note("After school.", Note::For::kFamily)};
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[0]);
  drill.notes = {note("Spot the hips.", Note::For::kCoach), note("Bare feet.", Note::For::kFamily)};
  plan::Substitute substitute;
  substitute.kit = words("towel");
  substitute.name = words("Palms pressed");
  substitute.notes = drill.notes;
  drill.substitutes.push_back(substitute);

  const std::string card = make_sheet(Kind::kCoachCard, session, Paper::kA5).text();
  for (const char* said : {"Water.", "Watch wrists.", "Hall keys.", "Spot the hips."})
    CHECK_THAT(card, Catch::Contains(said));
  for (const char* hidden : {"Count aloud.", "After school.", "Bare feet."})
    CHECK_THAT(card, !Catch::Contains(hidden));
  const std::string home = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
  for (const char* said : {"Water.", "Count aloud.", "After school.", "Bare feet."})
    CHECK_THAT(home, Catch::Contains(said));
  for (const char* hidden : {"Watch wrists.", "Hall keys.", "Spot the hips."})
    CHECK_THAT(home, !Catch::Contains(hidden));
}

TEST_CASE("a part that is all for another reader leaves no heading behind") {
  plan::Session session = support::session(1);
  plan::Part part;
  part.title = words("Set-up");
  part.steps.emplace_back(note("Bars to chest height.", Note::For::kCoach));
  session.parts.push_back(part);
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA5).text(), Catch::Contains("Set-up"));
  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK_THAT(home.text(), !Catch::Contains("Set-up"));
  support::check_tree(home.list);
}

// The page, from 0, on which a text is painted.
std::size_t page_with(const support::Made& made, const std::string& text) {
  for (std::size_t i = 0; i < made.list.pages.size(); ++i) {
    support::Made one;
    one.list.pages.push_back(made.list.pages[i]);
    if (one.text().find(text) != std::string::npos) return i;
  }
  FAIL("no page has " << text);
  return 0;
}

TEST_CASE("the words that open a part stay with its first drill") {
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    std::set<std::size_t> pages;  // on which the part began
    for (int above = 1; above <= 24; ++above) {
      plan::Session session = support::session(above);
      plan::Part part;
      part.title = words("Bars");
      part.steps.emplace_back(note("Openingwords"));
      plan::Drill circle = support::drill("Strongcircle", support::hold(1, 20));
      circle.dose.reset();
      circle.circuit.emplace().work = Duration::seconds(20);
      for (int i = 1; i <= 6; ++i) {
        circle.stations.push_back(
            support::drill("Station number " + std::to_string(i), support::hold(1, 20)));
      }
      part.steps.emplace_back(std::move(circle));
      session.parts.push_back(std::move(part));
      const support::Made made = make_sheet(kind, session, Paper::kA5);
      INFO(above << " drills above");
      const std::size_t page = page_with(made, "Openingwords");
      CHECK(page_with(made, "Strongcircle") == page);
      pages.insert(page);
    }
    CHECK(pages.size() > 1);  // it has come to every place of a page
  }
}

TEST_CASE("a table stays a table") {
  const plan::Session session =
      with_steps({row({"Day", "What"}, true), row({"Mon", "shapes"}), row({"Fri", ""})});
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK(made.count(Role::kTable) == 1);
  CHECK(made.count(Role::kTableHead) == 1);
  CHECK(made.count(Role::kTableBody) == 1);
  CHECK(made.count(Role::kTableRow) == 3);
  CHECK(made.count(Role::kHeaderCell) == 2);
  CHECK(made.count(Role::kDataCell) == 4);  // an empty cell is a cell
  for (const page::Node& node : made.list.tree) {
    if (node.role == Role::kHeaderCell) CHECK(node.scope == page::HeaderScope::kColumn);
  }
  CHECK_THAT(made.text(), Catch::Contains("Day What Mon shapes Fri "));
  support::check_tree(made.list);
  // Columns stand at one edge: the cells of a column begin at the same place.
  std::vector<Length> edges;
  for (const page::Item& item : made.list.pages[0].items) {
    const auto* run = std::get_if<page::TextItem>(&item);
    if (run != nullptr && (run->text == "What" || run->text == "shapes"))
      edges.push_back(run->baseline.x);
  }
  REQUIRE(edges.size() == 2);
  CHECK(edges[0] == edges[1]);
}

TEST_CASE("a second head begins a second table; a head alone has no body to head") {
  const auto two = make_sheet(
      Kind::kHomeSheet,
      with_steps({row({"A", "B"}, true), row({"1", "2"}), row({"C", "D"}, true), row({"3", "4"})}),
      Paper::kA4);
  CHECK(two.count(Role::kTable) == 2);
  const auto head = make_sheet(Kind::kHomeSheet, with_steps({row({"A", "B"}, true)}), Paper::kA4);
  CHECK(head.count(Role::kTable) == 1);
  CHECK(head.count(Role::kTableHead) == 0);
  CHECK(head.count(Role::kHeaderCell) == 2);
  support::check_tree(head.list);
}

TEST_CASE(
    "a table with less room than it wants breaks its long cells; one too wide is set as lines") {
  const std::string sentence =
      "walk as quietly as you can to the end and back without looking at your feet";
  const plan::Session broken =
      with_steps({row({"Day", "What", "Why"}, true), row({"Mon", sentence, sentence})});
  const auto made = make_sheet(Kind::kHomeSheet, broken, Paper::kA5);
  CHECK(made.count(Role::kTable) == 1);
  CHECK(made.diagnostics.all().empty());
  support::check_inside_paper(made.list);

  std::vector<std::string> many;
  for (int i = 0; i < 14; ++i) many.push_back("Gleichgewicht" + std::to_string(i));
  const auto wide =
      make_sheet(Kind::kHomeSheet, with_steps({row(many, true), row(many)}), Paper::kA5);
  CHECK(wide.count(Role::kTable) == 0);
  CHECK_THAT(wide.text(), Catch::Contains("Gleichgewicht0 | Gleichgewicht1"));
  CHECK_THAT(wide.text(), Catch::Contains("Gleichgewicht13"));
  CHECK(wide.diagnostics.all().empty());
  support::check_inside_paper(wide.list);
}

TEST_CASE("a table longer than a page goes on on the next") {
  std::vector<Note> rows = {row({"Week", "Focus"}, true)};
  for (int i = 1; i <= 140; ++i)
    rows.push_back(row({std::to_string(i), "focus " + std::to_string(i)}));
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    const auto made = make_sheet(kind, with_steps(rows), Paper::kA5);
    CHECK(made.diagnostics.all().empty());
    CHECK(made.list.pages.size() >= 3);
    CHECK_THAT(made.text(), Catch::Contains("focus 140"));
    support::check_inside_paper(made.list);
    support::check_tree(made.list);
  }
}

TEST_CASE("what the coach set off is set off on the sheets, and stays one text") {
  Note said = note("Keep your *heels* down and the back **flat**.");
  said.words.text = "Keep your heels down and the back flat.";
  said.words.emphasis = {{10, 15, false}, {34, 38, true}};
  plan::Session session = with_steps({said});
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[0]);
  drill.cues = {words("long legs")};
  drill.cues[0].emphasis = {{0, 4, true}};

  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK_THAT(card.text(), Catch::Contains("Keep your heels down and the back flat."));
  // A note of the card is italic, so what is emphasised in it stands upright.
  const type::Fonts& fonts = support::test_fonts();
  const auto face = [&](const char* role, type::Weight weight, type::Slant slant) {
    return fonts.chain(*fonts.style(role, weight, slant)).front();
  };
  const auto upright = face("card", type::Weight::kRegular, type::Slant::kUpright);
  CHECK(faces_of(card, "heels") == std::vector{upright});
  CHECK(faces_of(card, "Keep your") ==
        std::vector{face("card", type::Weight::kRegular, type::Slant::kItalic)});
  CHECK(faces_of(card, "long") ==
        std::vector{face("card", type::Weight::kBold, type::Slant::kUpright)});
  CHECK(faces_of(card, "legs") == std::vector{upright});

  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK_THAT(home.text(), Catch::Contains("Keep your heels down and the back flat."));
  CHECK(faces_of(home, "flat") ==
        std::vector{face("home", type::Weight::kBold, type::Slant::kUpright)});
}

TEST_CASE("emphasis that does not fit its text is no harm") {
  Note odd = note("short");
  odd.words.emphasis = {{3, 99, true}, {1, 2, false}, {50, 40, true}};
  CHECK_THAT(make_sheet(Kind::kHomeSheet, with_steps({odd}), Paper::kA4).text(),
             Catch::Contains("short"));
}
