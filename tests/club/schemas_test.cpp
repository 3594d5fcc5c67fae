// The JSON Schemas of examples/begin know what the readers know, no more and no less. That they are
// schemas at all (JSON Schema, draft 2020-12), and what they refuse, is for tests/schemas.py, which
// asks an independent validator.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>

#include "figure/arrows.h"
#include "figure/motion.h"
#include "figure/pose.h"
#include "plan/known_keys.h"
#include "plan/library.h"
#include "plan/values.h"
#include "reason/checks.h"
#include "sheet/theme.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::plan;

namespace {

using Json = nlohmann::json;
using Names = std::vector<std::string>;

Json schema(const std::string& name) {
  std::ifstream file(support::repository() + "/examples/begin/schemas/" + name + ".schema.json");
  REQUIRE(file);
  return Json::parse(file);
}

Names sorted(Names names) {
  std::sort(names.begin(), names.end());
  return names;
}
Names keys(const Json& object) {
  Names out;
  for (const auto& [key, value] : object.at("properties").items()) out.push_back(key);
  CHECK(object.at("additionalProperties") == false);
  return sorted(out);
}
Names known(KeyMap map) { return sorted(known_keys(map)); }

}  // namespace

TEST_CASE("each schema has the keys its reader knows") {
  const Json plan = schema("plan");
  const Json drill = schema("drill");
  const Json club = schema("club");
  CHECK(keys(plan) == known(KeyMap::kSession));
  CHECK(keys(drill) == known(KeyMap::kDrill));
  CHECK(keys(club) == known(KeyMap::kClub));
  CHECK(keys(drill.at("$defs").at("loads")) == known(KeyMap::kLoads));
  CHECK(keys(drill.at("properties").at("each")) == known(KeyMap::kEachRepetition));
  const Json& parts = club.at("$defs");
  CHECK(keys(parts.at("timings")) == known(KeyMap::kTimings));
  CHECK(keys(parts.at("group")) == known(KeyMap::kGroup));
  CHECK(keys(parts.at("station")) == known(KeyMap::kStation));
  CHECK(keys(parts.at("stock")) == known(KeyMap::kStock));
  CHECK(keys(parts.at("adult")) == known(KeyMap::kStaff));
  CHECK(keys(parts.at("limits")) == known(KeyMap::kLimits));
  CHECK(keys(plan.at("properties").at("fit").at("anyOf").at(1)) == known(KeyMap::kEachSheet));
  CHECK(keys(plan.at("properties").at("ticks").at("anyOf").at(1)) == known(KeyMap::kEachSheet));
  Names timings = known_keys(KeyMap::kTimings);
  timings.emplace_back("parts");  // of a plan alone
  CHECK(keys(plan.at("$defs").at("timings")) == sorted(timings));
}

TEST_CASE("the schema of looks has the colours, inks and papers there are") {
  const Json look = schema("look");
  Names colours;
  for (std::size_t i = 0; i < sheet::kUses; ++i)
    colours.emplace_back(sheet::use_name(static_cast<sheet::Use>(i)));
  CHECK(keys(look.at("properties").at("colours")) == sorted(colours));
  Names inks;
  for (std::size_t i = 0; i + 1 < figure::kInks; ++i)
    inks.emplace_back(sheet::ink_name(static_cast<figure::Ink>(i)));
  CHECK(keys(look.at("properties").at("figures")) == sorted(inks));
  const Json& of_a_sheet = look.at("$defs").at("sheet").at("properties");
  Names papers;
  for (const Paper paper : kPapers) papers.emplace_back(paper_key(paper));
  CHECK(keys(of_a_sheet.at("margin")) == sorted(papers));
  CHECK(keys(of_a_sheet.at("scale")) == sorted(papers));
  CHECK(of_a_sheet.at("text").at("properties").size() == sheet::kTextRoles);
}

TEST_CASE("the schemas offer the same kinds, checks and limits") {
  const Json drill = schema("drill").at("properties");
  CHECK(drill.at("kind").at("anyOf").at(0).at("enum").get<Names>() == kind_names());
  CHECK(drill.at("level").at("maximum") == kHighestLevel);
  CHECK(drill.at("effort").at("maximum") == kHighestEffort);
  const std::string trains = drill.at("trains").at("description");
  for (const std::string& thing : trained_things()) {
    CHECK(trains.find(thing) != std::string::npos);
  }
  const Json club = schema("club").at("$defs");
  CHECK(club.at("group").at("properties").at("size").at("maximum") == kLargestGroup);
  CHECK(club.at("group").at("properties").at("adults").at("maximum") == kMostAdults);
  CHECK(schema("drill").at("$defs").at("load").at("maximum") == kHeaviestLoad);
  Names adjustable;
  for (const reason::CheckInfo& check : reason::all_checks()) {
    if (check.adjustable) adjustable.emplace_back(check.name);
  }
  CHECK(sorted(club.at("check").at("enum").get<Names>()) == sorted(adjustable));
}

// Each name in an `enum` or a pattern is one the reader takes, and the other way round.
TEST_CASE("the schema of figures has the keys and names its reader knows") {
  const Json whole = schema("figure");
  const Json& parts = whole.at("$defs");
  CHECK(keys(whole) == Names{"family", "figures"});
  CHECK(keys(parts.at("figure")) == sorted(figure::figure_keys()));
  CHECK(keys(parts.at("joints")) == sorted(figure::joint_names()));
  CHECK(parts.at("joint").at("anyOf").at(0).at("enum").get<Names>() == figure::joint_names());
  CHECK(parts.at("part").at("anyOf").at(0).at("enum").get<Names>() == figure::part_names());
  CHECK(parts.at("thing").at("enum").get<Names>() == figure::prop_names());
  CHECK(parts.at("hand-place").at("anyOf").at(0).at("enum").get<Names>() == figure::target_names());
  CHECK(sorted(parts.at("travelling").at("enum").get<Names>()) ==
        sorted(figure::travelling_parts()));
  CHECK(sorted(parts.at("circling").at("enum").get<Names>()) == sorted(figure::circling_parts()));
  CHECK(sorted(parts.at("turning").at("enum").get<Names>()) == sorted(figure::turning_parts()));
}

TEST_CASE("the schema of figures gives a side to what has two") {
  const Json parts = schema("figure").at("$defs");
  const auto pattern = [](const Json& text) { return std::regex(text.get<std::string>()); };
  const std::regex bearing = pattern(parts.at("part").at("anyOf").at(1).at("pattern"));
  for (const std::string& name : figure::part_names()) {
    INFO(name);
    const bool limb = figure::is_limb(*figure::read_part(name));
    CHECK(std::regex_match("near " + name, bearing) == limb);
  }
  CHECK(std::regex_match("far foot", bearing));
  const Json& sided = parts.at("joints").at("patternProperties");
  REQUIRE(sided.size() == 1);
  const std::regex set(sided.begin().key());
  const std::regex giving = pattern(parts.at("joint").at("anyOf").at(1).at("pattern"));
  for (const std::string& name : figure::joint_names()) {
    const std::string one = "left " + name;
    INFO(one);
    CHECK(std::regex_match(one, set) == figure::read_joint_name(one).has_value());
    CHECK(std::regex_match(one, giving) == figure::read_joint_name(one).has_value());
  }
}
