// Shared parts: following links, circles, and links that lead nowhere.
#include <catch2/catch.hpp>
#include <map>

#include "base/files.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

/// A folder of parts made of strings. `outside/` is not ours; `bad.md` cannot be read.
class Folder final : public PartLookup {
 public:
  explicit Folder(std::map<std::string, std::string> files) : files_(std::move(files)) {}

  tl::expected<std::shared_ptr<const FoundPart>, LinkProblem> find(
      const std::string& from_path, const std::string& target) const override {
    const std::string path = normal_path(join_path(parent_path(from_path), target));
    if (path.starts_with("outside/")) {
      return tl::unexpected(LinkProblem{LinkProblem::Kind::kOutside, "", {}});
    }
    const auto file = files_.find(path);
    if (file == files_.end()) {
      LinkProblem problem;
      if (path == "parts/wram.md") problem.suggestion = "../parts/warm.md";
      return tl::unexpected(problem);
    }
    auto found = std::make_shared<FoundPart>();
    found->path = path;
    const auto source = source::load_text(path, file->second, found->diagnostics);
    if (!source) {
      return tl::unexpected(LinkProblem{LinkProblem::Kind::kUnreadable, "", found->diagnostics});
    }
    found->file = read_part(source::read_document(source, found->diagnostics), found->diagnostics);
    return found;
  }

 private:
  std::map<std::string, std::string> files_;
};

/// The plan `plans/p.md` with its parts linked.
struct LinkedParts {
  ReadPlan plan;
  std::string said;
};
LinkedParts link_parts_of(const std::string& body, std::map<std::string, std::string> files) {
  LinkedParts out{read_plan(plan_with(body)), {}};
  link_parts(out.plan.session, "plans/p.md", Folder(std::move(files)), out.plan.diagnostics);
  out.said = messages(out.plan.diagnostics);
  return out;
}
std::string steps(const Part& part) {
  std::string out;
  for (const Step& step : part.steps) {
    if (const auto* drill = std::get_if<Drill>(&step)) out += drill->name.text + " ";
    if (const auto* note = std::get_if<Note>(&step)) out += "(" + note->words.text + ") ";
    if (std::holds_alternative<PartLink>(step)) out += "LINK ";
  }
  return out;
}

TEST_CASE("a link becomes the part's steps, in its place, through parts of parts") {
  const LinkedParts got = link_parts_of(
      "> Clear space.\n\n## Warm-up\n\n- A: 3\n\n[w](../parts/warm.md#top)\n\n- Z: 3\n",
      {{"parts/warm.md",
        "# Warm\n\n> Clear space.\n\n> Shoes off.\n\n- B: 3\n\n[n](more%20moves.md)\n"},
       {"parts/more moves.md", "Breathe.\n\n- C: 3\n"}});
  CHECK(got.said.empty());
  const Part& part = got.plan.session.parts.at(0);
  CHECK(steps(part) == "A B (Breathe.) C Z ");
  REQUIRE(part.safety.size() == 1);
  CHECK(part.safety[0].words.text == "Shoes off.");
  REQUIRE(part.shared.size() == 1);
  CHECK(part.shared[0].target == "../parts/warm.md#top");
  REQUIRE(got.plan.session.sources.size() == 3);
  CHECK(got.plan.session.sources[2]->path() == "parts/more moves.md");
  CHECK(std::get<Drill>(part.steps[3]).name.span.source->path() == "parts/more moves.md");
}

TEST_CASE("a link that leads nowhere says where it should have led") {
  CHECK(link_parts_of("## W\n\n[w](../parts/wram.md)\n", {}).said ==
        "plan.md:7:1: error: there is no part at ‘../parts/wram.md’ [unknown-part]; did you mean "
        "`../parts/warm.md`?\n");
  CHECK(link_parts_of("## W\n\n[w](x.md)\n", {}).said ==
        "plan.md:7:1: error: there is no part at ‘x.md’ [unknown-part]; check the path; it begins "
        "at the folder of the file it stands in\n");
  CHECK(link_parts_of("## W\n\n- [w](../outside/x.md)\n", {}).said ==
        "plan.md:7:3: error: ‘../outside/x.md’ is outside the club's folder [outside-folder]; copy "
        "the part into the club's folder and link to the copy\n");
  CHECK(link_parts_of("## W\n\n[w](bad.md)\n", {{"plans/bad.md", "a\xFFz"}}).said ==
        "plan.md:7:1: error: the part ‘bad.md’ cannot be read [unreadable-file]; mend that file; "
        "what is wrong with it is reported too\n"
        "plans/bad.md:1:2: error: this file cannot be read: the byte 0xFF here is not UTF-8 "
        "[unreadable-file]; open the file in your text editor and save it as UTF-8\n");
}

TEST_CASE("the hint for a link names the file that is there") {
  const std::map<std::string, std::string> files{{"parts/cool.md", "- A: 3\n"}};
  CHECK(link_parts_of("## W\n\n[w](../parts/cool)\n", files).said ==
        "plan.md:7:1: error: there is no part at ‘../parts/cool’ [unknown-part]; did you mean "
        "`../parts/cool.md`?\n");
  CHECK(link_parts_of("## W\n\n[w](../parts/)\n", files).said ==
        "plan.md:7:1: error: there is no part at ‘../parts/’ [unknown-part]; name a file in that "
        "folder, such as `warm-up.md`\n");
  CHECK(link_parts_of("## W\n\n[w](..\\parts\\cool.md)\n", files).said ==
        "plan.md:7:1: error: there is no part at ‘..\\parts\\cool.md’ [unknown-part]; write `/` "
        "between folders and file: `../parts/cool.md`\n");
}

TEST_CASE("a whole session is no part") {
  const LinkedParts got =
      link_parts_of("## W\n\n- A: 3\n\n[w](s.md)\n",
                    {{"plans/s.md", "---\ntitle: S\nplace: gym\nslot: 1 h\n---\n- B: 3\n"}});
  CHECK(
      got.said ==
      "plan.md:9:1: error: ‘s.md’ is a session, not a shared part [unknown-part]; link to a file "
      "that holds the part alone; if that is what this file is, take `place:` out of it, and keep "
      "of its front matter the title only\n");
  const auto& labels = got.plan.diagnostics.all().at(0).labels;
  REQUIRE(labels.size() == 1);
  CHECK(labels[0].span.text() == "place: gym");
  CHECK(steps(got.plan.session.parts.at(0)) == "A ");
}

TEST_CASE("no link is left, whatever happened") {
  CHECK(steps(link_parts_of("## W\n\n[w](x.md)\n\n- A: 3\n", {}).plan.session.parts.at(0)) == "A ");
}

TEST_CASE("what is wrong in a part is said once, however often it is used") {
  const LinkedParts got =
      link_parts_of("## W\n\n[w](w.md)\n\n[w](w.md)\n", {{"plans/w.md", "- A: 2–3 x 8\n"}});
  CHECK(got.plan.diagnostics.error_count() == 1);
  CHECK(got.said ==
        "plans/w.md:1:6: error: ‘2–3’ is a range [unreadable-dose]; choose one number, the one you "
        "would call out\n");
}

TEST_CASE("a circle is reported with every link of it") {
  const LinkedParts got =
      link_parts_of("## W\n\n[w](a.md)\n", {{"plans/a.md", "- A: 3\n\n[b](b.md)\n"},
                                            {"plans/b.md", "[c](c.md)\n\n- B: 3\n"},
                                            {"plans/c.md", "[a](a.md)\n"}});
  CHECK(got.said ==
        "plans/c.md:1:1: error: this link leads round in a circle: a.md → b.md → c.md → a.md "
        "[part-cycle]; take one of these links out\n");
  CHECK(steps(got.plan.session.parts.at(0)) == "A B ");
  const auto& labels = got.plan.diagnostics.all().at(0).labels;
  REQUIRE(labels.size() == 2);
  CHECK(labels[0].message == "a.md links to b.md here");
  CHECK(labels[0].span.source->path() == "plans/a.md");
  CHECK(labels[1].message == "b.md links to c.md here");
}

TEST_CASE("a plan that links to itself, and a part that links to itself") {
  CHECK(link_parts_of("## W\n\n[w](a.md)\n", {{"plans/a.md", "[a](a.md)\n"}}).said ==
        "plans/a.md:1:1: error: this link leads round in a circle: a.md → a.md [part-cycle]; take "
        "one of these links out\n");
  CHECK(link_parts_of("## W\n\n[w](p.md)\n", {{"plans/p.md", "- A: 3\n"}}).said ==
        "plan.md:7:1: error: this link leads round in a circle: p.md → p.md [part-cycle]; take one "
        "of these links out\n");
}

TEST_CASE("parts that multiply or go on without end are stopped") {
  std::map<std::string, std::string> doubling;
  std::map<std::string, std::string> chain;
  for (int i = 0; i < 40; ++i) {
    const std::string next = fmt::format("[n]({}.md)\n\n", i + 1);
    doubling[fmt::format("plans/{}.md", i)] = i < 14 ? next + next : "- A: 3\n";
    chain[fmt::format("plans/{}.md", i)] = next;
  }
  CHECK(link_parts_of("## W\n\n[w](0.md)\n", doubling)
            .said.find("more than 2000 lines [bad-value]") != std::string::npos);
  CHECK(link_parts_of("## W\n\n[w](0.md)\n", chain).said ==
        "plans/15.md:1:1: error: parts link to parts more than 16 deep here [part-cycle]; put the "
        "drills themselves into fewer files\n");
}

TEST_CASE("a part without a heading takes the link's words, and the same safety is said once") {
  const LinkedParts got =
      link_parts_of("[The warm-up](w.md)\n", {{"plans/w.md", "> Mind.\n\n- A: 3\n"}});
  CHECK(got.plan.session.parts.at(0).title.text == "The warm-up");
  CHECK(got.plan.session.parts.at(0).safety.size() == 1);
}

}  // namespace
}  // namespace chalkleaf::plan
