// Whole runs over real folders, with the shipped theme, words and fonts.
#include "club/build.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

using Values = std::map<std::string, std::string>;

/// Keeps everything it hears, one line each.
class Notebook final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& diagnostic) override {
    text += render(diagnostic, MessageStyle::kShort, Colouring::kPlain);
  }
  void progress(std::size_t done, std::size_t total) override {
    CHECK(done == ++last);
    CHECK(done <= total);
  }
  std::string text;
  std::size_t last = 0;
};

struct Ended {
  Summary summary;
  std::string heard;
};

Ended run(const TemporaryFolder& folder, Request request, Values environment = {}) {
  environment.emplace("CHALKLEAF_DATA", support::repository());
  environment.emplace("SOURCE_DATE_EPOCH", "1764600000");
  RealFileSystem files;
  const FixedEnvironment fixed(environment);
  request.standing = folder.str();
  Notebook notebook;
  const Summary summary = build(request, {files, fixed, "/nowhere/chalkleaf"}, notebook);
  return {summary, notebook.text};
}

Request asked(const std::vector<std::string>& arguments) {
  Request request;
  request.arguments = arguments;
  return request;
}

const std::string kOld = "%PDF-an old one (Chalkleaf)";

// Its beam has a dose nobody can read.
std::string with_mistake(const std::string& title) {
  std::string plan = gym_plan(title);
  return plan.replace(plan.find("- Walk: 20 min"), 14, "- Walk: a few times");
}

}  // namespace

TEST_CASE("a club: gym plans get a card, home plans a card and a sheet") {
  const TemporaryFolder folder("build-club");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("sessions/beam.md", gym_plan("Beam"));
  folder.put("sessions/home/shapes.md", home_plan("Shapes"));
  const Ended ended = run(folder, asked({}));
  CHECK(ended.heard.empty());
  CHECK(ended.summary.exit_code() == 0);
  CHECK(ended.summary.plans == 2);
  CHECK(ended.summary.sheets == 3);
  CHECK(ended.summary.folders == std::vector<std::string>{"out"});
  CHECK(folder.has("out/beam-card.pdf"));
  CHECK_FALSE(folder.has("out/beam-sheet.pdf"));
  CHECK(folder.has("out/home/shapes-card.pdf"));
  CHECK(folder.read("out/home/shapes-sheet.pdf").substr(0, 5) == "%PDF-");
}

TEST_CASE("a lone plan compiles with no club around it") {
  const TemporaryFolder folder("build-lone");
  folder.put("monday.md", home_plan("Monday"));
  const Ended ended = run(folder, asked({"monday.md"}));
  CHECK(ended.heard.empty());
  CHECK(ended.summary.sheets == 2);
  CHECK(folder.has("out/monday-card.pdf"));
  CHECK(folder.has("out/monday-sheet.pdf"));
}

TEST_CASE("errors in one plan never stop the others, and its older sheets are no longer current",
          "[threads]") {
  const TemporaryFolder folder("build-errors");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("sessions/a.md", with_mistake("A"));
  folder.put("sessions/b.md", gym_plan("B"));
  folder.put("out/a-card.pdf", kOld);
  const Ended ended = run(folder, asked({}));
  CHECK(
      ended.heard ==
      "sessions/a.md:15:9: error: ‘a few times’ cannot be read as a dose [unreadable-dose]; write "
      "the dose as one of: `3 x 10`, `2 x 20 s, rest 20 s`, `12 steps each way`, `max hold, up to "
      "15 s, 3 goes`; if these words are not a dose, write a dash instead of the colon\n");
  CHECK(ended.summary.exit_code() == 1);
  CHECK(ended.summary.failed_plans == std::vector<std::string>{"sessions/a.md"});
  CHECK_FALSE(folder.has("out/a-card.pdf"));
  CHECK(folder.read("out/earlier/a-card.pdf") == kOld);
  CHECK(ended.summary.moved == std::vector<std::string>{"out/a-card.pdf"});
  CHECK(ended.summary.stayed.empty());
  CHECK(folder.has("out/b-card.pdf"));
}

TEST_CASE("check reports the same and touches nothing") {
  const TemporaryFolder folder("build-check");
  folder.put("a.md", with_mistake("A"));
  folder.put("b.md", gym_plan("B"));
  folder.put("out/a-card.pdf", "an old one");
  Request request = asked({"a.md", "b.md"});
  const std::string built = run(folder, request).heard;
  folder.put("out/a-card.pdf", "an old one");
  std::filesystem::remove(folder / "out/b-card.pdf");
  request.purpose = Purpose::kCheck;
  const Ended ended = run(folder, request);
  CHECK(ended.heard == built);
  CHECK(ended.summary.exit_code() == 1);
  CHECK(folder.has("out/a-card.pdf"));
  CHECK_FALSE(folder.has("out/b-card.pdf"));
}

TEST_CASE("strict: a warning is an error") {
  const TemporaryFolder folder("build-strict");
  std::string plan = gym_plan("A");
  plan.replace(plan.find("slot: 30"), 8, "slot: 40");
  folder.put("a.md", plan);
  Request request = asked({"a.md"});
  CHECK(run(folder, request).summary.exit_code() == 0);
  CHECK(folder.has("out/a-card.pdf"));
  request.strictness = Strictness::kStrict;
  const Ended ended = run(folder, request);
  CHECK(ended.heard ==
        "a.md:4:7: error: the session takes 30 min, 10 min less than its slot of 40 min "
        "[under-slot]; add up to 10 min to ‘Beam’ (20 min), or make the slot shorter\n");
  CHECK(ended.summary.exit_code() == 1);
  CHECK_FALSE(folder.has("out/a-card.pdf"));
}

TEST_CASE("strict: neither sheet is new when the home sheet fails behind a card that is well") {
  const TemporaryFolder folder("build-strict-sheet");
  std::string plan = home_plan("A");
  plan.replace(plan.find("slot: 30 min"), 12, "fit: {sheet: 1 page}");
  std::string many;
  for (int i = 0; i < 60; ++i)
    many += "- Shape " + std::to_string(i) + ": 2 s\n  - easier: softly\n";
  plan.replace(plan.find("## Cool-down"), 0, many + "\n");
  folder.put("a.md", plan);
  Request request = asked({"a.md"});
  const Ended normal = run(folder, request);
  CHECK_THAT(normal.heard, Catch::Contains("warning: the home sheet needs"));
  CHECK(folder.has("out/a-card.pdf"));
  CHECK(folder.has("out/a-sheet.pdf"));
  std::filesystem::remove_all(folder / "out");
  request.strictness = Strictness::kStrict;
  const Ended strict = run(folder, request);
  CHECK_THAT(strict.heard, Catch::Contains("error: the home sheet needs"));
  CHECK(strict.summary.exit_code() == 1);
  CHECK(strict.summary.sheets == 0);
  CHECK_FALSE(folder.has("out/a-card.pdf"));
  CHECK_FALSE(folder.has("out/a-sheet.pdf"));
}

TEST_CASE("strict: what is wrong in the club's drills, figures and parts is an error, too") {
  const TemporaryFolder folder("build-strict-club");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("drills/walk.md", "---\ntitle: Walk\n---\n");
  folder.put("drills/walks.md", "---\ntitle: walks\n---\n");
  folder.put("figures/own.yaml", "figures:\n  leaning tower: {touches: feet, lean: 40}\n");
  folder.put("sessions/a.md", gym_plan("A"));
  Request request = asked({});
  request.purpose = Purpose::kCheck;
  const std::string normal = run(folder, request).heard;
  CHECK_THAT(normal, Catch::Contains("[duplicate-drill]") && Catch::Contains("[figure-falls]"));
  CHECK(normal.find(": error: ") == std::string::npos);
  request.strictness = Strictness::kStrict;
  const Ended strict = run(folder, request);
  CHECK(strict.heard == replace_all(normal, ": warning: ", ": error: "));
  CHECK(strict.summary.exit_code() == 1);
  // A drill of the library may be checked by itself.
  folder.put("drills/walk.md", "---\ntitle: Walk\nfigure: leaning towr\n---\n");
  request.arguments = {"drills/walk.md"};
  CHECK(run(folder, request).heard.find(": warning: ") == std::string::npos);
}

TEST_CASE("what is wrong in a shared part is said once, however many plans use it") {
  const TemporaryFolder folder("build-parts");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("parts/warm-up.md", "# Warm-up\n\n- Jog\n");
  for (const std::string name : {"a", "b", "c"}) {
    std::string plan = gym_plan(name);
    plan.replace(plan.find("- Jog: 5 min"), 12, "[Warm-up](../parts/warm-up.md)");
    folder.put("sessions/" + name + ".md", plan);
  }
  const Ended ended = run(folder, asked({}));
  CHECK(ended.heard ==
        "parts/warm-up.md:3:3: warning: ‘Jog’ has no dose [no-dose]; write how much after a colon, "
        "as "
        "in ‘Jog: 2 x 10’, or give ‘Warm-up’ a time of its own under ‘timings: parts:’\n");
  CHECK(ended.summary.sheets == 3);
}

TEST_CASE("a club.yaml with errors keeps its plans from being printed, and their sheets stay") {
  const TemporaryFolder folder("build-club-errors");
  folder.put("club.yaml", "nam: Alder Quay Gymnastics\n");
  folder.put("sessions/a.md", gym_plan("A"));
  folder.put("sessions/b.md", with_mistake("B"));  // and who knows whether it is B's mistake
  folder.put("out/a-card.pdf", kOld);
  folder.put("out/b-card.pdf", kOld);
  const Ended ended = run(folder, asked({}));
  CHECK(ended.heard.find("club.yaml:1:1: error: ") == 0);
  CHECK(ended.heard.find("[unknown-key]") != std::string::npos);
  CHECK(ended.heard.find("[unreadable-dose]") != std::string::npos);
  CHECK(ended.summary.exit_code() == 1);
  CHECK(folder.read("out/a-card.pdf") == kOld);
  CHECK(folder.read("out/b-card.pdf") == kOld);
  CHECK(ended.summary.stayed == std::vector<std::string>{"out/a-card.pdf", "out/b-card.pdf"});
}

TEST_CASE("same bytes and same messages for any number of workers, twice", "[threads]") {
  const TemporaryFolder folder("build-workers");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  for (int i = 0; i < 40; ++i) {
    const std::string title = "Plan " + std::to_string(i);
    folder.put("sessions/" + std::to_string(i) + ".md", i % 5 == 0   ? with_mistake(title)
                                                        : i % 2 == 0 ? gym_plan(title)
                                                                     : home_plan(title));
  }
  std::string first;
  for (const std::size_t jobs : {1U, 2U, 7U, 1U}) {
    Request request = asked({});
    request.jobs = jobs;
    std::string all = run(folder, request).heard;
    for (int i = 0; i < 40; ++i) {
      for (const std::string kind : {"card", "sheet"}) {
        all += folder.read("out/" + std::to_string(i) + "-" + kind + ".pdf") + "|";
      }
    }
    if (first.empty()) first = all;
    CHECK((first == all));
  }
}

TEST_CASE("SOURCE_DATE_EPOCH is a number or the run stops") {
  const TemporaryFolder folder("build-date");
  folder.put("a.md", gym_plan("A"));
  for (const std::string wrong : {"yesterday", "", "-1", "12x", "99999999999999999999"}) {
    const Ended ended = run(folder, asked({"a.md"}), {{"SOURCE_DATE_EPOCH", wrong}});
    CHECK(ended.heard == "! SOURCE_DATE_EPOCH is ‘" + wrong +
                             "’, which is not a number of seconds since 1970; correct it or unset "
                             "it\n");
    CHECK(ended.summary.exit_code() == 2);
  }
}

TEST_CASE("a folder nobody can write to is an error of the surroundings") {
  const TemporaryFolder folder("build-blocked");
  folder.put("a.md", gym_plan("A"));
  folder.put("out", "a file where the folder should be");
  const Ended ended = run(folder, asked({"a.md"}));
  CHECK(ended.heard ==
        "error: out/a-card.pdf could not be written: a file stands where a folder should be "
        "[not-written]; see what stands there, or choose another folder with ‘--out’\n");
  CHECK(ended.summary.exit_code() == 2);
}

TEST_CASE("--out that is a file, or below one, is said before anything is done") {
  const TemporaryFolder folder("build-out-file");
  folder.put("a.md", gym_plan("A"));
  folder.put("prints", "a file");
  Request request = asked({"a.md"});
  for (const std::string out : {"prints", "prints/today/cards"}) {
    request.out = out;
    const Ended ended = run(folder, request);
    CHECK(ended.heard == "! ‘--out’ has to be a folder, and ‘prints’ is a file; name a folder\n");
    CHECK(ended.summary.exit_code() == 2);
  }
  request.purpose = Purpose::kCheck;
  CHECK(run(folder, request).summary.exit_code() == 0);
}

TEST_CASE("a shared part or the club's file is checked by itself, and not printed") {
  const TemporaryFolder folder("build-shared");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("parts/warm-up.md", "- Jog: 2 min\n");
  folder.put("parts/wrong.md", "- Jog: lots\n");
  Request request = asked({"parts/warm-up.md", "club.yaml"});
  const Ended built = run(folder, request);
  CHECK(built.heard ==
        "! ‘club.yaml’ is the club's file: name a plan, or the club's folder\n"
        "! ‘parts/warm-up.md’ is a shared part, used by sessions: name one of those\n");
  CHECK(built.summary.exit_code() == 2);
  request.purpose = Purpose::kCheck;
  const Ended well = run(folder, request);
  CHECK(well.heard.empty());
  CHECK(well.summary.parts == 1);
  CHECK(well.summary.club_files == 1);
  CHECK(well.summary.exit_code() == 0);
  request.arguments = {"parts/wrong.md"};
  const Ended wrong = run(folder, request);
  CHECK(wrong.heard.starts_with("parts/wrong.md:1:8: error: "));
  CHECK(wrong.summary.exit_code() == 1);
  folder.put("club.yaml", "nam: Alder Quay Gymnastics\n");
  request.arguments = {"club.yaml"};
  const Ended club = run(folder, request);
  CHECK(club.heard.starts_with("club.yaml:1:1: error: "));
  CHECK(club.summary.exit_code() == 1);
}

TEST_CASE("a broken theme, word list or font catalogue ends the run and is named") {
  const TemporaryFolder folder("build-broken-data");
  folder.put("club/club.yaml", "name: Alder Quay Gymnastics\n");
  folder.put("club/sessions/a.md", gym_plan("A"));
  const std::vector<std::string> names = {"themes/classic.yaml", "themes/labels/en.yaml",
                                          "fonts/catalogue.yaml"};
  for (const std::string& broken : names) {
    for (const std::string text : {"", "]", "name: [", "sizes: 3\n", "\xFF\xFE"}) {
      for (const std::string& name : names) {
        folder.put("data/" + name,
                   RealFileSystem().read(support::repository() + "/" + name, 1 << 20).value());
      }
      folder.put("data/" + broken, text);
      const Ended ended = run(folder, asked({"club"}), {{"CHALKLEAF_DATA", folder / "data"}});
      INFO(broken << ": " << text << "\n" << ended.heard);
      CHECK(ended.heard.find(folder / ("data/" + broken)) != std::string::npos);
      CHECK(ended.summary.exit_code() == 2);
    }
  }
  CHECK_FALSE(folder.has("club/out"));
}

TEST_CASE(
    "a plan that vanishes while the run goes on is an error of that plan, and its sheet stays") {
  const TemporaryFolder folder("build-vanished");
  folder.put("a.md", gym_plan("A"));
  folder.put("b.md", gym_plan("B"));
  folder.put("out/b-card.pdf", kOld);
  RealFileSystem files;
  const FixedEnvironment fixed(Values{{"CHALKLEAF_DATA", support::repository()}});
  Notebook notebook;
  Request request = asked({"a.md", "b.md"});
  request.standing = folder.str();
  const auto on_pass = [&](std::string_view pass) {
    if (pass == "save") std::filesystem::remove(folder / "b.md");
  };
  const Summary summary = build(request, {files, fixed, "/nowhere/chalkleaf", on_pass}, notebook);
  CHECK(notebook.text ==
        "b.md:1:1: error: this file cannot be read: there is no such file [unreadable-file]; check "
        "the name and the folder\n");
  CHECK(summary.exit_code() == 1);
  CHECK(folder.has("out/a-card.pdf"));
  CHECK(folder.read("out/b-card.pdf") == kOld);
  CHECK(summary.stayed == std::vector<std::string>{"out/b-card.pdf"});
}

TEST_CASE("a mistake of ours is not the coach's: it names the plan, and the others are printed") {
  const TemporaryFolder folder("build-internal");
  for (const std::string name : {"a", "b", "c"}) folder.put(name + ".md", gym_plan(name));
  folder.put("out/b-card.pdf", kOld);
  RealFileSystem files;
  const FixedEnvironment fixed(Values{{"CHALKLEAF_DATA", support::repository()}});
  Request request = asked({"."});
  request.standing = folder.str();
  const auto ended = [&](const std::function<void()>& fail) {
    int plans = 0;
    const auto on_pass = [&](std::string_view pass) {
      if (pass == "read" && ++plans == 2) fail();
    };
    Notebook notebook;
    const Summary summary = build(request, {files, fixed, "/nowhere/chalkleaf", on_pass}, notebook);
    CHECK(summary.sheets == 2);
    CHECK(summary.stayed == std::vector<std::string>{"out/b-card.pdf"});
    CHECK(folder.read("out/b-card.pdf") == kOld);
    return std::pair(summary.exit_code(), notebook.text);
  };
  CHECK(ended([] { throw std::logic_error("the roof is off"); }) ==
        std::pair(2, std::string("error: b.md could not be set, because of a mistake in Chalkleaf "
                                 "itself (an internal error: the roof is off) [not-written]; the "
                                 "plan may well be right; please report this, with the plan\n")));
  CHECK(ended([] { throw std::bad_alloc(); }) ==
        std::pair(1, std::string("error: b.md could not be set: it needs more memory than there is "
                                 "[not-written]; shorten it, or split it into several plans\n")));
}

TEST_CASE("a run that is stopped does no plan after that, and touches nothing of theirs",
          "[threads]") {
  const TemporaryFolder folder("build-stopped");
  for (const std::string name : {"a", "b", "c"}) folder.put(name + ".md", gym_plan(name));
  folder.put("out/c-card.pdf", kOld);
  RealFileSystem files;
  const FixedEnvironment fixed(Values{{"CHALKLEAF_DATA", support::repository()}});
  Notebook notebook;
  Request request = asked({"."});
  request.standing = folder.str();
  int asked_before = 0;
  const auto is_stopped = [&] { return asked_before++ > 0; };
  const Summary summary =
      build(request, {files, fixed, "/nowhere/chalkleaf", {}, is_stopped}, notebook);
  CHECK(notebook.text.empty());
  CHECK(notebook.last == 1);
  CHECK(summary.sheets == 1);
  CHECK(summary.skipped == 2);
  CHECK(folder.has("out/a-card.pdf"));
  CHECK(folder.read("out/c-card.pdf") == kOld);
  CHECK(summary.stayed == std::vector<std::string>{"out/c-card.pdf"});
}

TEST_CASE("the passes of a plan, in order") {
  const TemporaryFolder folder("build-passes");
  folder.put("a.md", home_plan("A"));
  RealFileSystem files;
  const FixedEnvironment fixed(Values{{"CHALKLEAF_DATA", support::repository()}});
  std::string passes;
  Notebook notebook;
  Request request = asked({"a.md"});
  request.standing = folder.str();
  build(request,
        {files, fixed, "/nowhere/chalkleaf",
         [&](std::string_view pass) { passes += std::string(pass) + ", "; }},
        notebook);
  CHECK(
      passes ==
      "read, draft, understand, link, inherit, time, check, set card, supply pictures, write pdf, "
      "set sheet, supply pictures, write pdf, save, ");
}

TEST_CASE("times: one plan, and what is wrong with it") {
  const TemporaryFolder folder("build-times");
  folder.put("a.md", with_mistake("A"));
  folder.put("b.md", gym_plan("B"));
  RealFileSystem files;
  const FixedEnvironment none;
  const auto timed = [&](const std::vector<std::string>& arguments, Notebook& notebook) {
    Request request = asked(arguments);
    request.standing = folder.str();
    return times(request, {files, none, "/nowhere/chalkleaf"}, notebook);
  };
  Notebook first;
  const Timed b = timed({"b.md"}, first);
  REQUIRE(b.plan != nullptr);
  CHECK(b.plan->timetable.total == Duration::minutes(30));
  CHECK(b.plan->timetable.parts[1].part->title.text == "Beam");
  CHECK(first.text.empty());
  Notebook second;
  CHECK(timed({"a.md"}, second).summary.exit_code() == 1);
  CHECK(second.text.find("[unreadable-dose]") != std::string::npos);
  Notebook third;
  CHECK(timed({"."}, third).summary.exit_code() == 2);
  CHECK(third.text == "! ‘times’ shows one plan at a time: name its file\n");
}
