// Which version of a plan a sheet was printed from: the last commit that changed the plan's file.
//
// One walk over the first parents of HEAD answers for all plans of a repository at once; a sheet
// made on the spot from an edited file says so. Read only: no hook, no configuration, no network.
// Tested by tests/club/revision_test.cpp, against git itself.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/files.h"

namespace chalkleaf::club {

/// What a sheet says of its plan's version.
struct Revision {
  std::string text;  ///< `4f2a91c`, `4f2a91c, edited`, `not yet committed`; empty without git
  std::optional<Date> date;               ///< of the commit, where it was made
  std::optional<std::int64_t> committed;  ///< seconds since 1970, UTC
  bool operator==(const Revision&) const = default;
};

/// The revisions of some plans. Immutable once made; shared by the workers.
class Revisions {
 public:
  /// Looks for a repository at or above `folder` (absolute, no links) and asks it for `paths`
  /// (absolute). Without one, or when it cannot be read, every revision is empty.
  Revisions(const FileSystem& files, const std::string& folder,
            const std::vector<std::string>& paths);
  /// The same in two steps: the function it gives walks the repository, in whatever thread.
  /// `files` must outlive it.
  static std::function<Revisions()> ask(const FileSystem& files, const std::string& folder,
                                        const std::vector<std::string>& paths);
  ~Revisions();
  Revisions(Revisions&&) noexcept;
  Revisions& operator=(Revisions&&) noexcept;

  /// Why revisions are unknown though there is a repository: a clause about it, such as `does not
  /// answer`; empty when all is well.
  const std::string& trouble() const { return trouble_; }

  /// The revision of one of the paths, whose file now holds `bytes`.
  Revision of(const std::string& path, std::string_view bytes) const;

 private:
  Revisions() = default;
  struct State;
  std::string trouble_;
  std::unique_ptr<State> state_;
};

}  // namespace chalkleaf::club
