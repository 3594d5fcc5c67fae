// What there is a box for beside a drill: a gymnast, a set, a day, a week of the block.
#include <fmt/format.h>

#include <map>

#include "sheet_fixture.h"
#include "support/inspect.h"

using namespace chalkleaf;
using page::Role;
using plan::Ticks;
using sheet::Kind;
using support::make_sheet;
using support::words;
using Texts = std::vector<std::string>;

namespace {

plan::Session with_ticks(Ticks ticks) {
  plan::Session session = support::session(1);  // 2 sets, on Monday and Friday
  session.parts[0].steps.emplace_back(support::drill("Once", support::hold(1, 20)));
  session.parts[0].steps.emplace_back(support::drill("Four times", support::hold(4, 20)));
  session.ticks_card = plan::Sourced<Ticks>{ticks, {}};
  session.ticks_sheet = session.ticks_card;
  return session;
}

// What the boxes stand for that belong to a drill.
Texts boxes(const support::Made& made, const std::string& drill) {
  Texts out;
  for (const page::Node& node : made.list.tree) {
    if (node.role == Role::kForm && node.box_description.find(drill) != std::string::npos)
      out.push_back(node.box_description);
  }
  return out;
}

Texts boxes(Kind kind, const plan::Session& session, const std::string& drill) {
  const auto made = make_sheet(kind, session, kind == Kind::kCoachCard ? Paper::kA5 : Paper::kA4);
  CHECK(made.diagnostics.all().empty());
  support::check_tree(made.list);
  support::check_inside_paper(made.list);
  return boxes(made, drill);
}

// Every row of a table has as many cells as the table has columns (ISO 32000-1, 14.8.4.3.4).
void check_rows(const support::Made& made) {
  std::map<page::NodeId, int> columns;
  for (const page::Node& node : made.list.tree) {
    if (node.role == Role::kDataCell || node.role == Role::kHeaderCell)
      columns[node.parent] += std::max<int>(1, static_cast<int>(node.column_span));
  }
  REQUIRE_FALSE(columns.empty());
  for (const auto& [row, count] : columns) CHECK(count == columns.begin()->second);
}

}  // namespace

TEST_CASE("a box a set: as many as the drill has, none where it has no more") {
  const plan::Session session = with_ticks({Ticks::Each::kSet, 0});
  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK(boxes(card, "Four times") ==
        Texts{"Tick box: Set 1, Four times", "Tick box: Set 2, Four times",
              "Tick box: Set 3, Four times", "Tick box: Set 4, Four times"});
  CHECK(boxes(card, "Once") == Texts{"Tick box: Set 1, Once"});
  CHECK_THAT(card.text(), Catch::Contains("a box each set"));
  CHECK_THAT(card.text(), Catch::Contains("Bar shapes") && Catch::Contains(" 1 2 3 4 "));
  check_rows(card);
  CHECK(boxes(Kind::kHomeSheet, session, "Once") ==
        Texts{"Tick box: Once, Monday", "Tick box: Once, Friday"});
  const Texts four = boxes(Kind::kHomeSheet, session, "Four times");
  CHECK(four.size() == 8);
  CHECK(four.at(5) == "Tick box: Four times, set 2, Friday");
  CHECK_THAT(make_sheet(Kind::kHomeSheet, session, Paper::kA4).text(),
             Catch::Contains("A box for each set"));
}

TEST_CASE("of very many sets only that all were done is ticked") {
  plan::Session session = with_ticks({Ticks::Each::kSet, 0});
  session.parts[0].steps.emplace_back(support::drill("Too many", support::hold(21, 5)));
  CHECK(boxes(Kind::kCoachCard, session, "Too many") == Texts{"Tick box: Set 1, Too many"});
  CHECK(boxes(Kind::kHomeSheet, session, "Too many").size() == 2);
}

TEST_CASE("a box a day on the card too") {
  plan::Session session = with_ticks({Ticks::Each::kDay, 0});
  CHECK(boxes(Kind::kCoachCard, session, "Once") ==
        Texts{"Tick box: Monday, Once", "Tick box: Friday, Once"});
  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK_THAT(card.text(), Catch::Contains("a box each day") && Catch::Contains("Mon Fri"));
  check_rows(card);
  CHECK(boxes(Kind::kHomeSheet, session, "Once").size() == 2);
  session.repeat.clear();  // numbered days
  CHECK(boxes(Kind::kCoachCard, session, "Once").size() == 3);
}

TEST_CASE("a box a day for every week of the block") {
  for (const int weeks : {2, 6, 12}) {
    INFO(weeks << " weeks");
    plan::Session session = with_ticks({Ticks::Each::kWeek, weeks});
    const auto n = static_cast<std::size_t>(weeks);
    const Texts card = boxes(Kind::kCoachCard, session, "Once");
    REQUIRE(card.size() == n);
    CHECK(card.back() == fmt::format("Tick box: Week {}, Once", weeks));
    const Texts sheet = boxes(Kind::kHomeSheet, session, "Once");
    REQUIRE(sheet.size() == n * 2);
    CHECK(sheet.front() == "Tick box: Once, Week 1, Monday");
    CHECK(sheet.back() == fmt::format("Tick box: Once, Week {}, Friday", weeks));
    const std::string text = make_sheet(Kind::kHomeSheet, session, Paper::kA4).text();
    CHECK_THAT(text, Catch::Contains("Week 1 2") && !Catch::Contains("A box for each set"));
    // How hard it was is asked once a week.
    CHECK_THAT(text, Catch::Contains(fmt::format("W{} 0 1 2 3", weeks)) &&
                         !Catch::Contains("Mon 0 1 2 3"));
  }
}

TEST_CASE("many boxes of many days stay inside their panels, in every look") {
  plan::Session session = with_ticks({Ticks::Each::kSet, 0});
  session.repeat.clear();
  for (int day = 0; day < 7; ++day) session.repeat.push_back({static_cast<Weekday>(day), {}});
  for (const int sets : {6, 10, 12, 20}) {
    session.parts[0].steps.emplace_back(
        support::drill(fmt::format("{} sets", sets), support::hold(sets, 5)));
  }
  plan::Drill circuit = support::drill("Round and round", support::hold(1, 5));
  circuit.dose.reset();
  circuit.circuit = plan::Circuit{};
  circuit.circuit->rounds = 12;
  circuit.stations.push_back(support::drill("Hop", support::hold(1, 5)));
  session.parts[0].steps.emplace_back(circuit);
  for (const std::string& look : support::shipped_looks()) {
    const auto theme = support::shipped_look(look);
    for (const Paper paper : {Paper::kA4, Paper::kA5, Paper::kHalfLetter, Paper::kA5Landscape}) {
      INFO(look << " on " << paper_key(paper));
      const auto made = make_sheet(Kind::kHomeSheet, session, paper, {}, nullptr, theme.get());
      const std::size_t more = boxes(made, "20 sets").size();
      CHECK((more == 20 * 7 || more == 7));  // a box a day where they would fill the page
      CHECK(boxes(made, "10 sets").size() > 1);
      if (paper == Paper::kA4 && look == "classic") CHECK(more == 20 * 7);
      Insets margins = Insets::all(theme->home.margin.at(paper));
      margins.bottom = margins.bottom * 3 / 4;  // the foot stands lower
      for (const page::Flaw& flaw : page::inspect(made.list, support::test_fonts(), margins))
        FAIL_CHECK(page::describe(flaw));
    }
  }
}

TEST_CASE("a drill whose result is written in once a week is ticked each day all the same") {
  plan::Session session = with_ticks({Ticks::Each::kWeek, 6});
  plan::Drill measured = support::drill("Measured", support::hold(4, 20));
  measured.record = words("seconds");
  session.parts[0].steps.emplace_back(measured);
  CHECK(boxes(Kind::kHomeSheet, session, "Measured").size() == 6 * 2 + 6);
  CHECK_THAT(make_sheet(Kind::kHomeSheet, session, Paper::kA4).text(),
             Catch::Contains("Once a week, write down seconds"));
}

TEST_CASE("a result is written in where else a box would be ticked") {
  for (const auto each : {Ticks::Each::kSet, Ticks::Each::kDay, Ticks::Each::kWeek}) {
    plan::Session session = with_ticks({each, 6});
    plan::Drill measured = support::drill("Measured", support::hold(4, 20));
    measured.record = words("seconds");
    session.parts[0].steps.emplace_back(measured);
    const Texts card = boxes(Kind::kCoachCard, session, "Measured");
    for (const std::string& one : card) CHECK_THAT(one, Catch::StartsWith("Write in seconds: "));
    Texts fields = boxes(Kind::kHomeSheet, session, "Measured");
    std::erase_if(fields, [](const std::string& one) { return one.starts_with("Tick"); });
    CHECK(fields.size() == (each == Ticks::Each::kWeek ? 6 : 2));
    CHECK(card.size() == (each == Ticks::Each::kSet ? 4 : each == Ticks::Each::kWeek ? 6 : 2));
  }
}

TEST_CASE("a return slip counts every time the sheet is practised") {
  plan::Session session = with_ticks({Ticks::Each::kWeek, 6});
  session.printing.return_slip = plan::ReturnSlip{};
  CHECK_THAT(make_sheet(Kind::kHomeSheet, session, Paper::kA4).text(),
             Catch::Contains("Days practised, of 12"));
  session.ticks_sheet.reset();
  CHECK_THAT(make_sheet(Kind::kHomeSheet, session, Paper::kA4).text(),
             Catch::Contains("Days practised, of 2"));
}
