// A new club folder: whole or not at all, and never over anything.
#include "club/begin.h"

#include <catch2/catch.hpp>

#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

/// The real disk, on which only so many files can be written.
class SmallDisk final : public FileSystem {
 public:
  explicit SmallDisk(int room) : room_(room) {}
  tl::expected<std::string, FileError> read(const std::string& path,
                                            std::uint64_t most) const override {
    return disk_.read(path, most);
  }
  FileKind kind(const std::string& path) const override { return disk_.kind(path); }
  tl::expected<std::vector<FolderEntry>, FileError> list(const std::string& path) const override {
    return disk_.list(path);
  }
  tl::expected<std::string, FileError> real_path(const std::string& path) const override {
    return disk_.real_path(path);
  }
  tl::expected<void, FileError> write_whole(const std::string& path,
                                            std::string_view bytes) override {
    if (room_-- > 0) return disk_.write_whole(path, bytes);
    return tl::unexpected(FileError{FileError::Kind::kNoSpace, "the disk is full"});
  }
  tl::expected<void, FileError> remove(const std::string& path) override {
    return disk_.remove(path);
  }
  tl::expected<void, FileError> remove_empty_folder(const std::string& path) override {
    return disk_.remove_empty_folder(path);
  }

 private:
  RealFileSystem disk_;
  int room_;
};

std::string begun(const TemporaryFolder& folder, const std::string& name, int room = 1'000) {
  SmallDisk disk(room);
  const std::map<std::string, std::string> values{{"CHALKLEAF_DATA", support::repository()}};
  const FixedEnvironment environment(values);
  const auto made = begin_club({disk, environment, "/nowhere/chalkleaf"}, folder.str(), name);
  if (!made) return made.error();
  std::string out;
  for (const std::string& file : made->files) out += file + "\n";
  return out;
}

std::size_t files_in(const TemporaryFolder& folder) {
  const auto all = std::filesystem::recursive_directory_iterator(folder.str());
  return static_cast<std::size_t>(std::distance(begin(all), end(all)));
}

}  // namespace

TEST_CASE("a new folder gets everything a club needs, and builds without a word") {
  const TemporaryFolder folder("begin-new");
  const std::string made = begun(folder, "clubs/ours");
  CHECK(made.starts_with(".gitignore\nREADME.md\nclub.yaml\ndrills/dish-hold.md\n"));
  CHECK(folder.read("clubs/ours/.gitignore").find("private/") != std::string::npos);
  CHECK_FALSE(folder.has("clubs/ours/gitignore"));
  const std::string data = "CHALKLEAF_DATA=" + support::repository();
  const Outcome built = shell("cd " + folder / "clubs/ours" + " && " + data + " " +
                              support::program() + " build --strict 2>&1");
  CHECK(built.text == "2 plans: 3 PDFs in out\n");
  CHECK(built.exit_code == 0);
  CHECK(folder.has("clubs/ours/out/first-home-practice-sheet.pdf"));
}

TEST_CASE("an empty folder is as good as a new one, with a repository in it too") {
  const TemporaryFolder folder("begin-empty");
  std::filesystem::create_directories(folder / "ours");
  CHECK(begun(folder, "ours").find("club.yaml\n") != std::string::npos);
  folder.put("repository/.git/config", "");
  CHECK(begun(folder, "repository").find("club.yaml\n") != std::string::npos);
}

TEST_CASE("what is there is named and stays as it is") {
  const TemporaryFolder folder("begin-full");
  folder.put("ours/club.yaml", "name: Ours\n");
  CHECK(begun(folder, "ours") ==
        "‘ours’ is not empty: ‘club.yaml’ is there; name a new folder, or an empty one");
  for (const char* name : {"a", "b", "c", "d", "e", "f"})
    folder.put(std::string("ours/") + name, "");
  CHECK(begun(folder, "ours") ==
        "‘ours’ is not empty: ‘a’, ‘b’, ‘c’, ‘club.yaml’, ‘d’ and 2 more are there; name a new "
        "folder, or an empty one");
  CHECK(folder.read("ours/club.yaml") == "name: Ours\n");
  CHECK(begun(folder, "ours/a") ==
        "‘ours/a’ is there already and is not a folder; name another one");
  CHECK(files_in(folder) == 8);
}

TEST_CASE("a link is not followed") {
  const TemporaryFolder folder("begin-link");
  std::filesystem::create_directories(folder / "real");
  folder.link("ours", folder / "real");
  folder.link("lost", folder / "nowhere");
  CHECK(begun(folder, "ours") == "‘ours’ is a link; name the folder it leads to, or another one");
  CHECK(begun(folder, "lost/") == "‘lost/’ is a link; name the folder it leads to, or another one");
  CHECK(files_in(folder) == 3);
}

TEST_CASE("a failure leaves nothing behind, however late it comes") {
  const TemporaryFolder folder("begin-fails");
  std::filesystem::create_directories(folder / "there");
  for (const int room : {0, 1, 5, 12}) {
    INFO(room);
    CHECK(begun(folder, "new/ours", room).ends_with("cannot be written: the disk is full"));
    CHECK(begun(folder, "there", room).ends_with("cannot be written: the disk is full"));
    CHECK_FALSE(folder.has("new"));
    CHECK(files_in(folder) == 1);
  }
}
