// The looks there are, for the command that lists them. Tested by tests/club/looks_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "club/build.h"

namespace chalkleaf::club {

/// `looks [FOLDER]`: every look's name and what it says of itself; broken ones are told.
struct ListedLooks {
  std::vector<std::pair<std::string, std::string>> looks;
  int exit_code = 0;  ///< as of the program
};
ListedLooks list_looks(const std::optional<std::string>& folder, const std::string& standing,
                       const Surroundings& surroundings, Listener& listener);

}  // namespace chalkleaf::club
