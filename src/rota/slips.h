// What is wrong with a written grid, and the change of one cell, or of two that were mixed up, that
// mends it. Pure. Tested by tests/rota/slips_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "rota/model.h"

namespace chalkleaf::rota {

/// One thing that cannot be as it is written.
struct Slip {
  enum class Kind {
    kStranger,  ///< a name that stands in no other cell
    kTwice,     ///< a group in two places at once
    kNowhere,   ///< a group that is there, in no place
    kShared,    ///< two groups at a station that is otherwise one group's
    kFull,      ///< more gymnasts than the station takes
    kAgain,     ///< a group at a station a second time
    kNever,     ///< a group that never comes to a station
  };
  Kind kind = Kind::kTwice;
  std::size_t turn = 0;     ///< not of kNever
  std::size_t group = 0;    ///< not of kStranger
  std::size_t station = 0;  ///< not of kStranger and kNowhere
  Span span = {};           ///< the cell; of kNever the group's name
};

/// All of them, worst first; empty when the grid is sound. Of a proposed grid, what it leaves out.
std::vector<Slip> slips_of(const Rotation& rotation);

/// A change of the grid.
struct Mend {
  struct Change {
    Span cell;
    std::string name;  ///< to write there
    std::size_t turn = 0;
  };
  std::vector<Change> changes;
  std::vector<Slip> cures;  ///< what was wrong without it
};
/// Changes that leave less wrong, the most telling first; each is judged with those before it made.
/// What no single change mends is in `left`.
std::vector<Mend> mends_of(const Rotation& rotation, std::vector<Slip>& left);

/// Whether a group is in the hall during a turn, by the clock at which it comes and goes.
bool is_there(const Rotation& rotation, std::size_t group, std::size_t turn);

}  // namespace chalkleaf::rota
