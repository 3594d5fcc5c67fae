// The objects of a git repository, read from its own files: loose ones and those in packs.
//
// Not through libgit2: loading it with all it links to (TLS, SSH, Kerberos) and its reading of the
// machine's certificates cost a quarter of what one plan takes, and a named pipe among the
// repository's files stopped it for ever. Formats: git's own documentation, gitrepository-layout,
// gitformat-pack. Nothing is written, nothing is run, and what a repository made to do harm can
// cost is bounded by a Budget. Tested by tests/club/git_objects_test.cpp and revision_test.cpp,
// against git itself.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf::club {

/// The name of an object: its SHA-1. A repository of SHA-256 names is not read.
using GitId = std::array<std::uint8_t, 20>;

/// From 40 hexadecimal digits; nothing for anything else.
std::optional<GitId> git_id(std::string_view hex);
std::string hex_text(const GitId& id);

enum class GitKind { kCommit = 1, kTree = 2, kBlob = 3, kTag = 4 };

struct GitObject {
  GitKind kind = GitKind::kBlob;
  std::string bytes;
};

/// What reading one repository may cost, so that one made to do harm ends in good time.
struct GitBudget {
  std::uint64_t bytes = 512ULL * 1024 * 1024;  ///< of objects, unpacked
  std::uint64_t objects = 500'000;             ///< looked up
};

/// Not safe to share between threads.
class GitObjects {
 public:
  /// `folder` is a repository's `objects`. One that is not there has no objects.
  explicit GitObjects(const std::string& folder, GitBudget budget = {});
  ~GitObjects();
  GitObjects(GitObjects&&) noexcept;
  GitObjects& operator=(GitObjects&&) noexcept;

  /// Nothing when there is no such object, it is broken, or larger than 8 MB.
  std::optional<GitObject> find(const GitId& id);
  /// True when objects were not read because the budget was spent.
  bool is_spent() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace chalkleaf::club
