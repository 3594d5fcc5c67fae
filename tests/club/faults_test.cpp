// Every call a build makes to the disk fails once, in every way it can; a run is killed after every
// step that changes something. Each time: an old or a new whole file, a message, the right exit
// code, nothing outside `out`, and the next build mends it. The counts stand in the test's log.
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <iostream>
#include <map>

#include "base/diagnostic_text.h"
#include "club/build.h"
#include "club/folders.h"
#include "club/week.h"
#include "support/faulty_calls.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;
using namespace chalkleaf::support;
using Fault = FaultyCalls::Fault;

namespace {

using Tree = std::map<std::string, std::string>;  // files by path

/// What is tried at one call.
struct Trial {
  std::string name;
  Fault fault = Fault::kError;
  int code = 0;
};

std::vector<Trial> trials_of(Call call) {
  const Trial access{"EACCES", Fault::kError, EACCES};
  const Trial broken{"EIO", Fault::kError, EIO};
  const Trial many{"EMFILE", Fault::kError, EMFILE};
  const Trial full{"ENOSPC", Fault::kError, ENOSPC};
  const Trial quota{"EDQUOT", Fault::kError, EDQUOT};
  const Trial read_only{"EROFS", Fault::kError, EROFS};
  const Trial large{"EFBIG", Fault::kError, EFBIG};
  const Trial killed{"killed after", Fault::kKillAfter, 0};
  switch (call) {
    case Call::kOpen:
    case Call::kList:
      return {access, broken, many};
    case Call::kCreate:
      return {access, many, full, quota, read_only, killed};
    case Call::kRead:
      return {broken, {"short", Fault::kShort, 0}};
    case Call::kWrite:
      return {broken,
              full,
              quota,
              large,
              {"short", Fault::kShort, 0},
              {"half, then ENOSPC", Fault::kHalfThen, ENOSPC},
              {"killed inside", Fault::kKillInside, 0},
              killed};
    case Call::kSync:
      return {broken, full, quota, killed};
    case Call::kSyncFolder:
      return {broken, killed};
    case Call::kClose:
      return {broken, full, quota};
    case Call::kRename:
      return {access, broken, full, read_only, killed};
    case Call::kUnlink:
      return {access, broken, read_only, killed};
    case Call::kMakeFolder:
      return {access, full, quota, read_only, killed};
    case Call::kStatus:
    case Call::kRealPath:
      return {access, broken};
  }
  return {};
}

bool changes_something(Call call) {
  return call == Call::kCreate || call == Call::kWrite || call == Call::kSync ||
         call == Call::kSyncFolder || call == Call::kRename || call == Call::kUnlink ||
         call == Call::kMakeFolder;
}

Tree tree_of(const std::filesystem::path& folder) {
  Tree out;
  if (!std::filesystem::exists(folder)) return out;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream file(entry.path(), std::ios::binary);
    out[std::filesystem::relative(entry.path(), folder)] =
        std::string(std::istreambuf_iterator<char>(file), {});
  }
  return out;
}

void put_back(const std::filesystem::path& folder, const Tree& tree) {
  std::filesystem::remove_all(folder);
  for (const auto& [name, text] : tree) {
    std::filesystem::create_directories((folder / name).parent_path());
    std::ofstream(folder / name, std::ios::binary) << text;
  }
}

class Heard final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& one) override {
    text += render(one, MessageStyle::kShort, Colouring::kPlain);
  }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

// Temporary files of this process look as if a run were still at work.
void let_die(const std::filesystem::path& folder) {
  static const pid_t dead = [] {
    const pid_t child = ::fork();
    if (child == 0) ::_exit(0);
    ::waitpid(child, nullptr, 0);
    return child;
  }();
  const std::string ours = "-" + std::to_string(::getpid()) + "-";
  for (const auto& [name, text] : tree_of(folder)) {
    const std::size_t at = name.find(ours);
    if (name.find(".chalkleaf-") == std::string::npos || at == std::string::npos) continue;
    std::string dead_name = name;
    dead_name.replace(at, ours.size(), "-" + std::to_string(dead) + "-");
    std::filesystem::rename(folder / name, folder / dead_name);
  }
}

/// A small club with a bit of everything, and program data of the same size.
class Scene {
 public:
  enum class Work { kBuild, kWeek, kBooklet };
  explicit Scene(const std::string& name, Work work = Work::kBuild)
      : folder_(name), club_(folder_ / "club"), work_(work) {
    const std::string from = support::repository() + "/";
    for (const std::string file : {"themes/classic.yaml", "themes/labels/en.yaml",
                                   "themes/words/en.yaml", "fonts/catalogue.yaml"})
      folder_.put("data/" + file, RealFileSystem().read(from + file, 1 << 20).value());
    put("club.yaml", "name: Alder Quay Gymnastics\nchecks: {unknown-drill: off}\n");
    put("parts/warm-up.md", "- Jog: 5 min\n");
    put("drills/walk.md", "---\ntitle: Walk\nkind: balance\n---\n\n- cue: quiet feet\n");
    put("figures/own.yaml", "figures:\n  our shape: {touches: feet}\n");
    put("looks/ours.yaml", "name: Ours\nabout: Ours.\nlike: classic\n");
    plans("A", "B");
  }
  void put(const std::string& name, const std::string& text) { folder_.put("club/" + name, text); }
  void plans(const std::string& gym, const std::string& home) {
    std::string a = gym_plan(gym);
    a.replace(a.find("- Jog: 5 min"), 12, "[Warm-up](../parts/warm-up.md)");
    put("sessions/a.md", a);
    std::string b = home_plan(home);
    b.replace(b.find("- Long shape: 20 min"), 20, "- Long shape: 20 min\n  - figure: our shape");
    b.replace(b.find("place: home"), 11, "place: home\nlook: ours\nrepeat: Mon, Wed");
    put("sessions/home/b.md", b);
  }

  struct Ended {
    bool killed = false;
    Summary summary;
    std::string heard;
  };
  Ended build(FaultyCalls& calls) {
    RealFileSystem files(calls);
    const std::map<std::string, std::string> values{{"CHALKLEAF_DATA", folder_ / "data"},
                                                    {"SOURCE_DATE_EPOCH", "1764600000"}};
    const FixedEnvironment environment(values);
    Heard heard;
    TogetherRequest request;
    request.base.standing = club_;
    request.file = "out/all.pdf";
    request.starting = work_ == Work::kWeek ? parse_date("2025-12-01") : std::nullopt;
    const Surroundings around{files, environment, "/nowhere/chalkleaf"};
    Ended out;
    try {
      out.summary = work_ == Work::kWeek      ? make_week(request, around, heard).summary
                    : work_ == Work::kBooklet ? make_booklet(request, around, heard).summary
                                              : club::build(request.base, around, heard);
    } catch (const Killed&) {
      out.killed = true;
    }
    out.heard = heard.text;
    return out;
  }
  Ended build_well() {
    FaultyCalls calls(club_);
    return build(calls);
  }
  std::filesystem::path out() const { return std::filesystem::path(club_) / "out"; }
  const std::string& club() const { return club_; }
  Tree sources() const {
    Tree all = tree_of(club_);
    std::erase_if(all, [](const auto& file) { return file.first.starts_with("out/"); });
    return all;
  }

 private:
  TemporaryFolder folder_;
  std::string club_;
  Work work_;
};

/// Operations × faults tried.
class Table {
 public:
  void count(Call call, const std::string& fault) { ++counts_[{name_of(call), fault}]; }
  std::size_t print(const std::string& title) const {
    std::size_t sum = 0;
    std::cout << title << "\n";
    for (const auto& [what, count] : counts_) {
      std::cout << "  " << what.first << ": " << what.second << ": " << count << "\n";
      sum += count;
    }
    std::cout << "  " << sum << " faults tried\n";
    return sum;
  }

 private:
  std::map<std::pair<std::string, std::string>, std::size_t> counts_;
};

bool is_hidden(const std::string& path) {
  return path.find("/.") != std::string::npos || path[0] == '.';
}

/// From `before` to what a build makes, with every fault on the way.
void try_all(Scene& scene, const Tree& before, const Tree& after, bool only_changes, Table& table) {
  const Tree sources = scene.sources();
  put_back(scene.out(), before);
  FaultyCalls counted(scene.club());
  scene.build(counted);
  REQUIRE(tree_of(scene.out()) == after);
  static const bool kAllRounds = std::getenv("CHALKLEAF_ALL_ROUNDS") != nullptr;
  std::map<Call, std::size_t> seen;
  const auto turn = [&](Call call) {
    const std::vector<Trial> all = trials_of(call);
    const auto codes = std::count_if(all.begin(), all.end(),
                                     [](const Trial& one) { return one.fault == Fault::kError; });
    return (seen[call] - 1) % static_cast<std::size_t>(codes);
  };
  for (std::size_t i = 0; i < counted.seen().size(); ++i) {
    const Call call = counted.seen()[i];
    ++seen[call];
    if (only_changes && !changes_something(call)) continue;
    std::size_t errors = 0;
    for (const Trial& trial : trials_of(call)) {
      // Each kind of fault at each call; of the error codes one a call, in turn, unless all are
      // asked for: each code is tried with each kind of call all the same.
      if (trial.fault == Fault::kError && errors++ != turn(call) && !kAllRounds) continue;
      put_back(scene.out(), before);
      FaultyCalls calls(scene.club());
      calls.fail(i, trial.fault, trial.code);
      const Scene::Ended ended = scene.build(calls);
      table.count(call, trial.name);
      const Tree now = tree_of(scene.out());
      INFO("call " << i << ", " << name_of(call) << " " << calls.path_failed() << ", " << trial.name
                   << "\n"
                   << ended.heard);
      REQUIRE(!calls.path_failed().empty());
      bool all_new = true;
      for (const auto& [path, text] : after) {
        if (is_hidden(path)) continue;
        const auto found = now.find(path);
        const auto old = before.find(path);
        const bool is_new = found != now.end() && found->second == text;
        all_new = all_new && is_new;
        if (is_new) continue;
        if (path.starts_with("earlier/")) continue;  // on its way: nothing is lost, see below
        // The old file, or none where none was.
        CHECK((found == now.end()) == (old == before.end()));
        if (found != now.end() && old != before.end()) CHECK((found->second == old->second));
      }
      // Of what was there nothing is lost, though it may have another place.
      for (const auto& [path, text] : before) {
        if (after.count(path) > 0) continue;
        const bool there = std::any_of(now.begin(), now.end(), [&wanted = text](const auto& file) {
          return file.second == wanted;
        });
        CHECK(there);
      }
      for (const auto& [path, text] : now) {
        const bool known = before.count(path) > 0 || after.count(path) > 0 || is_hidden(path);
        CHECK(known);
      }
      if (!ended.killed) {
        const int code = ended.summary.exit_code();
        if (!all_new) {
          CHECK(code != 0);
          CHECK_FALSE(ended.heard.empty());
          if (changes_something(call)) CHECK(code == 2);
        }
        CHECK(ended.heard.find("internal error") == std::string::npos);
      }
      CHECK((scene.sources() == sources));
      let_die(scene.out());
      scene.build_well();
      CHECK((tree_of(scene.out()) == after));
    }
  }
}

}  // namespace

TEST_CASE("faults: a club that was printed before is printed again") {
  Scene scene("faults-again");
  REQUIRE(scene.build_well().heard.empty());
  const Tree before = tree_of(scene.out());
  scene.plans("New A", "New B");
  scene.build_well();
  const Tree after = tree_of(scene.out());
  REQUIRE(before != after);
  Table table;
  try_all(scene, before, after, false, table);
  CHECK(table.print("a club is printed again") > 120);
}

TEST_CASE("faults: a club is printed for the first time") {
  Scene scene("faults-first");
  scene.build_well();
  const Tree after = tree_of(scene.out());
  Table table;
  try_all(scene, {}, after, true, table);
  CHECK(table.print("a club is printed for the first time") > 40);
}

TEST_CASE("faults: sheets of a plan with mistakes are moved away") {
  Scene scene("faults-moved");
  scene.build_well();
  Tree before = tree_of(scene.out());
  before["earlier/home/b-sheet.pdf"] = "%PDF-an older one (Chalkleaf)";
  scene.put("sessions/home/b.md", "---\ntitle: B\nplace: hme\n---\n");
  put_back(scene.out(), before);
  scene.build_well();
  const Tree after = tree_of(scene.out());
  REQUIRE(after.count("home/b-card.pdf") == 0);
  REQUIRE(after.count("earlier/home/b-sheet-1.pdf") == 1);
  Table table;
  try_all(scene, before, after, true, table);
  CHECK(table.print("sheets are moved away") > 20);
}

TEST_CASE("faults: a week and a booklet that were printed before are printed again") {
  for (const auto& [work, name] :
       {std::pair{Scene::Work::kWeek, "faults-week"}, {Scene::Work::kBooklet, "faults-booklet"}}) {
    Scene scene(name, work);
    const Scene::Ended first = scene.build_well();
    INFO(first.heard);
    REQUIRE(first.summary.exit_code() == 0);
    const Tree before = tree_of(scene.out());
    REQUIRE(before.count("all.pdf") == 1);
    scene.plans("New A", "New B");
    scene.build_well();
    const Tree after = tree_of(scene.out());
    REQUIRE(before != after);
    Table table;
    try_all(scene, before, after, true, table);
    CHECK(table.print(name) > 10);
  }
}
