// Finding drills: src/club/list_drills.h, in the shelf that ships.
#include "club/list_drills.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

class Notes final : public Listener {
 public:
  void found(const Diagnostic& diagnostic) override { said.push_back(diagnostic.message); }
  void problem(const std::string& sentence) override { said.push_back(sentence); }
  void progress(std::size_t, std::size_t) override {}
  std::vector<std::string> said;
};

const char* const kShelfDish =
    "---\ntitle: Dish hold\nalso: hollow hold, hollow body hold\nkind: shape\nlevel: 2\n"
    "loads: {back: 1}\ntrains: trunk, hips\nplain: Curl up.\n---\n";
const char* const kShelfBridge =
    "---\ntitle: Bridge\nalso: crab\nkind: shape\nlevel: 4\ncoach: yes\nloads: {wrists: 2}\n"
    "trains: shoulders\n---\n";
const char* const kShelfWalk =
    "---\ntitle: Beam walk\nalso: walk on the beam\nkind: balance\nlevel: 2\nat: beam\nhome: no\n"
    "loads: none\ntrains: balance\nneeds: mats\n---\n";

struct DrillHall {
  MemoryFileSystem files;
  FixedEnvironment environment{std::map<std::string, std::string>{{"CHALKLEAF_DATA", "/data"}}};
  Notes listener;

  DrillHall() {
    files.put("/data/fonts/catalogue.yaml", "");
    files.put("/data/themes/classic.yaml", "");
    files.put("/data/themes/shelf/dish-hold.md", kShelfDish);
    files.put("/data/themes/shelf/bridge.md", kShelfBridge);
    files.put("/data/themes/shelf/beam-walk.md", kShelfWalk);
    files.put("/gym/notes.txt", "");
  }
  FoundDrills find(const std::vector<std::string>& words, const std::string& standing = "/gym") {
    return find_drills(words, standing, {files, environment, "/bin/chalkleaf", {}, {}}, listener);
  }
  std::string names(const std::vector<std::string>& words, const std::string& standing = "/gym") {
    const FoundDrills found = find(words, standing);
    if (found.one != nullptr) return "one: " + found.one->name.text;
    std::string out;
    for (const plan::LibraryDrill* drill : found.all) {
      out += (out.empty() ? "" : ", ") + drill->name.text;
    }
    return out;
  }
};

}  // namespace

TEST_CASE("drills are found by all the words, whatever each is about") {
  DrillHall hall;
  CHECK(hall.names({}) == "Beam walk, Bridge, Dish hold");
  CHECK(hall.names({"shape"}) == "Bridge, Dish hold");
  CHECK(hall.names({"level", "2"}) == "Beam walk, Dish hold");
  CHECK(hall.names({"gym"}) == "Beam walk, Bridge, Dish hold");
  CHECK(hall.names({"home"}) == "one: Dish hold");
  CHECK(hall.names({"mat"}) == "one: Beam walk");
  CHECK(hall.names({"wrist"}) == "one: Bridge");
  CHECK(hall.names({"level 2", "trunk"}) == "one: Dish hold");
  CHECK(hall.listener.said.empty());
}

TEST_CASE("a name is that drill, and a slip is answered with the name that was meant") {
  DrillHall hall;
  CHECK(hall.names({"hollow", "holds"}) == "one: Dish hold");
  CHECK(hall.names({"Walk on the beam"}) == "one: Beam walk");
  const FoundDrills none = hall.find({"hollow", "hodl"});
  CHECK(none.one == nullptr);
  CHECK(none.all.empty());
  CHECK(none.closest == "hollow hold");
}

TEST_CASE("in a club's folder its own drills are among them, joined with the shelf's") {
  DrillHall hall;
  hall.files.put("/club/club.yaml", "name: Ours\n");
  hall.files.put("/club/drills/dish.md", "---\ntitle: Dish hold\nlevel: 3\n---\n");
  hall.files.put("/club/drills/tide.md", "---\ntitle: High tide\nkind: game\n---\n");
  CHECK(hall.names({}, "/club") == "Beam walk, Bridge, Dish hold, High tide");
  const FoundDrills dish = hall.find({"hollow hold"}, "/club/drills");
  REQUIRE(dish.one != nullptr);
  CHECK(dish.one->level->value == 3);
  CHECK(dish.one->plain.text == "Curl up.");
  hall.files.put("/club/club.yaml", "name: Ours\nshelf: off\n");
  CHECK(hall.names({}, "/club") == "Dish hold, High tide");
}
