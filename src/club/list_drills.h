// The drills there are, for a coach who looks for one: the club's and the shelf's.
// Tested by tests/club/list_drills_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "club/build.h"
#include "plan/library.h"

namespace chalkleaf::club {

struct FoundDrills {
  std::shared_ptr<const plan::DrillBook> book;  ///< what the pointers point into
  const plan::LibraryDrill* one = nullptr;      ///< the one that is meant, by its name; else null
  std::vector<const plan::LibraryDrill*> all;   ///< those with all the words, by name
  std::string closest;  ///< a name close to the words, when nothing is found
  int exit_code = 0;
};

/// Looks for drills with all of `words` in their names, what they train, load, stretch and need,
/// their kind, place and level (`level 3`, `home`, `gym`). Without words all of them. In a club's
/// folder its own are among them.
FoundDrills find_drills(const std::vector<std::string>& words, const std::string& standing,
                        const Surroundings& around, Listener& listener);

/// True when it may be done at home: no coach, spotter or apparatus is needed.
bool is_for_home(const plan::LibraryDrill& drill);

}  // namespace chalkleaf::club
