// A row of moves in a dose: `2 x (10 star jumps, 10 high knees)`, `10 star jumps, 10 high knees`.
//
// A row is found before the rest of the dose is read, and one token is put in its place: then sets,
// sides, rest and remarks around it are read like those around any amount. A stretch between commas
// is a move when it is an amount and a name, and a dose cannot be made of it alone: so `10, slow`
// and `10 reps, 20 s rest` have no moves. One move alone is no row. Which words coaches use is
// common practice, no source. Tested by tests/plan/dose_moves_test.cpp and dose_corpus_test.cpp.
#pragma once

#include "dose/phrases.h"

namespace chalkleaf::dose {

/// `kDose`: what stands behind a drill's colon. `kLine`: a whole line without name and colon, where
/// only `10 star jumps` is a move, not `star jumps 10`, and counted kit (`2 hoops, 3 cones`) is
/// none.
enum class MovesIn { kDose, kLine };

/// Finds a row of moves and puts it into the phrases; sets their problem where one is begun and
/// cannot be read. True when there is one.
bool gather_moves(Phrases& phrases, MovesIn where);

}  // namespace chalkleaf::dose
