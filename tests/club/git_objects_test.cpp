// Objects of real repositories against `git cat-file`, and of broken ones.
#include "club/git_objects.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "base/text.h"
#include "club/folders.h"
#include "club/git_pack.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::shell;
using chalkleaf::club::tests::TemporaryFolder;

namespace {

std::string git(const TemporaryFolder& folder, const std::string& arguments) {
  const auto outcome =
      shell("cd '" + folder.str() +
            "' && GIT_CONFIG_GLOBAL=/dev/null git -c user.name=T -c user.email=t@example.org " +
            arguments + " 2>/dev/null");
  REQUIRE(outcome.exit_code == 0);
  return outcome.text;
}

// A few dozen versions of files that look alike, so that packs hold most as differences.
void fill(const TemporaryFolder& folder) {
  git(folder, "init -q -b main .");
  std::string text;
  for (int i = 0; i < 200; ++i) text += "line " + std::to_string(i * 7919) + " of a plan\n";
  for (int i = 0; i < 12; ++i) {
    text.insert(text.size() / 2, "change " + std::to_string(i) + "\n");
    folder.put("sessions/a.md", text);
    folder.put("b" + std::to_string(i) + ".md", text + "b\n");
    git(folder, "add -A");
    git(folder, "commit -q -m change");
  }
}

std::vector<std::string> names(const TemporaryFolder& folder) {
  std::vector<std::string> out;
  const std::string list =
      git(folder, "cat-file --batch-all-objects --batch-check='%(objectname)'");
  for (std::size_t at = 0; at + 40 < list.size(); at += 41) out.push_back(list.substr(at, 40));
  return out;
}

void check_all(const TemporaryFolder& folder) {
  GitObjects objects(folder / ".git/objects");
  const auto all = names(folder);
  REQUIRE(all.size() > 30);
  for (const std::string& name : all) {
    INFO(name);
    const auto object = objects.find(git_id(name).value());
    REQUIRE(object);
    const std::string type(trim(git(folder, "cat-file -t " + name)));
    CHECK((type == "blob"   ? object->kind == GitKind::kBlob
           : type == "tree" ? object->kind == GitKind::kTree
                            : object->kind == GitKind::kCommit));
    CHECK(object->bytes == git(folder, "cat-file " + type + " " + name));
  }
  CHECK_FALSE(objects.find(git_id(std::string(40, 'a')).value()));
}

}  // namespace

TEST_CASE("loose objects, packed ones, and those of another repository") {
  const TemporaryFolder folder("git-objects");
  fill(folder);
  check_all(folder);
  git(folder, "repack -q -a -d -f --depth=20 --window=50");
  REQUIRE(git(folder, "count-objects").starts_with("0 objects"));
  check_all(folder);
  git(folder, "config repack.useDeltaBaseOffset false");  // differences by name
  git(folder, "repack -q -a -d -f --depth=20 --window=50");
  check_all(folder);
  const TemporaryFolder other("git-alternates");
  git(other, "clone -q --shared '" + folder.str() + "' .");
  check_all(other);
}

TEST_CASE("names are forty digits") {
  CHECK(hex_text(git_id("0123456789abcdef0123456789ABCDEF01234567").value()) ==
        "0123456789abcdef0123456789abcdef01234567");
  CHECK_FALSE(git_id("0123456789abcdef0123456789abcdef0123456"));
  CHECK_FALSE(git_id("0123456789abcdef0123456789abcdef0123456g"));
  CHECK_FALSE(git_id(""));
}

TEST_CASE("a repository that is damaged at any place gives objects or none, and ends") {
  const TemporaryFolder folder("git-damaged");
  fill(folder);
  const auto all = names(folder);
  git(folder, "repack -q -a -d -f");
  std::string pack;
  for (const auto& entry : std::filesystem::directory_iterator(folder / ".git/objects/pack")) {
    std::filesystem::permissions(entry.path(), std::filesystem::perms::owner_all);
    if (entry.path().extension() == ".pack") pack = entry.path().stem();
  }
  for (const std::string ending : {".pack", ".idx"}) {
    const std::string name = ".git/objects/pack/" + pack + ending;
    const std::string whole = folder.read(name);
    REQUIRE(whole.size() > 100);
    for (std::size_t at = 0; at < whole.size(); at += 1 + whole.size() / 150) {
      std::string damaged = whole;
      damaged[at] = static_cast<char>(~damaged[at]);
      folder.put(name, at % 2 == 0 ? damaged : whole.substr(0, at));
      GitObjects objects(folder / ".git/objects");
      for (const std::string& one : all) objects.find(git_id(one).value());
    }
    folder.put(name, whole);
  }
  check_all(folder);
}

TEST_CASE("what reading may cost is bounded") {
  const TemporaryFolder folder("git-budget");
  fill(folder);
  const auto all = names(folder);
  GitObjects few(folder / ".git/objects", {1'000'000, 3});
  std::size_t found = 0;
  for (const std::string& one : all) found += few.find(git_id(one).value()) ? 1 : 0;
  CHECK(found == 3);
  CHECK(few.is_spent());
  GitObjects small(folder / ".git/objects", {10, 100});
  CHECK_FALSE(small.find(git_id(all.front()).value()));
  CHECK_FALSE(GitObjects("/nowhere/at/all").find(git_id(all.front()).value()));
}

TEST_CASE("a pipe where an object or an index should be is passed by") {
  const TemporaryFolder folder("git-pipes");
  std::filesystem::create_directories(folder / ".git/objects/pack");
  std::filesystem::create_directories(folder / ".git/objects/aa");
  REQUIRE(shell("mkfifo '" + (folder / ".git/objects/pack/pack-1.idx") + "' '" +
                (folder / (".git/objects/aa/" + std::string(38, 'a'))) + "'")
              .exit_code == 0);
  GitObjects objects(folder / ".git/objects");
  CHECK_FALSE(objects.find(git_id(std::string(40, 'a')).value()));
}

TEST_CASE("changes that do not fit what they change are refused") {
  // gitformat-pack, "Deltified representation": sizes, then copies (high bit) and new bytes.
  const auto made = [](std::string_view changes) { return with_changes("abcdef", changes, 100); };
  CHECK(made(std::string_view("\x06\x05\x91\x02\x03\x02xy", 8)) == "cdexy");
  CHECK_FALSE(made(std::string_view("\x07\x03\x91\x02\x03", 5)));  // of something else
  CHECK_FALSE(made(std::string_view("\x06\x03\x91\x04\x03", 5)));  // over its end
  CHECK_FALSE(made(std::string_view("\x06\x02\x91\x02\x03", 5)));  // longer than it says
  CHECK_FALSE(made(std::string_view("\x06\x04\x91\x02\x03", 5)));  // shorter
  CHECK_FALSE(made(std::string_view("\x06\x03\x00", 3)));          // reserved
  CHECK_FALSE(made(std::string_view("\x06\x03\x03x", 4)));         // ends too early
  CHECK_FALSE(with_changes("abcdef", std::string_view("\x06\x03\x91\x02\x03", 5), 2));
}
