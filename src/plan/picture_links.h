// Pictures of a plan, found and read while it is linked: a note that names one gets its path and
// its size.
//
// A plan is printed from its own folder alone: nothing is fetched from the web. Tested by
// tests/plan/picture_links_test.cpp.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/library.h"
#include "plan/read.h"

namespace chalkleaf::plan {

/// The path a link's target names: without `#heading`, `%20` decoded (RFC 3986, 2.1).
std::string link_path(std::string_view target);

class PictureLinks {
 public:
  /// Without a lookup every picture stays as it was written.
  PictureLinks(const PictureLookup* lookup, Diagnostics& diagnostics)
      : lookup_(lookup), diagnostics_(diagnostics) {}

  /// What stands in the file at `from_path`. What cannot be printed is reported (`unreadable-file`,
  /// `outside-folder`).
  void follow(Note& note, const std::string& from_path);
  void follow(std::vector<Note>& notes, const std::string& from_path);
  void follow(Drill& drill, const std::string& from_path);
  void follow(Step& step, const std::string& from_path);

 private:
  void report(const Note& note, const PictureProblem& problem);

  const PictureLookup* lookup_;
  Diagnostics& diagnostics_;
  std::set<std::string> paths_;
};

/// The pictures of a drill's file; what is wrong with them is added to `drill.found`.
void link_pictures(LibraryDrill& drill, const std::string& drill_path,
                   const PictureLookup& pictures);

}  // namespace chalkleaf::plan
