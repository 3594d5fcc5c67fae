// Sheets whose plan is deleted, renamed or out of sight.
#include "club/gone_plans.h"
#include "support/places.h"

#include <catch2/catch.hpp>

#include "club/build.h"
#include "club/folders.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

class Ear final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& one) override { text += one.name + ": " + one.message + "\n"; }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

struct ThreePlans {
  explicit ThreePlans(const std::string& name) : folder(name) {
    folder.put("club.yaml", "name: Alder Quay Gymnastics\n");
    folder.put("sessions/a.md", gym_plan("A"));
    folder.put("sessions/home/b.md", home_plan("B"));
    folder.put("sessions/c.md", gym_plan("C"));
    build();
    CHECK(summary.sheets == 4);
  }
  void build(const std::vector<std::string>& arguments = {}) {
    const std::map<std::string, std::string> values{{"CHALKLEAF_DATA", support::repository()}};
    const FixedEnvironment environment(values);
    RealFileSystem files;
    Ear ear;
    Request request;
    request.arguments = arguments;
    request.standing = folder.str();
    summary = club::build(request, {files, environment, "/nowhere/chalkleaf"}, ear);
    heard = ear.text;
  }
  void remove(const std::string& name) const { std::filesystem::remove_all(folder / name); }
  TemporaryFolder folder;
  Summary summary;
  std::string heard;
};

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("gone: the sheets of a deleted plan go to the earlier ones, said once") {
  ThreePlans club("gone-deleted");
  const std::string card = club.folder.read("out/home/b-card.pdf");
  club.remove("sessions/home");
  club.build();
  CHECK(club.heard.empty());
  CHECK(club.summary.exit_code() == 0);
  CHECK(club.summary.moved == Names{"out/home/b-card.pdf", "out/home/b-sheet.pdf"});
  CHECK(club.folder.read("out/earlier/home/b-card.pdf") == card);
  CHECK_FALSE(club.folder.has("out/home/b-card.pdf"));
  CHECK(club.folder.has("out/a-card.pdf"));
  club.build();
  CHECK(club.summary.moved.empty());
}

TEST_CASE("gone: a plan with a new name, and one that took the old name") {
  ThreePlans club("gone-renamed");
  std::filesystem::rename(club.folder / "sessions/a.md", club.folder / "sessions/d.md");
  std::filesystem::rename(club.folder / "sessions/c.md", club.folder / "sessions/c.markdown");
  club.build();
  CHECK(club.summary.moved == Names{"out/a-card.pdf"});
  CHECK(club.folder.has("out/d-card.pdf"));
  CHECK(club.folder.has("out/c-card.pdf"));
}

TEST_CASE("gone: a build of one plan, or of another folder, looks for no others") {
  ThreePlans club("gone-one");
  club.remove("sessions/a.md");
  club.build({"sessions/c.md"});
  CHECK(club.summary.moved.empty());
  club.build({"sessions/home"});
  CHECK(club.summary.moved.empty());
  CHECK(club.folder.has("out/a-card.pdf"));
  club.build({"sessions"});
  CHECK(club.summary.moved == Names{"out/a-card.pdf"});
}

TEST_CASE("gone: files that no build made are left where they are") {
  ThreePlans club("gone-foreign");
  club.folder.put("out/notes-card.pdf", "%PDF-of someone");
  club.folder.put("out/c-card.pdf", "%PDF-put over ours by someone");
  club.remove("sessions/c.md");
  club.build();
  CHECK(club.summary.moved.empty());
  CHECK(club.folder.has("out/notes-card.pdf"));
  CHECK(club.folder.read("out/c-card.pdf") == "%PDF-put over ours by someone");
}

TEST_CASE("gone: a list that leads out of the folder, or is none, does no harm") {
  ThreePlans club("gone-hostile");
  club.folder.put("elsewhere/x-card.pdf", "%PDF-1.7 (Chalkleaf)");
  club.folder.link("out/links", club.folder / "elsewhere");
  for (const char* list : {"../elsewhere/x\t../sessions/gone.md\n", "/etc/passwd\t/etc/gone\n",
                           "\t\n", "x\n", "links/x\t../sessions/gone.md\n", "\xFF\xFE\tz\n"}) {
    INFO(list);
    club.folder.put("out/.chalkleaf-sheets", list);
    club.build();
    CHECK(club.heard.empty());
    CHECK(club.summary.moved.empty());
    CHECK(club.folder.has("elsewhere/x-card.pdf"));
  }
}

TEST_CASE("gone: a club with plans in a folder ‘earlier’ keeps its earlier sheets beside it") {
  ThreePlans club("gone-earlier");
  club.folder.put("sessions/earlier/a.md", gym_plan("An old A"));
  club.build();
  const std::string current = club.folder.read("out/earlier/a-card.pdf");
  club.remove("sessions/a.md");
  club.build();
  CHECK(club.folder.has("out/earlier-sheets/a-card.pdf"));
  CHECK(club.folder.read("out/earlier/a-card.pdf") == current);
}
