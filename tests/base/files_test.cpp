#include "base/files.h"
#include "support/places.h"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>

using namespace chalkleaf;

TEST_CASE("paths are resolved by text alone") {
  CHECK(normal_path("a/./b/../c") == "a/c");
  CHECK(normal_path("../x/..") == "..");
  CHECK(normal_path("/../x") == "/x");
  CHECK(normal_path("") == ".");
  CHECK(join_path("a", "b") == "a/b");
  CHECK(join_path("a/", "/b") == "/b");
  CHECK(parent_path("a/b.md") == "a");
  CHECK(parent_path("b.md") == ".");
  CHECK(file_stem("plans/a.b.md") == "a.b");
  CHECK(is_within("/club/parts/x", "/club"));
  CHECK_FALSE(is_within("/clubhouse", "/club"));
  CHECK(relative_to("/club/parts/x", "/club") == "parts/x");
}

namespace {

/// A fresh folder, gone afterwards.
struct Folder {
  std::string path = support::build_folder() + "/files-test-" + std::to_string(::getpid());
  Folder() { std::filesystem::create_directories(path); }
  ~Folder() { std::filesystem::remove_all(path); }
};

}  // namespace

TEST_CASE("a file is written whole or not at all") {
  const Folder folder;
  RealFileSystem files;
  const std::string path = folder.path + "/deep/er/file.txt";
  REQUIRE(files.write_whole(path, "first").has_value());
  REQUIRE(files.write_whole(path, "second").has_value());
  CHECK(files.read(path, 100).value() == "second");
  CHECK(files.list(folder.path + "/deep/er").value().size() == 1);  // no temporary file is left
  CHECK(files.read(path, 3).error().kind == FileError::Kind::kTooLarge);
  CHECK(files.read(folder.path, 3).error().kind == FileError::Kind::kIsFolder);
  CHECK(files.read(folder.path + "/none", 3).error().kind == FileError::Kind::kNotFound);
  REQUIRE(files.remove(path).has_value());
  CHECK(files.kind(path) == FileKind::kNothing);
  CHECK(files.remove(path).has_value());
}

TEST_CASE("a file may be as large as it may be, and not a byte larger") {
  const Folder folder;
  RealFileSystem files;
  const std::string path = folder.path + "/file";
  REQUIRE(files.write_whole(path, "123456").has_value());
  CHECK(files.read(path, 6).value() == "123456");
  CHECK(files.read(path, 5).error().kind == FileError::Kind::kTooLarge);
}

// Files of /proc have no size before they are read, so to a reader each has grown meanwhile.
TEST_CASE("a file that grows while it is read is read to its end, or refused") {
  const RealFileSystem files;
  for (const std::string path : {"/proc/version", "/proc/filesystems", "/proc/self/limits"}) {
    INFO(path);
    std::ifstream in(path);
    const std::string whole{std::istreambuf_iterator<char>(in), {}};
    REQUIRE(std::filesystem::file_size(path) == 0);
    REQUIRE(whole.size() > 20);
    CHECK(files.read(path, 1 << 20).value() == whole);
    CHECK(files.read(path, whole.size()).value() == whole);
    const auto refused = files.read(path, whole.size() - 1);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().kind == FileError::Kind::kTooLarge);
  }
}

TEST_CASE("a write that cannot be made leaves nothing behind") {
  const Folder folder;
  RealFileSystem files;
  REQUIRE(files.write_whole(folder.path + "/file", "x").has_value());
  CHECK_FALSE(files.write_whole(folder.path + "/file/below", "y").has_value());
  std::filesystem::create_directory(folder.path + "/taken");
  CHECK_FALSE(files.write_whole(folder.path + "/taken", "y").has_value());
  CHECK(files.list(folder.path).value().size() == 2);
}

TEST_CASE("devices and pipes are not read") {
  const RealFileSystem files;
  CHECK_FALSE(files.read("/dev/zero", 100).has_value());
}
