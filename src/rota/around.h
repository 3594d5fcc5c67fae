// What a coach says of a rotation around its grid: how long a turn is, how many are in a group, who
// coaches what, when there is water, who comes late. Internal to the room. Tested by
// tests/rota/around_test.cpp.
#pragma once

#include "rota/lines.h"
#include "rota/model.h"
#include "rota/words.h"

namespace chalkleaf::rota {

/// Lengths that a line says, in minutes.
struct Lengths {
  std::optional<int> turns = {};  ///< `4 x 28 min`
  std::optional<int> turn = {};   ///< `28 mins each`
  std::optional<int> move = {};   ///< `2 to move`
  std::optional<int> alone = {};  ///< a length of which nothing more is said
  std::vector<int> list = {};     ///< `25, 25, 20 min`
};
Lengths lengths_in(const Words& words, std::string_view text);

/// Gives turns without a clock of their own the one that follows from the first.
void fill_clocks(Rotation& rotation);

/// Completes a rotation by the lines that are not its grid.
void read_around(const Source& source, const std::vector<Line>& lines, const Words& words,
                 Rotation& rotation);

}  // namespace chalkleaf::rota
