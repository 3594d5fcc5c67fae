// A club's drill library, read once a run: all Markdown files below `drills/`.
//
// The files come from anyone who can open a pull request, so no link out of the club's folder is
// followed, and number and size are bounded. Each file is read by one of the workers; the order is
// that of the paths. Tested by tests/club/drill_library_test.cpp.
#pragma once

#include <cstddef>
#include <memory>
#include <string>

#include "base/diagnostic.h"
#include "base/files.h"
#include "base/pack.h"
#include "plan/library.h"
#include "plan/read.h"

namespace chalkleaf::club {

struct DrillLibrary {
  std::shared_ptr<const plan::DrillBook> book;  ///< never null
  /// Why not all of it could be read: what is missing may be needed by any plan.
  Diagnostics folder;
  /// What is wrong in its files, and names that two files have. Plans that use such a file hear of
  /// it too (plan::inherit), and are not printed when it is an error.
  Diagnostics drills;
};

/// How much of a library is read at once.
enum class Need {
  kAll,    ///< every file, so that all that is wrong in it is said
  kNamed,  ///< what a plan names, when it names it
};

/// Where a library is, and how it is read.
struct LibraryPlace {
  const FileSystem& files;
  std::string root;      ///< the club's folder: absolute, no links
  std::string standing;  ///< where the user stands, for the paths in messages
  std::size_t jobs = 1;
  Need need = Need::kAll;
};

/// Reads a club's library, with the shelf behind it; an empty one when the club has none.
/// `pictures` and `shelf` may be null; `pictures` and the place's files must outlive the book.
DrillLibrary load_drills(const LibraryPlace& place, const plan::PictureLookup* pictures,
                         const std::shared_ptr<const plan::ShelfSource>& shelf = nullptr);

/// Reads the drill file at `path`, shown as `display`. What ships with the program may have been
/// read before, into `pack`.
plan::LibraryDrill load_drill(const FileSystem& files, const std::string& path,
                              const std::string& display, const plan::PictureLookup* pictures,
                              const PackPtr& pack = nullptr);

}  // namespace chalkleaf::club
