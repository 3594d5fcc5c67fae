// What a mistake in a shared file costs: the plans that need it, and no others.
#include "club/broken.h"
#include "support/places.h"

#include <catch2/catch.hpp>

#include "base/text.h"
#include "club/build.h"
#include "club/folders.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

class Nobody final : public Listener {
 public:
  void problem(const std::string& sentence) override { FAIL(sentence); }
  void found(const Diagnostic& one) override { text += one.name + ": " + one.message + "\n"; }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

std::string plan_with(const std::string& title, const std::string& line) {
  std::string out = gym_plan(title);
  out.replace(out.find("- Walk: 20 min"), 14, line);
  return out;
}

/// A club of three plans: one that needs nothing, one of the library's bridge, one with a figure of
/// the club's.
struct Club {
  explicit Club(const std::string& name) : folder(name) {
    folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
    folder.put("sessions/plain.md", gym_plan("Plain"));
    folder.put("sessions/bridge.md", plan_with("Bridge", "- Bridges: 20 min"));
    folder.put("sessions/star.md", plan_with("Star", "- Star shape: 20 min\n  - figure: our star"));
    folder.put("drills/bridge.md", "---\ntitle: Bridge\nkind: shape\n---\n\n- cue: long arms\n");
    folder.put("drills/dish-hold.md", "---\ntitle: Dish hold\nkind: shape\n---\n\n- cue: flat\n");
    folder.put("figures/own.yaml",
               "figures:\n  our star: {touches: feet}\n  our tree: {touches: feet}\n");
  }
  /// The plans that are printed, and what is said.
  enum class Out { kGone, kKept };
  std::string build(Out before = Out::kGone) {
    if (before == Out::kGone) std::filesystem::remove_all(folder / "out");
    const std::map<std::string, std::string> values{{"CHALKLEAF_DATA", support::repository()},
                                                    {"SOURCE_DATE_EPOCH", "1764600000"}};
    const FixedEnvironment environment(values);
    RealFileSystem files;
    Nobody nobody;
    Request request;
    request.standing = folder.str();
    summary = club::build(request, {files, environment, "/nowhere/chalkleaf"}, nobody);
    said = nobody.text;
    std::string out;
    for (const std::string name : {"plain", "bridge", "star"}) {
      if (folder.has("out/" + name + "-card.pdf")) out += name + " ";
    }
    return out;
  }
  TemporaryFolder folder;
  Summary summary;
  std::string said;
};

}  // namespace

TEST_CASE("broken: nothing is, and all is printed") {
  Club club("broken-none");
  CHECK(club.build() == "plain bridge star ");
  CHECK(club.summary.exit_code() == 0);
}

TEST_CASE("broken: a figure no plan has is told, and all plans are printed") {
  Club club("broken-unused-figure");
  club.folder.put("figures/own.yaml",
                  "figures:\n  our star: {touches: feet}\n  our tree: {touches: wings}\n");
  CHECK(club.build() == "plain bridge star ");
  CHECK(club.said.find("wings") != std::string::npos);
  CHECK(club.summary.exit_code() == 1);
}

TEST_CASE("broken: a figure keeps back the plan that has it, and those drawn from it") {
  Club club("broken-figure");
  for (const char* text : {"figures:\n  our star: {touches: wings}\n  our tree: {touches: feet}\n",
                           "figures:\n  our star: {from: our tree}\n  our tree: {touches: wings}\n",
                           "figures:\n  our star: {touches: feet}\n  our star: {touches: feet}\n",
                           "figures\n", "\xFF\xFE"}) {
    INFO(text);
    club.folder.put("figures/own.yaml", text);
    CHECK(club.build() == "plain bridge ");
    CHECK(club.summary.exit_code() == 1);
    CHECK(club.summary.failed == 1);
  }
}

TEST_CASE("broken: a drill keeps back the plan that has it") {
  Club club("broken-drill");
  club.folder.put("drills/bridge.md", "---\ntitle: Bridge\nkind: nonsense\n---\n");
  CHECK(club.build() == "plain star ");
  club.folder.put("drills/bridge.md", "---\ntitle:\nkind: shape\n---\n");
  CHECK(club.build() == "plain star ");
  club.folder.put("drills/bridge.md", "\xFF\xFE");
  CHECK(club.build() == "plain star ");
}

TEST_CASE("broken: a drill no plan has is told, and all plans are printed") {
  Club club("broken-unused-drill");
  for (const char* text :
       {"---\ntitle:\nkind: shape\n---\n", "---\ntitle: Dish hold\nkind: x\n---\n", "\xFF\xFE"}) {
    club.folder.put("drills/dish-hold.md", text);
    INFO(text);
    CHECK(club.build() == "plain bridge star ");
    CHECK(club.summary.exit_code() == 1);
  }
}

TEST_CASE("broken: a folder of drills that cannot be read concerns plans with strange drills") {
  Club club("broken-folder");
  for (const std::string name : {"Jog", "Sway", "Walk"})
    club.folder.put("drills/" + name + ".md", "---\ntitle: " + name + "\nkind: skill\n---\n");
  // Deeper than drills are looked for: what lies there is not known.
  club.folder.put("drills/1/2/3/4/5/6/7/8/9/deep.md", "---\ntitle: Deep\nkind: shape\n---\n");
  CHECK(club.build() == "plain bridge ");
  CHECK(club.said.find("lies too deep") != std::string::npos);
  CHECK(club.said.find("lies too deep") == club.said.rfind("lies too deep"));
}

TEST_CASE("broken: a look keeps back the plans that have it") {
  Club club("broken-look");
  club.folder.put("looks/ours.yaml", "name: Ours\nlike: nonsense\n");
  CHECK(club.build() == "plain bridge star ");
  std::string plan = gym_plan("Plain");
  plan.replace(plan.find("place: gym"), 10, "place: gym\nlook: ours");
  club.folder.put("sessions/plain.md", plan);
  CHECK(club.build() == "bridge star ");
  // All looks are like the classic one: a club's own that is broken concerns every plan, and is no
  // fault of the program's.
  club.folder.put("looks/classic.yaml", "name: Classic\nlike: nonsense\n");
  CHECK(club.build().empty());
  CHECK(club.summary.exit_code() == 1);
}

TEST_CASE("broken: a mistake in club.yaml keeps back the plans that need the entry") {
  Club club("broken-club-entry");
  const auto in_group = [&](const std::string& name, const std::string& group) {
    std::string plan = gym_plan(name);
    plan.replace(plan.find("place: gym"), 10, "place: gym\ngroup: " + group);
    club.folder.put("sessions/" + lower_ascii(name) + ".md", plan);
  };
  in_group("Bridge", "Wrens");
  in_group("Star", "Kestrels");
  const std::string name = "name: Alder Quay Gymnastics\n";
  const std::string kestrels = "  Kestrels: {ages: 9-11, size: 8}\n";

  club.folder.put("club.yaml", name + "groups:\n  Wrens: {ages: young, size: 6}\n" + kestrels);
  CHECK(club.build() == "plain star ");
  CHECK(club.summary.exit_code() == 1);
  CHECK(club.summary.failed == 1);

  club.folder.put("club.yaml",
                  name + "groups:\n" + kestrels + "  Wrens: {ages: 6-8, size: many}\n");
  CHECK(club.build() == "plain star ");

  club.folder.put("club.yaml", name + "groups: none\n");
  CHECK(club.build() == "plain ");

  club.folder.put("club.yaml", name + "groups:\n  Wrens: {ages: 6-8}\n" + kestrels +
                                   "hall: {beam: {count: none}}\n");
  CHECK(club.build().empty());

  club.folder.put("club.yaml",
                  name + "groups:\n  Wrens: {ages: 6-8}\n" + kestrels + "contact: [1, 2]\n");
  CHECK(club.build() == "plain bridge star ");
  CHECK(club.summary.exit_code() == 1);

  club.folder.put("club.yaml", name + "timings: soon\n");
  CHECK(club.build().empty());

  club.folder.put("club.yaml", name + "groups: {Wrens\n");
  CHECK(club.build() == "plain ");
}

TEST_CASE("broken: whom to ask is a matter of home sheets, and the last good one stays") {
  Club club("broken-club-contact");
  club.folder.put("sessions/plain.md", home_plan("Plain"));
  CHECK(club.build() == "plain bridge star ");
  CHECK(club.folder.has("out/plain-sheet.pdf"));
  const std::string old = club.folder.read("out/plain-sheet.pdf");
  club.folder.put("club.yaml", "name: Alder Quay Gymnastics\ncontact: [1, 2]\n");
  CHECK(club.build(Club::Out::kKept) == "plain bridge star ");
  CHECK(club.folder.read("out/plain-sheet.pdf") == old);
  CHECK(club.summary.held_back == 1);
  CHECK(club.summary.stayed == std::vector<std::string>{"out/plain-sheet.pdf"});
}
