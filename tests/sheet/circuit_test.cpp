// Circuits, choices, kit to move, waves and write-in boxes on both sheets.
#include "sheet/circuit_text.h"
#include "sheet_fixture.h"

using namespace chalkleaf;
using page::Role;
using sheet::Kind;
using support::make_sheet;
using support::words;

namespace {

plan::Circuit three_rounds() {
  plan::Circuit circuit;
  circuit.rounds = 3;
  circuit.work = Duration::seconds(30);
  circuit.rest = Duration::seconds(15);
  circuit.between = Duration::minutes(1);
  return circuit;
}

plan::Drill station(const std::string& name) {
  plan::Drill out;
  out.name = words(name);
  out.cues.push_back(words("cue of " + name));
  out.easier.push_back(words("easier " + name));
  out.harder.push_back(words("harder " + name));
  return out;
}

plan::Session with_circuit(std::size_t stations) {
  plan::Session session = support::session(1);
  plan::Drill circuit;
  circuit.name = words("Strong circle");
  circuit.circuit = three_rounds();
  circuit.cues.push_back(words("quality first"));
  for (std::size_t i = 1; i <= stations; ++i)
    circuit.stations.push_back(station("Station " + std::to_string(i) + "!"));
  session.parts[0].steps.emplace_back(std::move(circuit));
  return session;
}

plan::Drill& last_drill(plan::Session& session) {
  return std::get<plan::Drill>(session.parts[0].steps.back());
}

std::vector<std::string> descriptions(const support::Made& made) {
  std::vector<std::string> out;
  for (const page::Node& node : made.list.tree) {
    if (node.role == Role::kForm) out.push_back(node.box_description);
  }
  return out;
}

std::size_t fields(const support::Made& made) {
  std::size_t n = 0;
  for (const page::Node& node : made.list.tree) n += node.write_in ? 1 : 0;
  return n;
}

}  // namespace

TEST_CASE("a circuit in signs and in plain words") {
  const auto labels = support::english();
  const auto check = [&](const plan::Circuit& circuit, const char* signs, const char* plain) {
    CHECK(support::plain_spaces(short_circuit(circuit, *labels)) == signs);
    CHECK(support::plain_spaces(plain_circuit(circuit, *labels).whole()) == plain);
  };
  check(three_rounds(), "3 rounds · 30 s work, 15 s rest · 1 min between rounds",
        "Go round 3 times. Keep going for 30 seconds at each one. Rest 15 seconds before the next "
        "one. Rest 1 minute between rounds.");
  plan::Circuit counted;
  counted.rounds = 2;
  check(counted, "2 rounds", "Go round 2 times.");
  counted.rest = Duration::seconds(20);
  check(counted, "2 rounds · 20 s rest", "Go round 2 times. Rest 20 seconds before the next one.");
  plan::Circuit once = three_rounds();
  once.rounds = 1;  // then nothing is between rounds
  check(once, "1 round · 30 s work, 15 s rest",
        "Go round once. Keep going for 30 seconds at each one. Rest 15 seconds before the next "
        "one.");
}

TEST_CASE("a circuit is one row of the card, its stations a numbered list") {
  const auto made = make_sheet(Kind::kCoachCard, with_circuit(4), Paper::kA5);
  CHECK(made.diagnostics.all().empty());
  const std::string text = made.text();
  for (const char* said :
       {"Strong circle", "3 rounds · 30 s work, 15 s rest · 1 min between rounds", "quality first",
        "1 Station 1!", "cue of Station 1!", "easier Station 1!", "harder Station 1!",
        "4 Station 4!"}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
  CHECK(made.count(Role::kTableRow) == 4);  // the head, a drill, the circuit, its stations
  // One box a gymnast (8) for the drill and for the circuit, and one for the towel.
  CHECK(made.count(Role::kForm) == 8 + 8 + 1);
  std::size_t ordered = 0;
  for (const page::Node& node : made.list.tree) ordered += node.ordered ? 1 : 0;
  CHECK(ordered == 1);
  CHECK(made.count(Role::kListItem) == 4 + 1);
  support::check_tree(made.list);
  support::check_inside_paper(made.list);
}

TEST_CASE("a circuit of very many stations goes on on the next page") {
  for (const Paper paper : {Paper::kA4, Paper::kA5}) {
    for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
      const auto made = make_sheet(kind, with_circuit(60), paper);
      CHECK(made.diagnostics.all().empty());
      CHECK(made.list.pages.size() >= 2);
      for (int i = 1; i <= 60; ++i) {
        CHECK_THAT(made.text(), Catch::Contains("Station " + std::to_string(i) + "!"));
      }
      support::check_tree(made.list);
      support::check_inside_paper(made.list);
    }
  }
}

TEST_CASE("at home a circuit is a panel with a box for each round and day") {
  const auto made = make_sheet(Kind::kHomeSheet, with_circuit(5), Paper::kA4);
  CHECK(made.diagnostics.all().empty());
  const std::string text = made.text();
  for (const char* said :
       {"2 Strong circle", "Go round 3 times.", "1 Station 1!", "5 Station 5!",
        "“cue of Station 5!”", "Easier easier Station 5!", "A box for each round"}) {
    CHECK_THAT(text, Catch::Contains(said));
  }
  // The drill: 2 days. The circuit: 2 days × 3 rounds. Three safety lines, one piece of kit.
  CHECK(made.count(Role::kForm) == 2 + 6 + 3 + 1);
  CHECK_THAT(descriptions(made),
             Catch::VectorContains(std::string("Tick box: Strong circle, round 3, Friday")));
  CHECK(made.count(Role::kH3) == 2);  // stations are entries of a list, not headings
  support::check_tree(made.list);

  plan::Session long_one = with_circuit(2);
  last_drill(long_one).circuit->rounds = 40;  // too many boxes to tick: one a day
  CHECK(make_sheet(Kind::kHomeSheet, long_one, Paper::kA4).count(Role::kForm) == 2 + 2 + 3 + 1);
}

TEST_CASE("choices stand as written on the card, on lines of their own at home") {
  plan::Session session = support::session(1);
  plan::Drill drill =
      support::drill("Donkey kick or wall walk-up or wall handstand", support::hold(3, 10));
  drill.choices = {words("Donkey kick"), words("wall walk-up"), words("wall handstand")};
  session.parts[0].steps.emplace_back(std::move(drill));
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA4).text(),
             Catch::Contains("Donkey kick or wall walk-up or wall handstand"));
  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK_THAT(home.text(),
             Catch::Contains("2 Choose one easiest first Donkey kick or wall walk-up or wall "
                             "handstand Keep going for 10 seconds."));
  std::vector<Length> lines;
  for (const page::Item& item : home.list.pages[0].items) {
    const auto* run = std::get_if<page::TextItem>(&item);
    if (run != nullptr && (run->text == "Donkey kick" || run->text == "wall walk-up" ||
                           run->text == "wall handstand"))
      lines.push_back(run->baseline.y);
  }
  REQUIRE(lines.size() == 3);
  CHECK(lines[0] < lines[1]);
  CHECK(lines[1] < lines[2]);
  support::check_tree(home.list);
}

TEST_CASE("what is recorded has a field to write in") {
  plan::Session session = support::session(1);
  auto& drill = last_drill(session);
  drill.name = words("Half lever");
  drill.record = words("seconds");
  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK_THAT(card.text(), Catch::Contains("Record seconds"));
  CHECK(fields(card) == 8);
  CHECK_THAT(descriptions(card),
             Catch::VectorContains(std::string("Write in seconds: Gymnast 8, Half lever")));
  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA5);
  CHECK_THAT(home.text(), Catch::Contains("Write down seconds"));
  CHECK(fields(home) == 2);
  CHECK_THAT(descriptions(home),
             Catch::VectorContains(std::string("Write in seconds: Half lever, Friday")));
  // At least 8 mm high, for a figure in a child's hand (common practice, no source).
  std::size_t measured = 0;
  for (const page::Page& page : home.list.pages) {
    for (const page::Item& item : page.items) {
      const auto* path = std::get_if<page::PathItem>(&item);
      if (path == nullptr || !path->owner.node || !home.list.tree[*path->owner.node].write_in)
        continue;
      Length top = Length::pt(10'000);
      Length bottom;
      for (const page::PathStep& step : path->steps) {
        if (step.kind == page::PathStep::Kind::kClose) continue;
        top = std::min(top, step.a.y);
        bottom = std::max(bottom, step.a.y);
      }
      CHECK(bottom - top >= Length::mm(8));
      ++measured;
    }
  }
  CHECK(measured == 2);
}

TEST_CASE("a station's result is recorded too") {
  plan::Session session = with_circuit(2);
  last_drill(session).stations[1].record = words("steps");
  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  CHECK(fields(card) == 8);
  support::check_tree(card.list);
  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK(fields(home) == 2);
  CHECK_THAT(descriptions(home),
             Catch::VectorContains(std::string("Write in steps: Station 2!, Monday")));
}

TEST_CASE("kit to fetch and to put away has a line of its own") {
  plan::Session session = support::session(1);
  plan::KitMove fetch;
  fetch.kit = {words("hoops"), words("cones"), words("a rope")};
  fetch.how = words("two each");
  plan::KitMove away;
  away.way = plan::KitMove::Way::kPutAway;
  away.verb = words("Clear away");
  away.kit = {words("hoops")};
  away.time = Duration::minutes(1);
  auto& steps = session.parts[0].steps;
  steps.insert(steps.begin(), fetch);
  steps.emplace_back(away);
  const auto card = make_sheet(Kind::kCoachCard, session, Paper::kA4);
  CHECK_THAT(card.text(), Catch::Contains("0:00 Pick up: hoops, cones, a rope, two each"));
  CHECK_THAT(card.text(), Catch::Contains("Clear away: hoops 1 min"));
  CHECK(card.count(Role::kTableRow) == 4);
  support::check_tree(card.list);
  const auto home = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK_THAT(home.text(), Catch::Contains("Now fetch: hoops, cones, a rope, two each"));
  CHECK_THAT(home.text(), Catch::Contains("Clear away: hoops 1 minute"));
  support::check_tree(home.list);

  // What the coach does with it is not the same as fetching it.
  std::get<plan::KitMove>(steps.front()).verb = words("Set out");
  CHECK_THAT(make_sheet(Kind::kHomeSheet, session, Paper::kA4).text(),
             Catch::Contains("Set out: hoops, cones, a rope, two each"));
}

TEST_CASE("the card says where, and in how many waves") {
  plan::Session session = support::session(1, plan::Place::kGym);
  session.gymnasts = plan::Sourced<int>{8, {}};
  last_drill(session).at = words("beam");
  plan::Club club;
  plan::Station beam;
  beam.name = words("beam");
  beam.count = {3, {}};
  beam.takes = {1, {}};
  club.stations.push_back(beam);
  // Eight gymnasts and three beams: three, three and two.
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA4, club).text(),
             Catch::Contains("2 × 20 s at beam, 3 waves of 3"));
  club.stations[0].takes = {2, {}};  // room for six: two waves of four are fairer than six and two
  CHECK_THAT(make_sheet(Kind::kCoachCard, session, Paper::kA4, club).text(),
             Catch::Contains("at beam, 2 waves of 4"));
  club.stations[0].takes = {4, {}};
  const std::string text = make_sheet(Kind::kCoachCard, session, Paper::kA4, club).text();
  CHECK_THAT(text, Catch::Contains("at beam"));
  CHECK_THAT(text, !Catch::Contains("waves"));
}
