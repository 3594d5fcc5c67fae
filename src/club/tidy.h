// `tidy`: what was read of a plan, as the plan in the taught form.
//
// A plan in the taught form is left untouched. Tested by tests/club/drafts_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "club/build.h"

namespace chalkleaf::club {

/// Shown, or put in the file's place.
enum class TidyWay { kShow, kWrite };

struct Tidied {
  std::string path;  ///< as the user names it
  std::string before;
  std::string after;  ///< the same as `before` when there was nothing to do
};
struct TidyRun {
  Summary summary;
  std::vector<Tidied> plans;  ///< in the order of their paths
};
TidyRun tidy(const Request& request, TidyWay way, const Surroundings& around, Listener& listener);

/// The lines that go and the lines that come, as `diff -u` marks them; empty when nothing changes.
std::string change_text(const Tidied& plan);

}  // namespace chalkleaf::club
