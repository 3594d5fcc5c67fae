// A grid where none is written: every group at every station, the musts kept, and as many wishes as
// go together.
//
// Wishes are taken in the order they are written: each is kept if there is still a grid, and
// otherwise given up with the fewest others that stand against it. `All the same way round` is the
// first wish when nothing else is said: children can remember it. Of the grids that are left it is
// the first, cell by cell as written, so it does not depend on the solver. Tested by
// tests/rota/propose_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "rota/model.h"

namespace chalkleaf::rota {

/// A wish that was given up. Indices are into Rotation::rules; one behind the last is the unsaid
/// first wish.
struct GivenUp {
  std::size_t rule = 0;
  std::vector<std::size_t> against =
      {};                  ///< kept rules that stand against it, none of which could be left out
  bool undecided = false;  ///< the solver gave up looking
};

struct Proposal {
  /// kImpossible: `conflict` says why. kNotFound: the solver gave up looking.
  enum class Outcome { kFound, kImpossible, kNotFound };
  Outcome outcome = Outcome::kImpossible;
  Rotation rotation = {};  ///< with its visits and rests
  std::vector<GivenUp> given_up = {};
  /// Musts that cannot be kept together, none of which could be left out; empty: not even without
  /// musts.
  std::vector<std::size_t> conflict = {};
  std::string why = {};  ///< where `conflict` is empty: a sum that does not come out
};

Proposal propose(const Rotation& rotation);

/// Row by row the stations of each group: each station follows each other one once (Williams 1949,
/// Australian Journal of Scientific Research A 2:149-168). For an even number of stations; empty
/// for an odd one.
std::vector<std::vector<std::size_t>> williams_square(std::size_t stations);

}  // namespace chalkleaf::rota
