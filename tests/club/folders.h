// Real folders for tests that need a real disk: links, git, a program of its own.
#pragma once

#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include "base/files.h"
#include "support/places.h"

namespace chalkleaf::club::tests {

/// An empty folder below the build folder, removed with everything in it.
class TemporaryFolder {
 public:
  explicit TemporaryFolder(const std::string& name)
      : path_(
            std::filesystem::weakly_canonical(support::build_folder() + "/test-folders/" + name)) {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directories(path_);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  std::string str() const { return path_.string(); }
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  void put(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
  }
  bool has(const std::string& name) const { return std::filesystem::exists(path_ / name); }
  std::string read(const std::string& name) const {
    return RealFileSystem().read(*this / name, 64 * 1024 * 1024).value_or("");
  }
  void link(const std::string& name, const std::string& target) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::filesystem::create_symlink(target, path_ / name);
  }

 private:
  std::filesystem::path path_;
};

/// What a shell command prints, and how it ends.
struct Outcome {
  int exit_code = -1;
  std::string text;
};
inline Outcome shell(const std::string& command) {
  FILE* pipe = ::popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  Outcome out;
  char buffer[4096];
  while (const std::size_t n = std::fread(buffer, 1, sizeof buffer, pipe))
    out.text.append(buffer, n);
  const int status = ::pclose(pipe);
  out.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return out;
}

/// A plan for the gym that has nothing wrong with it, of 30 min in a slot of 30 min.
inline std::string gym_plan(const std::string& title) {
  return "---\ntitle: " + title +
         "\nplace: gym\nslot: 30 min\ntimings:\n  changeover: 0 s\n---\n\n"
         "## Warm-up\n\n- Jog: 5 min\n\n## Beam\n\n- Walk: 20 min\n\n"
         "## Cool-down\n\n- Sway: 5 min\n";
}
/// The same for home.
inline std::string home_plan(const std::string& title) {
  return "---\ntitle: " + title +
         "\nplace: home\nslot: 30 min\ntimings:\n  changeover: 0 s\n---\n\n"
         "> **Safety.** Clear two big steps of floor. An adult stays in the room.\n\n"
         "## Warm-up\n\n- Jog: 5 min\n\n## Shapes\n\n- Long shape: 20 min\n\n"
         "## Cool-down\n\n- Sway: 5 min\n";
}

}  // namespace chalkleaf::club::tests
