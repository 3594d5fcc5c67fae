// A shelf behind a club's own drills: src/plan/library.h and join_drills.h.
#include <catch2/catch.hpp>
#include <deque>

#include "plan/drill_names.h"
#include "plan/library.h"
#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;
using namespace chalkleaf::plan;

namespace {

LibraryDrill drill_of(const std::string& path, const std::string& text) {
  Diagnostics found;
  const SourcePtr source = source::load_text(path, text, found);
  LibraryDrill out = read_drill(source::read_document(source, found), found);
  INFO(path);
  CHECK(found.all().empty());
  return out;
}

/// A shelf made of texts, which counts what it is asked to read.
class TextShelf final : public ShelfSource {
 public:
  explicit TextShelf(const std::vector<std::string>& texts) {
    for (std::size_t i = 0; i < texts.size(); ++i) {
      drills_.push_back(drill_of("shelf/" + std::to_string(i) + ".md", texts[i]));
      add(drills_.back().name, i);
      for (const Words& name : drills_.back().also) add(name, i);
    }
    for (const auto& [key, name] : by_key_) names_.push_back({key, name.first, name.second});
  }
  const std::vector<ShelfName>& names() const override { return names_; }
  const LibraryDrill& drill(std::size_t index) const override {
    asked.push_back(index);
    return drills_[index];
  }
  mutable std::vector<std::size_t> asked;

 private:
  void add(const Words& name, std::size_t drill) {
    by_key_.try_emplace(key_of_name(name.text).key, std::pair{name.text, drill});
  }
  std::deque<LibraryDrill> drills_;
  std::map<std::string, std::pair<std::string, std::size_t>> by_key_;
  std::vector<ShelfName> names_;
};

const char* const kDish =
    "---\ntitle: Dish hold\nalso: hollow hold\nkind: shape\nlevel: 2\nloads: {back: 1}\n"
    "trains: trunk\neffort: 5\nlongest: 20 s\nfigure: dish\nfigure-easier: tuck dish\n"
    "figure-harder: long dish\nplain: A curved shape.\nneeds: mats\n---\n\n"
    "- cue: back flat\n- easier: knees bent\n- harder: arms by the ears\n"
    "- without mats: Dish hold on a rug\n  - easier: knees bent\n\n> **Safety.** On something "
    "soft.\n";
const char* const kArch = "---\ntitle: Arch hold\nkind: shape\n---\n";
const char* const kHalfTurn = "---\ntitle: Half turn\nkind: turn\nfigure: a\n---\n";
const char* const kBeamTurn =
    "---\ntitle: Beam half turn\nalso: half turn on the beam\nkind: turn\nat: beam\n---\n";
const char* const kSplits = "---\ntitle: Front splits\nalso: splits\nkind: stretch\n---\n";

std::shared_ptr<const TextShelf> shelf() {
  return std::make_shared<const TextShelf>(
      std::vector<std::string>{kDish, kArch, kHalfTurn, kBeamTurn, kSplits});
}

DrillBook book_with(const std::vector<std::string>& own,
                    std::shared_ptr<const ShelfSource> behind) {
  std::vector<LibraryDrill> drills;
  for (const std::string& text : own) drills.push_back(drill_of("drills/own.md", text));
  Diagnostics found;
  DrillBook out(std::move(drills), found, std::move(behind));
  CHECK(found.all().empty());
  return out;
}

std::string name_found(const DrillBook& book, std::string_view name, std::string_view where = {}) {
  const LibraryDrill* found = book.find(name, where);
  return found == nullptr ? "" : found->name.text;
}

}  // namespace

TEST_CASE("without drills of a club, those of the shelf are found, and only they are read") {
  const auto behind = shelf();
  const DrillBook book = book_with({}, behind);
  CHECK_FALSE(book.empty());
  CHECK_FALSE(book.has_own());
  CHECK(behind->asked.empty());
  CHECK(name_found(book, "Hollow holds") == "Dish hold");
  CHECK(behind->asked == std::vector<std::size_t>{0});
  CHECK(name_found(book, "Kangaroo") == "");
}

TEST_CASE("a club's drill takes key by key what it leaves out") {
  const DrillBook book =
      book_with({"---\ntitle: Dish hold\nlevel: 3\n---\n\n- cue: make a banana\n"}, shelf());
  const LibraryDrill* dish = book.find("Dish hold");
  REQUIRE(dish != nullptr);
  CHECK(dish->level->value == 3);
  REQUIRE(dish->cues.size() == 1);
  CHECK(dish->cues[0].text == "make a banana");
  CHECK(dish->kind.value == DrillKind::kShape);
  CHECK(dish->figure.text == "dish");
  CHECK(dish->figure_easier.text == "tuck dish");
  REQUIRE(dish->easier.size() == 1);
  CHECK(dish->easier[0].text == "knees bent");
  CHECK(dish->longest->value == Duration::seconds(20));
  CHECK(dish->loads.size() == 1);
  CHECK(dish->safety.size() == 1);
  CHECK(dish->substitutes.size() == 1);
  CHECK(dish->source->path() == "drills/own.md");
  CHECK(dish->shelf_source->path() == "shelf/0.md");
  // The shelf's other names lead to it as well.
  CHECK(book.find("Hollow hold") == dish);
}

TEST_CASE("what shows a line that the club has written otherwise is not taken") {
  const DrillBook own_rung =
      book_with({"---\ntitle: Dish hold\nneeds: wedge\n---\n\n- easier: one foot down\n"}, shelf());
  const LibraryDrill* dish = own_rung.find("Dish hold");
  CHECK(dish->figure_easier.empty());
  CHECK(dish->figure_harder.text == "long dish");
  CHECK(dish->substitutes.empty());  // it is for mats, which this one does not need
  const DrillBook own_figure = book_with({"---\ntitle: Dish hold\nfigure: ours\n---\n"}, shelf());
  CHECK(own_figure.find("Dish hold")->figure.text == "ours");
  CHECK(own_figure.find("Dish hold")->figure_harder.empty());
  const DrillBook no_loads = book_with({"---\ntitle: Dish hold\nloads: none\n---\n"}, shelf());
  CHECK(no_loads.find("Dish hold")->loads.empty());
  CHECK(no_loads.find("Dish hold")->loads_none);
}

TEST_CASE("a club's drill that says so, or is of another kind, takes nothing") {
  const DrillBook off = book_with({"---\ntitle: Dish hold\nshelf: off\n---\n"}, shelf());
  CHECK(off.find("Dish hold")->figure.empty());
  CHECK(off.find("Hollow hold")->figure.text == "dish");  // still the shelf's
  const DrillBook game = book_with({"---\ntitle: Dish hold\nkind: game\n---\n"}, shelf());
  CHECK(game.find("Dish hold")->figure.empty());
  CHECK(game.find("Hollow hold")->kind.value == DrillKind::kShape);
}

TEST_CASE("a name that apparatus share is that of the part's apparatus") {
  const DrillBook book = book_with({}, shelf());
  CHECK(name_found(book, "Half turn") == "Half turn");
  CHECK(name_found(book, "Half turn", "Floor") == "Half turn");
  CHECK(name_found(book, "Half turn", "Beam") == "Beam half turn");
  CHECK(name_found(book, "Half turns", "Low beam, 15 min") == "Beam half turn");
  CHECK(name_found(book, "Half turn", "Beam and floor") == "Half turn");
  CHECK(name_found(book, "Half turn on a high beam", "") == "");
}

TEST_CASE("what changes the movement is no qualification") {
  const DrillBook book = book_with({}, shelf());
  CHECK(name_found(book, "Splits on the rug") == "Front splits");
  CHECK(name_found(book, "Splits, quietly") == "Front splits");
  CHECK(name_found(book, "Splits with foot on the bench") == "");
  CHECK(name_found(book, "Splits, front foot raised") == "");
  CHECK(name_found(book, "Dish hold with a weight") == "");
  CHECK(name_found(book, "Dish hold, eyes closed") == "");
  CHECK(name_found(book, "Dish hold blindfold") == "");
  CHECK(name_found(book, "Half turn, jump") == "");
}

TEST_CASE("only a slip of the pen is close to a name of the shelf") {
  const DrillBook book = book_with({}, shelf());
  CHECK(book.closest("Dsh hold") == "Dish hold");
  CHECK_FALSE(book.closest("Fish roll"));
  CHECK_FALSE(book.closest("Art hour"));
}

TEST_CASE("the keys of a drill that sums are made from are read") {
  const LibraryDrill drill =
      drill_of("drills/own.md",
               "---\ntitle: Bunny hop\nkind: support\ncoach: yes\nloads: {wrists: 2}\n"
               "trains: [support, Upper back]\neach: {hands: 1, landings: 2, inverted: 3 s}\n"
               "changeover: 20 s\neffort: 6\nlongest: 10 s\n---\n");
  CHECK(drill.coach->value);
  REQUIRE(drill.trains.size() == 2);
  CHECK(drill.trains[1].text == "upper back");
  CHECK(drill.each.hands->value == 1);
  CHECK(drill.each.landings->value == 2);
  CHECK(drill.each.inverted->value == Duration::seconds(3));
  CHECK(drill.changeover->value == Duration::seconds(20));
  CHECK(drill.effort->value == 6);
  CHECK(drill.longest->value == Duration::seconds(10));
  CHECK_FALSE(drill.loads_none);
}
