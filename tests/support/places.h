// Where the tests of this build find the repository, the folder they are built in and the program.
// As functions of one small source and not as definitions for every compiler call: those would
// differ from clone to clone, and a cache of compiled files find nothing again.
#pragma once

#include <string>

namespace chalkleaf::support {

/// The top of the repository.
std::string repository();
/// The build folder; tests write below it only.
std::string build_folder();
/// The program of this build.
std::string program();

}  // namespace chalkleaf::support
