// A new club folder to start from: the files of examples/begin, copied to where a coach wants them.
//
// Nothing is overwritten, and after a failure nothing is left that was not there before. Tested by
// tests/club/begin_test.cpp.
#pragma once

#include <string>
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

}  // namespace chalkleaf::club
