// Sheets of sessions nobody would write, from a fixed row of seeds: whatever a plan holds, nothing
// lies on anything else and nothing leaves the page.
#include <random>

#include "sheet_fixture.h"
#include "support/inspect.h"
#include "support/random.h"

using namespace chalkleaf;
using sheet::Kind;
using support::make_sheet;
using support::words;

namespace {

class Maker {
 public:
  explicit Maker(unsigned seed) : engine_(seed) {}

  int below(int n) { return static_cast<int>(engine_() % static_cast<unsigned>(n)); }
  bool one_in(int n) { return below(n) == 0; }

  plan::Session session(plan::Place place) {
    plan::Session out = support::session(0, place);
    out.title = text(1 + below(8));
    if (one_in(2)) out.start = plan::Sourced<TimeOfDay>{TimeOfDay{Duration::minutes(1020)}, {}};
    out.gymnasts = plan::Sourced<int>{4 + below(21), {}};
    out.repeat.clear();
    for (int day = 0; day < below(8); ++day) out.repeat.push_back({static_cast<Weekday>(day), {}});
    if (one_in(2)) {
      const auto each = static_cast<plan::Ticks::Each>(below(4));
      out.ticks_card = plan::Sourced<plan::Ticks>{{each, 2 + below(11)}, {}};
      out.ticks_sheet = out.ticks_card;
    }
    for (int i = below(9); i > 0; --i)
      out.equipment.push_back({text(1 + below(2)), text(below(9))});
    for (int i = below(4); i > 0; --i) out.safety.push_back({text(9), {text(9), text(3)}});
    for (int i = below(3); i > 0; --i) out.introduction.push_back(note());
    out.parts.clear();
    int drills = below(61);
    while (drills > 0) {
      plan::Part part;
      part.title = text(1 + below(5));
      for (int n = std::min(drills, 1 + below(25)); n > 0; --n, --drills) add_step(part);
      if (one_in(4)) part.safety.push_back({text(6), {text(6)}});
      out.parts.push_back(std::move(part));
    }
    if (out.parts.empty()) out.parts.emplace_back().title = text(1);
    return out;
  }

 private:
  // Short words mostly, now and then one as other languages have them.
  std::string word() {
    constexpr const char* kLong[] = {"Gleichgewichtsübungsvorbereitungsstunde", "WWWWWWWWMMMMMM",
                                     "Schwebebalkenabgangsvorübung", "jjjggqyppÅÉ"};
    if (one_in(25)) return kLong[below(4)];
    std::string out;
    for (int n = 1 + below(9); n > 0; --n) out += static_cast<char>('a' + below(26));
    return out;
  }
  plan::Words text(int count) {
    std::string out;
    for (int i = 0; i < count; ++i) out += (i == 0 ? "" : " ") + word();
    return words(out);
  }

  plan::Note note() {
    plan::Note out;
    out.words = text(1 + below(20));
    if (one_in(4)) out.kind = plan::Note::Kind::kSubheading;
    if (one_in(4)) out.kind = plan::Note::Kind::kListItem;
    if (one_in(5)) {
      out.kind = plan::Note::Kind::kPicture;
      out.picture = "/c/pictures/a.png";
      out.picture_width = 1 + below(2000);
      out.picture_height = 1 + below(2000);
    }
    return out;
  }

  void add_table(plan::Part& part) {
    const int columns = 1 + below(5);
    for (int row = 0; row < 2 + below(6); ++row) {
      plan::Note line;
      line.kind = plan::Note::Kind::kTableRow;
      line.table_head = row == 0;
      for (int i = 0; i < columns; ++i) line.cells.push_back(text(below(4)));
      part.steps.emplace_back(std::move(line));
    }
  }

  plan::Drill drill() {
    plan::Drill out;
    out.name = text(1 + below(4));
    if (!one_in(6)) out.dose = support::hold(1 + below(5), 5 + below(50));
    for (int i = below(4); i > 0; --i) out.cues.push_back(text(1 + below(12)));
    for (int i = below(3); i > 0; --i) out.easier.push_back(text(1 + below(10)));
    for (int i = below(3); i > 0; --i) out.harder.push_back(text(1 + below(10)));
    if (one_in(8)) out.notes.push_back(note());
    if (one_in(6)) out.record = text(1);
    if (one_in(6)) out.at = text(1);
    if (one_in(6)) out.uses.push_back({text(1), text(below(5))});
    if (one_in(10)) {
      plan::Substitute& other = out.substitutes.emplace_back();
      other.kit = text(1);
      other.name = text(2);
      other.cues.push_back(text(4));
    }
    return out;
  }

  void add_step(plan::Part& part) {
    if (one_in(10)) part.steps.emplace_back(note());
    if (one_in(20)) add_table(part);
    if (one_in(15)) {
      plan::KitMove move;
      move.way = one_in(2) ? plan::KitMove::Way::kPickUp : plan::KitMove::Way::kPutAway;
      move.kit = {text(1), text(1)};
      part.steps.emplace_back(std::move(move));
    }
    plan::Drill made = drill();
    if (one_in(12)) {
      made.dose.reset();
      made.circuit = plan::Circuit{};
      made.circuit->rounds = 1 + below(4);
      made.circuit->work = Duration::seconds(30);
      for (int n = 1 + below(9); n > 0; --n) made.stations.push_back(drill());
    }
    part.steps.emplace_back(std::move(made));
  }

  std::mt19937 engine_;
};

}  // namespace

TEST_CASE("nothing lies on anything else, whatever the plan holds") {
  int sheets = 0;
  for (unsigned seed = 0; seed < support::rounds(40); ++seed) {
    for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
      const plan::Place place =
          seed % 2 == 0 || kind == Kind::kHomeSheet ? plan::Place::kHome : plan::Place::kGym;
      const plan::Session session = Maker(seed).session(place);
      for (const Paper paper : {Paper::kA4, Paper::kA5}) {
        INFO("seed " << seed << (kind == Kind::kCoachCard ? " card" : " sheet")
                     << (paper == Paper::kA4 ? " a4" : " a5"));
        const auto made = make_sheet(kind, session, paper);
        // Where paper is dear they are three quarters, and the foot stands lower.
        Insets margins = Insets::all(support::classic_theme()->look(kind).margin.at(paper) * 3 / 4);
        margins.bottom = Length::mm(5);
        for (const page::Flaw& flaw : page::inspect(made.list, support::test_fonts(), margins))
          FAIL_CHECK(page::describe(flaw));
        support::check_tree(made.list);
        ++sheets;
      }
    }
  }
  CHECK(sheets == static_cast<int>(support::rounds(40)) * 4);
}

TEST_CASE("a line that is moved onto its neighbour is found on every sheet") {
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    auto made = make_sheet(kind, support::session(6), Paper::kA4);
    const auto flaws = [&] {
      return page::inspect(made.list, support::test_fonts(), Insets::all(Length::mm(5))).size();
    };
    CHECK(flaws() == 0);
    int moved = 0;
    for (page::Item& item : made.list.pages[0].items) {
      auto* text = std::get_if<page::TextItem>(&item);
      if (text == nullptr || text->text.find("long legs") == std::string::npos) continue;
      const Length back = text->baseline.y;
      text->baseline.y -= text->size;  // a line up, about
      CHECK(flaws() > 0);
      text->baseline.y = back;
      ++moved;
    }
    CHECK(moved > 0);
  }
}
