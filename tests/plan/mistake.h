// A slip and what is said of it: the tables of this room's tests of mistakes.
#pragma once

namespace chalkleaf::plan {

struct Mistake {
  const char* written;
  const char* messages;
};

}  // namespace chalkleaf::plan
