// What the machine's own disk is asked for when a file is written, and what is left when it fails.
#include "base/files.h"
#include "support/places.h"

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "base/left_overs.h"
#include "support/faulty_calls.h"

using namespace chalkleaf;
using namespace chalkleaf::support;

namespace {

/// A fresh folder, gone afterwards.
struct Place {
  std::string path = support::build_folder() + "/real-files-" + std::to_string(::getpid());
  Place() { std::filesystem::create_directories(path); }
  ~Place() { std::filesystem::remove_all(path); }
  std::string operator/(const std::string& name) const { return path + "/" + name; }
  std::vector<std::string> names() const {
    std::vector<std::string> out;
    for (const auto& entry : std::filesystem::directory_iterator(path))
      out.push_back(entry.path().filename());
    std::sort(out.begin(), out.end());
    return out;
  }
};

std::string calls_in_words(const FaultyCalls& calls) {
  std::string out;
  for (const Call call : calls.seen()) out += name_of(call) + ", ";
  return out;
}

// A process number that nobody has: that of a child which has ended and was waited for.
long dead_process() {
  const pid_t child = ::fork();
  if (child == 0) ::_exit(0);
  ::waitpid(child, nullptr, 0);
  return child;
}

std::string name_with_process(const std::string& name, long process) {
  return name.substr(0, 20) + std::to_string(process) + name.substr(name.rfind('-'));
}

}  // namespace

TEST_CASE("the bytes are safe before the name is given, and the name after") {
  const Place place;
  FaultyCalls calls(place.path);
  RealFileSystem files(calls);
  REQUIRE(files.write_whole(place / "a", "new").has_value());
  CHECK(calls_in_words(calls) ==
        "make folder, status, list, create, write, close, open, sync, close, rename, open, "
        "sync folder, close, ");
}

TEST_CASE("whatever call fails, the old file or the new one is there whole, and nothing else") {
  for (const int code : {ENOSPC, EDQUOT, EIO, EFBIG, EROFS, EACCES, EMFILE}) {
    for (std::size_t i = 0; i < 13; ++i) {
      const Place place;
      REQUIRE(RealFileSystem().write_whole(place / "a", "old").has_value());
      FaultyCalls calls(place.path);
      calls.fail(i, FaultyCalls::Fault::kError, code);
      RealFileSystem files(calls);
      const auto written = files.write_whole(place / "a", "new");
      INFO(calls_in_words(calls) << code);
      const std::string text = files.read(place / "a", 10).value();
      CHECK((text == "old" || text == "new"));
      if (written) CHECK(text == "new");
      if (!written) CHECK(!written.error().message.empty());
      // A temporary file that cannot be removed stays for the next run.
      CHECK(place.names() == std::vector<std::string>{"a"});
    }
  }
}

TEST_CASE("short writes are gone on with, and short reads") {
  const Place place;
  FaultyCalls calls(place.path);
  calls.fail(4, FaultyCalls::Fault::kShort);
  RealFileSystem files(calls);
  REQUIRE(files.write_whole(place / "a", "a long text").has_value());
  CHECK(files.read(place / "a", 100).value() == "a long text");
  FaultyCalls again(place.path);
  again.fail(2, FaultyCalls::Fault::kShort);
  CHECK(RealFileSystem(again).read(place / "a", 100).value() == "a long text");
}

TEST_CASE("a disk that fills up half-way leaves the old file") {
  const Place place;
  REQUIRE(RealFileSystem().write_whole(place / "a", "old").has_value());
  FaultyCalls calls(place.path);
  calls.fail(4, FaultyCalls::Fault::kHalfThen, ENOSPC);
  RealFileSystem files(calls);
  const auto written = files.write_whole(place / "a", "a long text");
  REQUIRE_FALSE(written.has_value());
  CHECK(written.error().message == "the disk is full");
  CHECK(files.read(place / "a", 100).value() == "old");
  CHECK(place.names() == std::vector<std::string>{"a"});
}

TEST_CASE("what cannot be looked at is not taken for missing") {
  const Place place;
  std::ofstream(place / "a") << "text";
  const auto kind = [&](int code) {
    FaultyCalls calls(place.path);
    calls.fail(0, FaultyCalls::Fault::kError, code);
    return RealFileSystem(calls).kind(place / "a");
  };
  CHECK(kind(EIO) == FileKind::kOther);
  CHECK(kind(EACCES) == FileKind::kOther);
  CHECK(kind(ENOENT) == FileKind::kNothing);
  FaultyCalls calls(place.path);
  calls.fail(1, FaultyCalls::Fault::kError, EIO);
  CHECK(RealFileSystem(calls).list(place.path).error().message ==
        "the disk failed (an input/output error)");
}

TEST_CASE("a file is moved only to a name nobody has") {
  const Place place;
  RealFileSystem files;
  REQUIRE(files.write_whole(place / "a", "a").has_value());
  REQUIRE(files.write_whole(place / "b", "b").has_value());
  CHECK_FALSE(files.move_new(place / "a", place / "b").has_value());
  CHECK(files.read(place / "b", 10).value() == "b");
  CHECK(files.move_new(place / "a", place / "deep/er/c").has_value());
  CHECK(files.read(place / "deep/er/c", 10).value() == "a");
  CHECK(files.settle().has_value());
}

TEST_CASE("temporary names") {
  const std::string ours = temporary_name(7);
  REQUIRE(read_temporary_name(ours).has_value());
  CHECK(read_temporary_name(ours)->process == ::getpid());
  CHECK(read_temporary_name(ours)->machine.size() == 8);
  CHECK(read_temporary_name(".chalkleaf-4711-0")->process == 4711);
  for (const char* other : {".chalkleaf", ".chalkleaf-", ".chalkleaf-x-0", ".chalkleaf-1-2-3-4",
                            ".chalkleaf-sheets", ".chalkleaf-12345678--1-0", "chalkleaf-1-0",
                            ".chalkleaf-1234567g-1-0", ".chalkleaf-0-0", ".chalkleaf-1-0.pdf"}) {
    INFO(other);
    CHECK_FALSE(read_temporary_name(other).has_value());
  }
  const std::time_t now = 1'000'000;
  const std::time_t old = now - 90'000;
  TemporaryName living = *read_temporary_name(ours);
  CHECK_FALSE(is_left_over(living, now, now));
  CHECK(is_left_over(living, old, now));  // another program has its number by now
  living.process = dead_process();
  CHECK(is_left_over(living, now, now));
  living.machine = "00000000";  // who knows what runs there
  CHECK_FALSE(is_left_over(living, now, now));
}

TEST_CASE("what killed runs left is cleared, and nothing else") {
  const Place place;
  const std::string ours = temporary_name(0);
  const std::string dead = name_with_process(ours, dead_process());
  const std::string parent = name_with_process(ours, ::getppid());
  for (const std::string& name : {dead, parent, std::string(".chalkleaf-keep")})
    std::ofstream(place / name) << "x";
  std::filesystem::create_directory(place / name_with_process(ours + "9", dead_process()));
  RealFileSystem files;
  REQUIRE(files.write_whole(place / "a", "x").has_value());
  const auto left = place.names();
  const auto is_there = [&](const std::string& name) {
    return std::find(left.begin(), left.end(), name) != left.end();
  };
  CHECK_FALSE(is_there(dead));
  CHECK(is_there(parent));
  CHECK(is_there(".chalkleaf-keep"));
  CHECK(left.size() == 4);  // the folder of such a name, too
}
