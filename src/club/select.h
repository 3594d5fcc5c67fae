// Which plans are meant by the arguments, and where each one's sheets go.
//
// A club is the nearest folder at or above a plan that has a club.yaml; its plans are the *.md
// files below sessions/ and plans/ (*.markdown too, in any case; no README). A plan without a club
// stands alone in its folder. Links to folders are not followed; hidden folders, out/ and private/
// are not entered. Tested by tests/club/select_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"

namespace chalkleaf::club {

/// A folder that plans belong to.
struct Root {
  std::string path;  ///< absolute, no links
  bool is_club = false;
  std::string out;  ///< absolute: where its sheets go
};

/// One plan to build.
struct PlanFile {
  std::string path;      ///< absolute
  std::size_t root = 0;  ///< in Selection::roots
  std::string sheets;    ///< absolute, where its sheets go, without `-card.pdf`
};

/// A file named by the user that plans use and that is no plan: looked at by `check`, by itself.
struct SharedFile {
  enum class Kind { kPart, kDrill, kClub };
  Kind kind = Kind::kPart;
  std::string path;      ///< absolute
  std::size_t root = 0;  ///< in Selection::roots
};

struct Selection {
  std::vector<Root> roots;
  std::vector<PlanFile> plans;        ///< in order of their paths, each once
  std::vector<SharedFile> shared;     ///< in order of their paths, each once
  std::vector<std::string> problems;  ///< arguments that cannot be used: sentences for the user
  Diagnostics diagnostics;            ///< plans that were found but are not read
};

/// What to select, and from where.
struct Wanted {
  std::string standing;                ///< the folder the user stands in, absolute, no links
  std::vector<std::string> arguments;  ///< files and folders; none: the club stood in
  std::optional<std::string> out;      ///< folder for sheets; none: `out` in each root
};

Selection select_plans(const FileSystem& files, const Wanted& wanted);

/// The nearest folder at or above `folder` (absolute) that has a club.yaml.
std::optional<std::string> club_above(const FileSystem& files, const std::string& folder);

}  // namespace chalkleaf::club
