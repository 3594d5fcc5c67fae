// What a session's drills have taken from a library, for the guard. Inside the room.
#pragma once

#include <set>
#include <utility>
#include <vector>

#include "plan/library.h"
#include "plan/model.h"

namespace chalkleaf::reason {

/// Words with the plan's lines they came to. What ships is left out: a coach has read it before.
struct Inherited {
  std::set<const Source*> sources;
  std::vector<std::pair<plan::Words, Span>> words;
};
Inherited inherited_words(const plan::Session& session, const plan::DrillBook& book);

/// True of a drill of the shelf.
bool is_shipped(const Source& source);

}  // namespace chalkleaf::reason
