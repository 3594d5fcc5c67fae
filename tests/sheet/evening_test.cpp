// What is printed for an evening of rotations besides its coach card.
#include "sheet/evening.h"

#include <catch2/catch.hpp>

#include "plan/table_row.h"
#include "sheet_fixture.h"

namespace chalkleaf::sheet {
namespace {

rota::Name name(const std::string& text) { return {text, {}}; }

/// Two groups, two stations, a break between the turns: A on vault, B on bars, then the other way.
struct Evening {
  plan::Club club;
  plan::Session session;
  reason::Timetable timetable;

  Evening() {
    session = support::session(0, plan::Place::kGym);
    session.title = support::words("Squad evening");
    session.ticks_card.reset();
    session.start = plan::Sourced<TimeOfDay>{{Duration::minutes(17 * 60 + 30)}, {}};
    session.adults = plan::Sourced<int>{2, {}};
    session.parts.clear();
    add_part("Warm-up", "Jog", {}, 15);
    add_part("Rotations", "", {}, 45);
    add_part("Vault", "Squat on", 1, 20);
    add_part("Bars", "Casts", 1, 20);
    add_part("Cool-down", "Slow walk", {}, 5);
    rota::Rotation grid;
    grid.form = rota::Rotation::Form::kWritten;
    grid.groups = {{name("Auks"), 5}, {name("Brents"), 4}};
    grid.stations = {{name("vault")}, {name("bars")}};
    grid.coaches = {{name("Lead coach"), {0}, {}}, {name("Assistant"), {}, {1}}};
    grid.turns = {{17 * 60 + 45, 20}, {18 * 60 + 10, 20}};
    grid.pauses = {{1, 18 * 60 + 5, 5, "water"}};
    grid.visits = {{0, 0, 0}, {0, 1, 1}, {1, 1, 0}, {1, 0, 1}};
    timetable = reason::timetable(session, club);
    timetable.rotations = {grid};
    timetable.seats = {{1, 0, std::nullopt}, {2, 0, 0}, {3, 0, 1}};
  }

  void add_part(const std::string& title, const std::string& drill,
                std::optional<std::size_t> station_of, int minutes) {
    plan::Part part;
    part.title = support::words(title);
    part.station_of = station_of;
    part.budget = plan::Sourced<Duration>{Duration::minutes(minutes), {}};
    plan::Dose goes;
    goes.amount.count = 5;
    if (!drill.empty()) {
      part.steps.emplace_back(support::drill(drill, goes));
      if (station_of) std::get<plan::Drill>(part.steps.back()).at = support::words("there");
    }
    session.parts.push_back(std::move(part));
  }

  Context context(Paper paper) const {
    static const auto theme = support::classic_theme();
    static const auto labels = support::english();
    return {*theme, *labels, club, paper, {}, {}, {}, "Chalkleaf", nullptr};
  }

  support::Made make(Kind kind, Paper paper) const {
    type::Typesetter typesetter(support::test_fonts());
    support::Made made;
    made.list = sheet::make(kind, session, timetable, context(paper), typesetter, made.diagnostics);
    return made;
  }
};

std::string row(const plan::Step& step) {
  std::string out;
  for (const plan::Words& cell : std::get<plan::Note>(step).cells) out += cell.text + "|";
  return out;
}

}  // namespace

TEST_CASE("a station's card says who comes when, and where each goes on to") {
  const Evening evening;
  const auto stations =
      sessions_of_stations(evening.session, evening.timetable, evening.context(Paper::kA5));
  REQUIRE(stations.size() == 2);
  const plan::Session& vault = stations[0]->session;
  CHECK(vault.title.text == "Vault");
  CHECK(vault.group_name.text == "Lead coach");
  REQUIRE(vault.parts.size() == 2);
  const auto& rows = vault.parts[0].steps;
  REQUIRE(rows.size() == 4);
  CHECK(row(rows[0]) == "Time|Group|Gymnasts|Goes on to|");
  CHECK(row(rows[1]) == "17:45–18:05|Auks|5|Bars|");
  CHECK(row(rows[2]) == "18:05|water|||");
  CHECK(row(rows[3]) == "18:10–18:30|Brents|4||");
  CHECK(plan::drills_of(vault.parts[1]).front()->name.text == "Squat on");
  CHECK(vault.ticks_card->value.count == 2);
  CHECK(stations[0]->timetable.start->since_midnight == Duration::minutes(17 * 60 + 45));
  CHECK(stations[0]->timetable.total == Duration::minutes(45));
  CHECK(stations[1]->session.group_name.text.empty());  // nobody stays there
}

TEST_CASE("a group's card has the evening in the order the group meets it") {
  const Evening evening;
  const auto groups =
      sessions_of_groups(evening.session, evening.timetable, evening.context(Paper::kA5));
  REQUIRE(groups.size() == 2);
  const plan::Session& second = groups[1]->session;
  CHECK(second.title.text == "Brents");
  CHECK(second.group_name.text == "Assistant");
  CHECK(second.gymnast_count() == 4);
  std::string order;
  for (const plan::Part& part : second.parts) order += part.title.text + " ";
  CHECK(order == "Warm-up The way round Bars Vault Cool-down ");
  CHECK(row(second.parts[1].steps[1]) == "17:45–18:05|Bars||");
  CHECK(row(second.parts[1].steps[3]) == "18:10–18:30|Vault|Lead coach|");
  CHECK(groups[1]->timetable.total == evening.timetable.total);
  CHECK(groups[1]->timetable.parts.back().start == evening.timetable.parts.back().start);
}

TEST_CASE("station cards are one document, each card whole and inside the paper") {
  const Evening evening;
  for (const Paper paper : {Paper::kA5, Paper::kA4, Paper::kLetter}) {
    const support::Made cards = evening.make(Kind::kStationCards, paper);
    CHECK(cards.diagnostics.all().empty());
    CHECK(cards.list.pages.size() == 4);
    support::check_inside_paper(cards.list);
    support::check_tree(cards.list);
    for (const char* each :
         {"Vault", "Bars", "Auks", "Brents", "18:10 Brents", "Squat on", "Casts"})
      CHECK(cards.text().find(each) != std::string::npos);
  }
}

TEST_CASE("the hall poster is one page that says who is where, in colours and in letters") {
  const Evening evening;
  const support::Made poster = evening.make(Kind::kHallPoster, Paper::kA4Landscape);
  CHECK(poster.diagnostics.all().empty());
  REQUIRE(poster.list.pages.size() == 1);
  support::check_inside_paper(poster.list);
  support::check_tree(poster.list);
  const std::string text = poster.text();
  CHECK(text.find("17:45 A Auks B Brents") != std::string::npos);
  CHECK(text.find("18:05 water") != std::string::npos);
  CHECK(text.find("18:10 B Brents A Auks") != std::string::npos);
  CHECK(text.find("Turns end 18:30") != std::string::npos);
  // To be read across a hall, the names are far larger than a card's.
  CHECK(poster.smallest() >= Length::pt(9));
  Length largest;
  for (const page::Item& item : poster.list.pages[0].items) {
    const auto* run = std::get_if<page::TextItem>(&item);
    if (run != nullptr && run->text == "Brents") largest = std::max(largest, run->size);
  }
  CHECK(largest >= Length::pt(24));
}

TEST_CASE("names with the same first letter get A and B; names that are letters get none") {
  Evening evening;
  evening.timetable.rotations[0].groups = {{name("Swifts"), 5}, {name("Swallows"), 4}};
  CHECK(evening.make(Kind::kHallPoster, Paper::kA4Landscape).text().find("A Swifts B Swallows") !=
        std::string::npos);
  evening.timetable.rotations[0].groups = {{name("1"), 5}, {name("2"), 4}};
  CHECK(evening.make(Kind::kHallPoster, Paper::kA4Landscape).text().find("17:45 1 2") !=
        std::string::npos);
}

TEST_CASE("groups that are called by colours have them") {
  Evening evening;
  const auto grounds = [&] {
    std::vector<std::string> out;
    const support::Made poster = evening.make(Kind::kHallPoster, Paper::kA4Landscape);
    for (const page::Item& item : poster.list.pages[0].items) {
      const auto* path = std::get_if<page::PathItem>(&item);
      if (path != nullptr && path->fill && contrast_ratio(*path->fill, kWhite) > 1.3)
        out.push_back(hex_text(*path->fill));
    }
    return out;
  };
  CHECK(grounds() == std::vector<std::string>{"#0072b2", "#e69f00", "#e69f00", "#0072b2"});
  evening.timetable.rotations[0].groups[0].colour = rota::NamedColour::kRed;
  evening.timetable.rotations[0].groups[1].colour = rota::NamedColour::kBlue;
  CHECK(grounds() == std::vector<std::string>{"#d55e00", "#0072b2", "#0072b2", "#d55e00"});
}

TEST_CASE("a rotation without a grid or a place in the plan has no cards") {
  Evening evening;
  CHECK(evenings_of(evening.timetable).size() == 1);
  evening.timetable.rotations[0].visits.clear();
  CHECK(grids_of(evening.timetable).empty());
  evening = Evening();
  evening.timetable.seats.resize(1);  // two stations without drills: a half changes with a half
  CHECK(grids_of(evening.timetable).empty());
  evening.timetable.rotations[0].stations.push_back({name("floor")});
  CHECK(grids_of(evening.timetable).size() == 1);
  CHECK(evenings_of(evening.timetable).empty());
  evening.timetable.seats.clear();
  CHECK(grids_of(evening.timetable).empty());
}

}  // namespace chalkleaf::sheet
