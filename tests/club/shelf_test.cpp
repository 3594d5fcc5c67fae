// The shelf that ships: src/club/shelf.h, and every drill of themes/shelf.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "base/text.h"
#include "club/drill_library.h"
#include "club/figures.h"
#include "club/shelf.h"
#include "plan/drill_names.h"
#include "support/memory_files.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

std::string shelf_folder() { return support::repository() + "/themes/shelf"; }

/// Every drill of the shelf, read in full.
const std::map<std::string, plan::LibraryDrill>& all_drills() {
  static const std::map<std::string, plan::LibraryDrill> read = [] {
    std::map<std::string, plan::LibraryDrill> out;
    const RealFileSystem files;
    const std::vector<FolderEntry> entries = files.list(shelf_folder()).value();
    for (const FolderEntry& entry : entries) {
      if (!entry.name.ends_with(".md") || entry.name == "README.md") continue;
      out.emplace(entry.name,
                  load_drill(files, join_path(shelf_folder(), entry.name), entry.name, nullptr));
    }
    return out;
  }();
  return read;
}

std::set<std::string> keys_of(const plan::LibraryDrill& drill) {
  std::set<std::string> out{plan::key_of_name(drill.name.text).key};
  for (const plan::Words& name : drill.also) out.insert(plan::key_of_name(name.text).key);
  return out;
}

bool is(const std::optional<plan::Sourced<bool>>& answer, bool value) {
  return answer && answer->value == value;
}

}  // namespace

TEST_CASE("the shelf has hundreds of drills, and every one reads without a message") {
  CHECK(all_drills().size() >= 600);
  for (const auto& [file, drill] : all_drills()) {
    INFO(file);
    CHECK(drill.found.all().empty());
  }
}

TEST_CASE("no two drills of the shelf share a name") {
  std::map<std::string, std::string> whose;
  for (const auto& [file, drill] : all_drills()) {
    for (const std::string& key : keys_of(drill)) {
      const auto [first, is_new] = whose.try_emplace(key, file);
      INFO(key << ": " << file << " and " << first->second);
      CHECK(is_new);
    }
  }
}

TEST_CASE("the names are found without reading YAML, all of them and no others") {
  const RealFileSystem files;
  const auto shelf = open_shelf(files, support::repository());
  REQUIRE(shelf != nullptr);
  std::map<std::string, std::set<std::string>> found;
  for (const plan::ShelfName& name : shelf->names()) {
    found[shelf->drill(name.drill).name.text].insert(std::string(name.key));
  }
  std::map<std::string, std::set<std::string>> expected;
  for (const auto& [file, drill] : all_drills()) expected[drill.name.text] = keys_of(drill);
  CHECK(found == expected);
  CHECK(std::is_sorted(
      shelf->names().begin(), shelf->names().end(),
      [](const plan::ShelfName& a, const plan::ShelfName& b) { return a.key < b.key; }));
}

TEST_CASE("names are taken from a pack that was made of these files, and damaged ones not missed") {
  MemoryFileSystem files;
  files.put("/data/themes/shelf/water.md", "---\ntitle: Water\nalso: drink, sip\n---\n");
  Diagnostics found;
  const auto all = pack_shelf(files, "/data", found);
  REQUIRE(all.size() == 2);  // the names, and the drill's front matter
  const auto made = *std::find_if(
      all.begin(), all.end(), [](const auto& entry) { return entry.second.starts_with("1\n"); });
  CHECK(made.second == "1\nwater.md\ndrink\tdrink\t0\nsip\tsip\t0\nwater\tWater\t0\n");
  const auto pack_of = [&](const std::string& names) {
    const auto bytes = std::make_shared<const std::string>(packed({{made.first, names}}));
    return std::make_shared<const Pack>(FileBytes{bytes, *bytes});
  };
  const std::string other = "1\nwater.md\nwater\tPuddle\t0\nrun\tRun\t7\nno line";
  const auto shelf = open_shelf(files, {"/data", pack_of(other)});
  REQUIRE(shelf->names().size() == 1);
  CHECK(shelf->names()[0].name == "Puddle");
  CHECK(shelf->drill(0).name.text == "Water");
  CHECK(shelf->drill(0).source->path() == "shelf/water.md");
  // Another file, and the pack is none of these files.
  files.put("/data/themes/shelf/run.md", "---\ntitle: Run\n---\n");
  CHECK(open_shelf(files, {"/data", pack_of(other)})->names().size() == 4);
  CHECK(open_shelf(files, {"/nowhere"}) == nullptr);
  CHECK(open_shelf(files, {}) == nullptr);
}

TEST_CASE("every drill of the shelf says what it loads, trains and is in plain words") {
  using plan::DrillKind;
  for (const auto& [file, drill] : all_drills()) {
    INFO(file);
    CHECK(drill.loads_none == drill.loads.empty());
    CHECK(drill.kind.value != DrillKind::kUnknown);
    CHECK(drill.level);
    CHECK_FALSE(drill.plain.empty());
    // A pause, a talk and clearing away train nothing.
    CHECK((drill.kind.value == DrillKind::kRest || !drill.trains.empty()));
    // Who jumps and hops loads a joint of the leg, and a landing is a load.
    const auto loads = [&all = drill.loads](std::string_view region) {
      return std::any_of(all.begin(), all.end(),
                         [&](const auto& one) { return one.first.text == region; });
    };
    if (drill.each.landings) CHECK(loads("landings"));
    if (drill.each.landings) CHECK((loads("hips") || loads("knees") || loads("ankles")));
    if (drill.each.hands) CHECK((loads("wrists") || loads("shoulders") || loads("elbows")));
    // What a coach teaches or spots is never for at home.
    if (is(drill.coach, true) || is(drill.spotter, true)) CHECK_FALSE(is(drill.home, true));
  }
}

TEST_CASE("the ladder of a drill has no rung twice, and none that is the drill") {
  for (const auto& [file, drill] : all_drills()) {
    INFO(file);
    std::set<std::string> rungs{lower_ascii(drill.name.text)};
    for (const auto* side : {&drill.easier, &drill.harder}) {
      for (const plan::Words& rung : *side) CHECK(rungs.insert(lower_ascii(rung.text)).second);
    }
    CHECK((drill.figure_easier.empty() || !drill.easier.empty()));
    CHECK((drill.figure_harder.empty() || !drill.harder.empty()));
    for (const plan::Substitute& one : drill.substitutes) CHECK_FALSE(one.easier.empty());
  }
}

TEST_CASE("every figure that the shelf names is in the catalogue") {
  const RealFileSystem files;
  Diagnostics found;
  const Figures figures = load_figures(files, support::repository(), "", "", found);
  const reason::FigureNames names = names_of(*figures.catalogue);
  for (const auto& [file, drill] : all_drills()) {
    INFO(file);
    Diagnostics wrong;
    reason::check_figures(drill, names, wrong);
    CHECK(wrong.all().empty());
  }
}
