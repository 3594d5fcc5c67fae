// Revisions against git itself: `git log` is the outside witness.
#include "club/revision.h"

#include <catch2/catch.hpp>

#include "base/text.h"
#include "club/folders.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::shell;
using chalkleaf::club::tests::TemporaryFolder;

namespace {

class Repository {
 public:
  explicit Repository(const std::string& name) : folder(name) { git("init -q -b main ."); }
  std::string git(const std::string& arguments) const {
    // Dates move on by an hour a call, so that no two commits are the same.
    static int hour = 0;
    return git_at(std::to_string(1'764'600'000 + 3600 * ++hour) + " +1300", arguments);
  }
  std::string git_at(const std::string& date, const std::string& arguments) const {
    const auto outcome = shell("cd '" + folder.str() + "' && GIT_CONFIG_GLOBAL=/dev/null " +
                               "GIT_COMMITTER_DATE='" + date + "' GIT_AUTHOR_DATE='" + date +
                               "' git -c user.name=T -c user.email=t@example.org " + arguments);
    REQUIRE(outcome.exit_code == 0);
    return std::string(trim(outcome.text));
  }
  void commit(const std::string& name, const std::string& text) const {
    folder.put(name, text);
    git("add -A");
    git("commit -q -m change");
  }
  Revision revision(const std::string& name) const {
    const RealFileSystem files;
    const Revisions revisions(files, folder.str(), {folder / name});
    return revisions.of(folder / name, folder.read(name));
  }
  /// What git says: the commit, its time and its day where it was made.
  std::string witness(const std::string& name) const {
    return git("log -1 --first-parent --abbrev=7 --date=short --format='%h %ct %cd' -- " + name);
  }
  std::string said(const std::string& name) const {
    const Revision found = revision(name);
    return found.text + " " + std::to_string(found.committed.value_or(0)) + " " +
           (found.date ? iso_text(*found.date) : "");
  }

  TemporaryFolder folder;
};

}  // namespace

TEST_CASE("the last commit that changed each plan, as git log has it") {
  const Repository repository("git-log");
  repository.commit("sessions/a.md", "one");
  repository.commit("sessions/deep/er/b.md", "one");
  repository.commit("sessions/a.md", "two");
  repository.commit("c.md", "one");
  repository.commit("other.txt", "one");
  repository.git("checkout -q -b side HEAD~2");
  repository.commit("sessions/deep/er/b.md", "two");
  repository.git("checkout -q main");
  repository.git("merge -q --no-ff -m merge side");
  repository.commit("other.txt", "two");
  repository.git("rm -q c.md");
  repository.git("commit -q -m gone");
  repository.commit("c.md", "one");
  for (const char* name : {"sessions/a.md", "sessions/deep/er/b.md", "c.md"}) {
    INFO(name);
    CHECK(repository.said(name) == repository.witness(name));
  }
}

TEST_CASE("the day is that of the place of the commit, also just before 1970") {
  const Repository repository("git-day");
  // Seconds since 1970 in UTC; the day begins at midnight where the commit was made. git itself
  // shows no day before 1970, nor does `commit` make one, so here is no witness but the calendar.
  const std::pair<const char*, const char*> cases[] = {
      {"@0 +0000", "1970-01-01"},     {"@0 -0001", "1969-12-31"},
      {"@600 -0500", "1969-12-31"},   {"@17999 -0500", "1969-12-31"},
      {"@18000 -0500", "1970-01-01"}, {"@86399 +0000", "1970-01-01"},
      {"@86399 +0001", "1970-01-02"},
  };
  for (const auto& [date, day] : cases) {
    INFO(date);
    repository.folder.put("a.md", date);
    repository.git("add -A");
    const std::string tree = repository.git("write-tree");
    repository.git("update-ref refs/heads/main " +
                   repository.git_at(date, "commit-tree -m change " + tree));
    const Revision found = repository.revision("a.md");
    REQUIRE(found.date);
    CHECK(iso_text(*found.date) == day);
  }
}

TEST_CASE("edited, and not yet committed") {
  const Repository repository("git-edited");
  repository.folder.put("b.md", "one");
  CHECK(repository.said("b.md") == "not yet committed 0 ");  // no commit at all yet
  repository.commit("a.md", "one");
  CHECK(repository.said("b.md") == repository.witness("b.md"));  // `add -A` took it along
  repository.folder.put("a.md", "two");
  const std::string id = repository.git("log -1 --abbrev=7 --format=%h -- a.md");
  CHECK(repository.revision("a.md").text == id + ", edited");
  repository.folder.put("new.md", "one");
  CHECK(repository.revision("new.md") == Revision{"not yet committed", {}, {}});
}

TEST_CASE("a file where a folder was, and back, confuses nobody") {
  const Repository repository("git-swap");
  repository.commit("x/a.md", "one");
  repository.git("rm -q -r x");
  repository.commit("x", "a file");
  repository.git("rm -q x");
  repository.commit("x/a.md", "one");
  CHECK(repository.said("x/a.md") == repository.witness("x/a.md"));
}

TEST_CASE("without a repository, or with a broken one, there is no revision") {
  const TemporaryFolder broken("git-broken");
  broken.put(".git", "gitdir: /nowhere/at/all\n");
  broken.put("a.md", "one");
  const RealFileSystem files;
  const Revisions none_there(files, broken.str(), {broken / "a.md"});
  CHECK(none_there.of(broken / "a.md", "one") == Revision{});
  CHECK(none_there.trouble().empty());
  const chalkleaf::support::MemoryFileSystem none{{"/c/a.md", "one"}};
  CHECK(Revisions(none, "/c", {"/c/a.md"}).of("/c/a.md", "one") == Revision{});
}
