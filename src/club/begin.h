// A new club folder to start from: the files of examples/begin, copied to where a coach wants them.
//
// Nothing is overwritten, and after a failure nothing is left that was not there before. Tested by
// tests/club/begin_test.cpp.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "club/build.h"

namespace chalkleaf::club {

/// The starter's folder within the program's data (club/resources.h).
inline constexpr std::string_view kStarterFolder = "examples/begin";

/// What was made.
struct Begun {
  std::string folder;              ///< as the user named it
  std::vector<std::string> files;  ///< within it, in order of their paths
};

/// Makes `folder`, as seen from `standing`, a club folder. It may be there if it is empty (but for
/// a repository's `.git`). The error is a sentence for the user, and then nothing was written.
tl::expected<Begun, std::string> begin_club(const Surroundings& around, const std::string& standing,
                                            const std::string& folder);

/// True when what `begin` is given is a draft's file and not a folder to make.
bool names_draft(std::string_view argument);

/// Writes the plan that `tidy` would make of the draft `request.arguments[0]` into a new file
/// beside it, and says its name. Nothing is overwritten. The error is a sentence for the user.
tl::expected<std::string, std::string> begin_plan(const Request& request,
                                                  const Surroundings& around, Listener& listener);

}  // namespace chalkleaf::club
